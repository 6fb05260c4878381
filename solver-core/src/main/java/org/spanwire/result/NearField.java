package org.spanwire.result;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Point;

/**
 * Electric and magnetic field at a point, rms phasors with time convention exp(+jωt).
 *
 * @param point where
 * @param ex x component of the electric field, V/m
 * @param ey y component of the electric field, V/m
 * @param ez z component of the electric field, V/m
 * @param hx x component of the magnetic field, A/m
 * @param hy y component of the magnetic field, A/m
 * @param hz z component of the magnetic field, A/m
 */
public record NearField(
    Point point, Complex ex, Complex ey, Complex ez, Complex hx, Complex hy, Complex hz) {

  /** Refuses missing components. */
  public NearField {
    Objects.requireNonNull(point, "point");
    Objects.requireNonNull(ex, "ex");
    Objects.requireNonNull(ey, "ey");
    Objects.requireNonNull(ez, "ez");
    Objects.requireNonNull(hx, "hx");
    Objects.requireNonNull(hy, "hy");
    Objects.requireNonNull(hz, "hz");
  }

  /** Electric field strength √(|E_x|² + |E_y|² + |E_z|²) in V/m, rms over time and direction. */
  public double electric() {
    return size(ex, ey, ez);
  }

  /** Magnetic field strength √(|H_x|² + |H_y|² + |H_z|²) in A/m. */
  public double magnetic() {
    return size(hx, hy, hz);
  }

  private static double size(Complex x, Complex y, Complex z) {
    return Math.hypot(Math.hypot(x.abs(), y.abs()), z.abs());
  }
}
