package org.spanwire.internal.field;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.spanwire.result.PeakGain;

/**
 * The shape of the main lobe: half-power beamwidths and front-to-back ratio (IEEE Std 145-2013).
 */
public final class Beam {

  private static final int HALVINGS = 50;

  private final FarField field;
  private final PeakGain peak;
  private final double elevation;
  private final double azimuth;
  private final double step;
  private final double[] work = new double[FarField.WORK];

  /**
   * Prepares the lobe of a peak.
   *
   * @param field the far field
   * @param peak its largest gain
   */
  public Beam(FarField field, PeakGain peak) {
    this.field = field;
    this.peak = peak;
    this.elevation = Math.toRadians(peak.elevationDegrees().orElse(0));
    this.azimuth = Math.toRadians(peak.azimuthDegrees().orElse(0));
    this.step = 0.5 / (2 * field.electricalRadius() + 4);
  }

  /**
   * Width in degrees of the lobe between half-power directions in the vertical plane through the
   * peak (of azimuth 0 where the peak has none); a ground cuts the lobe off at the horizon. Empty
   * where the gain does not fall to one half.
   */
  public OptionalDouble elevationBeamwidthDegrees() {
    if (peak.elevationDegrees().isEmpty()) {
      return OptionalDouble.empty();
    }
    return width(angle -> at(elevation + angle, azimuth));
  }

  /**
   * Width in degrees of azimuth of the lobe at the peak's elevation; empty where azimuth has no
   * meaning or no half-power.
   */
  public OptionalDouble azimuthBeamwidthDegrees() {
    if (peak.azimuthDegrees().isEmpty()) {
      return OptionalDouble.empty();
    }
    return width(angle -> at(elevation, azimuth + angle));
  }

  /**
   * Gain at the peak over gain at the same elevation and the opposite azimuth, dB; empty where
   * azimuth has no meaning.
   */
  public OptionalDouble frontToBackDb() {
    if (peak.azimuthDegrees().isEmpty()) {
      return OptionalDouble.empty();
    }
    double back = at(elevation, azimuth + Math.PI);
    return OptionalDouble.of(10 * Math.log10(at(elevation, azimuth) / back));
  }

  private double at(double toElevation, double toAzimuth) {
    return field.intensity(
        Math.sin(toElevation),
        Math.cos(toElevation),
        Math.cos(toAzimuth),
        Math.sin(toAzimuth),
        work);
  }

  private OptionalDouble width(DoubleUnaryOperator cut) {
    double half = 0.5 * cut.applyAsDouble(0);
    OptionalDouble ahead = halfPower(cut, half);
    OptionalDouble behind = halfPower(angle -> cut.applyAsDouble(-angle), half);
    return ahead.isPresent() && behind.isPresent()
        ? OptionalDouble.of(Math.toDegrees(ahead.getAsDouble() + behind.getAsDouble()))
        : OptionalDouble.empty();
  }

  /**
   * The first angle at which the cut falls to one half, by steps and then by halving the last one.
   */
  private OptionalDouble halfPower(DoubleUnaryOperator cut, double half) {
    double inside = 0;
    while (inside < Math.PI) {
      double outside = inside + step;
      if (cut.applyAsDouble(outside) < half) {
        return OptionalDouble.of(halve(cut, half, inside, outside));
      }
      inside = outside;
    }
    return OptionalDouble.empty();
  }

  private static double halve(DoubleUnaryOperator cut, double half, double from, double to) {
    double inside = from;
    double outside = to;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (inside + outside);
      if (cut.applyAsDouble(middle) < half) {
        outside = middle;
      } else {
        inside = middle;
      }
    }
    return 0.5 * (inside + outside);
  }
}
