package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.FieldSource;
import org.spanwire.result.Direction;

/**
 * Gain along a circle of directions.
 *
 * @param kind which circle
 * @param fixedDegrees the azimuth of an elevation cut, the elevation of an azimuth cut
 * @param samples gains along it, evenly spaced, both ends included
 */
public record PatternCut(Kind kind, double fixedDegrees, List<Sample> samples) {

  /** Kinds of cuts. */
  public enum Kind {
    /**
     * In a vertical plane, from the horizon at the fixed azimuth (0 degrees) over the zenith (90)
     * to the opposite horizon (180).
     */
    ELEVATION(180),
    /** At one elevation, all around. */
    AZIMUTH(360);

    private final double span;

    Kind(double span) {
      this.span = span;
    }
  }

  /**
   * One direction.
   *
   * @param angleDegrees angle along the cut
   * @param gainDbi gain in dBi; negative infinity in a null
   */
  public record Sample(double angleDegrees, double gainDbi) {}

  /** Takes a copy. */
  public PatternCut {
    samples = List.copyOf(samples);
  }

  /**
   * A cut through the gain of a source.
   *
   * @param intervals number of steps along the cut, at least 1
   */
  public static PatternCut of(FieldSource source, Kind kind, double fixedDegrees, int intervals) {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i <= intervals; i++) {
      double angle = kind.span * i / intervals;
      samples.add(new Sample(angle, source.gainDbi(direction(kind, fixedDegrees, angle))));
    }
    return new PatternCut(kind, fixedDegrees, samples);
  }

  /** Elevation cuts through the largest gain, and at right angles to it. */
  public static List<PatternCut> throughPeak(FieldSource source, int intervals) {
    double azimuth = source.peakGain().azimuthDegrees().orElse(0);
    return List.of(
        of(source, Kind.ELEVATION, azimuth, intervals),
        of(source, Kind.ELEVATION, azimuth + 90, intervals));
  }

  private static Direction direction(Kind kind, double fixed, double angle) {
    if (kind == Kind.AZIMUTH) {
      return new Direction(fixed, angle);
    }
    return angle <= 90 ? new Direction(angle, fixed) : new Direction(180 - angle, fixed + 180);
  }
}
