package org.spanwire;

import java.util.List;
import java.util.function.Function;
import org.spanwire.geometry.Point;
import org.spanwire.result.Direction;
import org.spanwire.result.GainSample;
import org.spanwire.result.Lobe;
import org.spanwire.result.MainLobe;
import org.spanwire.result.NearField;
import org.spanwire.result.PeakGain;
import org.spanwire.result.RadiatedField;

/**
 * Something that makes fields: a solved antenna or a prescribed current. Immutable and safe for use
 * by several threads; fields are computed when asked for. Phasors are rms with time convention
 * exp(+jωt).
 */
public interface FieldSource {

  /** Frequency in hertz. */
  double frequencyHz();

  /**
   * Electric and magnetic field at a point, at any distance; over soil the wave along the surface
   * is part of it. The relative error is about 1e-6.
   *
   * @throws IllegalArgumentException inside a conductor, and below a ground
   */
  NearField nearField(Point point);

  /** Fields at points, in their order; see {@link #nearField}. */
  default List<NearField> nearFields(List<Point> points) {
    return points.stream().map(this::nearField).toList();
  }

  /**
   * Fields at points, for maps of very many: over soil from a table of the Sommerfeld integrals
   * that grows with the places looked at, some ten times faster than {@link #nearField}. Immutable
   * to its user and safe for use by several threads; a value does not depend on which points were
   * asked for before.
   *
   * @param relativeTolerance wanted error of the direct and of the reflected field each, 1e-6 to
   *     1e-2; where the two cancel the error is more against their sum
   */
  Function<Point, NearField> nearFieldMap(double relativeTolerance);

  /**
   * Far field r E e^{+jk0r} in a direction, with its polarization; zero below a ground. Over soil
   * the wave along the surface, which falls off faster than 1/r, is no part of it.
   */
  RadiatedField farField(Direction direction);

  /** Gain in dBi in a direction; negative infinity in an exact null and below a ground. */
  double gainDbi(Direction direction);

  /** The largest gain at an elevation, over azimuth, found by search. */
  GainSample gainAtElevation(double elevationDegrees);

  /** The largest gain over all directions, found by search. */
  PeakGain peakGain();

  /** Half-power beamwidths and front-to-back ratio of the main lobe. */
  MainLobe mainLobe();

  /**
   * The lobes, highest first: local maxima within 40 dB of the largest gain, at most 100 of them. A
   * crest of equal gain counts once, with the place nearest the horizon; a pattern that is the same
   * in all directions has no lobes.
   */
  List<Lobe> lobes();

  /** The largest directivity in dBi: 4π times the largest intensity over the power radiated. */
  double directivityDbi();

  /**
   * Estimate of the error of {@link #directivityDbi} in dB from the integral over all directions.
   */
  double directivityErrorDb();
}
