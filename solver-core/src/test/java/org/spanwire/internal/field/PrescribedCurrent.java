package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.mesh.Piece;

/**
 * Currents given as functions of the distance along straight wires, projected on Legendre
 * polynomials.
 */
final class PrescribedCurrent {

  private static final int ORDERS = 14;
  private static final double RADIUS = 1e-6;

  private final List<Piece> pieces = new ArrayList<>();
  private final List<double[]> re = new ArrayList<>();
  private final List<double[]> im = new ArrayList<>();

  /**
   * A straight wire in {@code count} pieces with a current I(s), s the distance from the start,
   * metres.
   */
  PrescribedCurrent wire(
      double[] from, double[] to, int count, DoubleFunction<Complex> currentAtDistance) {
    double dx = to[0] - from[0];
    double dy = to[1] - from[1];
    double dz = to[2] - from[2];
    double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
    for (int i = 0; i < count; i++) {
      double f = (double) i / count;
      double part = length / count;
      pieces.add(
          new Piece(
              from[0] + f * dx,
              from[1] + f * dy,
              from[2] + f * dz,
              dx / length,
              dy / length,
              dz / length,
              part,
              RADIUS));
      double start = f * length;
      project(t -> currentAtDistance.apply(start + 0.5 * (1 + t) * part));
    }
    return this;
  }

  private void project(DoubleFunction<Complex> current) {
    double[] cRe = new double[ORDERS];
    double[] cIm = new double[ORDERS];
    GaussLegendre rule = GaussLegendre.of(30);
    for (int i = 0; i < rule.size(); i++) {
      double t = rule.node(i);
      Complex value = current.apply(t);
      double before = 0;
      double p = 1;
      for (int n = 0; n < ORDERS; n++) {
        cRe[n] += (n + 0.5) * rule.weight(i) * p * value.getReal();
        cIm[n] += (n + 0.5) * rule.weight(i) * p * value.getImaginary();
        double after = ((2 * n + 1) * t * p - n * before) / (n + 1);
        before = p;
        p = after;
      }
    }
    re.add(cRe);
    im.add(cIm);
  }

  CurrentExpansion expansion() {
    return new CurrentExpansion(pieces, re.toArray(new double[0][]), im.toArray(new double[0][]));
  }

  /**
   * The part of a standing wave sin k(h − |s − h|) on a wire of length 2h, 1 A at a current
   * maximum.
   */
  static DoubleFunction<Complex> standingWave(double wavenumber, double length) {
    return s -> new Complex(Math.sin(wavenumber * (0.5 * length - Math.abs(s - 0.5 * length))));
  }

  /** A centre-fed dipole with a sinusoidal current, wavelength 1 m, along a unit vector. */
  static CurrentExpansion dipole(double length, double[] centre, double[] unit) {
    return new PrescribedCurrent().add(length, centre, unit, Complex.ONE).expansion();
  }

  PrescribedCurrent add(double length, double[] centre, double[] unit, Complex factor) {
    DoubleFunction<Complex> wave = standingWave(2 * Math.PI, length);
    double[] from = new double[3];
    double[] to = new double[3];
    for (int i = 0; i < 3; i++) {
      from[i] = centre[i] - 0.5 * length * unit[i];
      to[i] = centre[i] + 0.5 * length * unit[i];
    }
    int half = (int) Math.ceil(length);
    return wire(from, to, 2 * half, s -> wave.apply(s).multiply(factor));
  }
}
