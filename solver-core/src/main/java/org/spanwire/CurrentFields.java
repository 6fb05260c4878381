package org.spanwire;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Point;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.field.Beam;
import org.spanwire.internal.field.FarField;
import org.spanwire.internal.field.FieldAtPoint;
import org.spanwire.internal.field.GainPattern;
import org.spanwire.internal.field.PowerIntegral;
import org.spanwire.internal.field.RadiatedPower;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.Ground;
import org.spanwire.result.Direction;
import org.spanwire.result.EffectiveLength;
import org.spanwire.result.Lobe;
import org.spanwire.result.MainLobe;
import org.spanwire.result.NearField;
import org.spanwire.result.PeakGain;
import org.spanwire.result.RadiatedField;
import org.spanwire.unit.PhysicalConstants;

/** What solved antennas and prescribed currents do alike with a current along pieces. */
final class CurrentFields {

  static final double POWER_TOLERANCE = 1e-7;

  private static final double NEAR_FIELD_TOLERANCE = 1e-6;
  private static final double LEAST_LOBE = 1e-4;
  private static final int MOST_LOBES = 100;
  private static final double DECIBELS = 10 / Math.log(10);

  private final List<Piece> conductors;
  private final CurrentExpansion current;
  private final double frequencyHz;
  private final Ground ground;
  private final FarField farField;

  /** Computed on first use. */
  private FieldAtPoint fieldAtPoint;

  private PowerIntegral radiated;

  /**
   * @param conductors where the wires are, with their radii
   * @param current what flows along them
   */
  CurrentFields(
      List<Piece> conductors, CurrentExpansion current, double frequencyHz, Ground ground) {
    this.conductors = conductors;
    this.current = current;
    this.frequencyHz = frequencyHz;
    this.ground = ground;
    farField = new FarField(current, frequencyHz, ground);
  }

  FarField farField() {
    return farField;
  }

  synchronized PowerIntegral radiated() {
    if (radiated == null) {
      radiated = RadiatedPower.of(farField, POWER_TOLERANCE);
    }
    return radiated;
  }

  private synchronized FieldAtPoint fieldAtPoint() {
    if (fieldAtPoint == null) {
      fieldAtPoint = new FieldAtPoint(current, frequencyHz, ground, NEAR_FIELD_TOLERANCE);
    }
    return fieldAtPoint;
  }

  NearField nearField(Point point) {
    requireOutside(point);
    return fieldAtPoint().at(point);
  }

  Function<Point, NearField> nearFieldMap(double relativeTolerance) {
    FieldAtPoint map = FieldAtPoint.tabulated(current, frequencyHz, ground, relativeTolerance);
    return point -> {
      requireOutside(point);
      return map.at(point);
    };
  }

  private void requireOutside(Point point) {
    for (Piece piece : conductors) {
      double distance = piece.distance(point.x(), point.y(), point.z());
      if (distance < piece.radius() * (1 - 1e-9)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the point (%.6g, %.6g, %.6g) m lies %.3g m from the axis of a wire, inside its"
                    + " radius of %.3g m; choose a point outside the conductors",
                point.x(),
                point.y(),
                point.z(),
                distance,
                piece.radius()));
      }
    }
  }

  /** From reciprocity: h = 4π (r E)/(−jk0η0 I), E the far field for the current I. */
  EffectiveLength effectiveLength(
      Direction direction, Complex terminalCurrent, Complex sourceImpedance) {
    double scale =
        4
            * Math.PI
            / (PhysicalConstants.wavenumber(frequencyHz)
                * PhysicalConstants.IMPEDANCE_OF_FREE_SPACE);
    Complex factor = new Complex(0, scale).divide(terminalCurrent);
    RadiatedField there = farField.at(direction);
    return new EffectiveLength(
        there.theta().multiply(factor), there.phi().multiply(factor), sourceImpedance);
  }

  GainPattern pattern(double referencePower) {
    return new GainPattern(farField, referencePower);
  }

  MainLobe mainLobe(double referencePower) {
    PeakGain peak = pattern(referencePower).peak();
    Beam beam = new Beam(farField, peak);
    return new MainLobe(
        peak,
        beam.elevationBeamwidthDegrees(),
        beam.azimuthBeamwidthDegrees(),
        beam.frontToBackDb());
  }

  List<Lobe> lobes(double referencePower) {
    return pattern(referencePower).lobes(LEAST_LOBE, MOST_LOBES);
  }

  double directivityDbi() {
    return pattern(radiated().watts()).peak().gainDbi();
  }

  double directivityErrorDb() {
    // Directions of peaks are rounded to 1e-4 degree; the intensity itself is good to 1e-9.
    return DECIBELS * (radiated().errorWatts() / radiated().watts() + 1e-9);
  }
}
