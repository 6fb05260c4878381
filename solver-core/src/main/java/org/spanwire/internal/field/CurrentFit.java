package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.mesh.Piece;

/**
 * Fits currents given as functions of distance by Legendre polynomials on pieces: projection by a
 * Gauss rule, the piece halved until the polynomial agrees with the function between the nodes.
 */
public final class CurrentFit {

  /** Error of the fit relative to the largest current on the wire. */
  public static final double ACCURACY = 1e-10;

  private static final int TERMS = 14;
  private static final GaussLegendre RULE = GaussLegendre.of(18);
  private static final double SHORTEST = 1e-9;

  private final double longest;
  private final List<Piece> pieces = new ArrayList<>();
  private final List<double[]> re = new ArrayList<>();
  private final List<double[]> im = new ArrayList<>();

  /**
   * @param longest length in metres that no piece exceeds
   */
  public CurrentFit(double longest) {
    this.longest = longest;
  }

  /**
   * Adds a wire.
   *
   * @param current current in amperes, rms, at a distance in metres from the wire's first point,
   *     positive towards increasing distance
   * @throws IllegalArgumentException where the function is not finite or jumps between path points
   */
  public void add(Wire wire, DoubleFunction<Complex> current) {
    double start = 0;
    double largest = largest(wire, current);
    for (int i = 1; i < wire.path().size(); i++) {
      Point p = wire.path().get(i - 1);
      double length = p.distance(wire.path().get(i));
      int count = (int) Math.ceil(length / longest);
      for (int part = 0; part < count; part++) {
        double from = length * part / count;
        double to = length * (part + 1) / count;
        fit(wire, i, start, from, to, largest, current);
      }
      start += length;
    }
  }

  private static double largest(Wire wire, DoubleFunction<Complex> current) {
    double largest = 0;
    int samples = 200;
    for (int i = 0; i <= samples; i++) {
      double s = wire.length() * i / samples;
      largest = Math.max(largest, value(wire, current, s).abs());
    }
    return largest;
  }

  private static Complex value(Wire wire, DoubleFunction<Complex> current, double s) {
    Complex value = current.apply(s);
    if (value == null || value.isNaN() || value.isInfinite()) {
      throw new IllegalArgumentException(
          "current " + value + " at " + s + " m of wire '" + wire.name() + "' must be finite");
    }
    return value;
  }

  private void fit(
      Wire wire,
      int end,
      double start,
      double from,
      double to,
      double largest,
      DoubleFunction<Complex> current) {
    double[] cRe = new double[TERMS];
    double[] cIm = new double[TERMS];
    double[] p = new double[TERMS];
    for (int i = 0; i < RULE.size(); i++) {
      double t = RULE.node(i);
      Complex value = value(wire, current, start + from + 0.5 * (1 + t) * (to - from));
      LegendrePolynomials.fill(t, TERMS - 1, RULE.weight(i), p, 0);
      for (int n = 0; n < TERMS; n++) {
        cRe[n] += (n + 0.5) * p[n] * value.getReal();
        cIm[n] += (n + 0.5) * p[n] * value.getImaginary();
      }
    }
    double error = 0;
    for (double t = -0.99; t < 1; t += 0.22) {
      LegendrePolynomials.fill(t, TERMS - 1, 1, p, 0);
      double fitRe = 0;
      double fitIm = 0;
      for (int n = 0; n < TERMS; n++) {
        fitRe += p[n] * cRe[n];
        fitIm += p[n] * cIm[n];
      }
      Complex value = value(wire, current, start + from + 0.5 * (1 + t) * (to - from));
      error = Math.max(error, value.subtract(new Complex(fitRe, fitIm)).abs());
    }
    if (error <= ACCURACY * largest) {
      addPiece(wire, end, from, to, cRe, cIm);
    } else if (to - from < SHORTEST * wire.length()) {
      throw new IllegalArgumentException(
          "the current of wire '"
              + wire.name()
              + "' jumps near "
              + (start + from)
              + " m; put a path point there");
    } else {
      double middle = 0.5 * (from + to);
      fit(wire, end, start, from, middle, largest, current);
      fit(wire, end, start, middle, to, largest, current);
    }
  }

  private void addPiece(Wire wire, int end, double from, double to, double[] cRe, double[] cIm) {
    Point p = wire.path().get(end - 1);
    Point q = wire.path().get(end);
    double length = p.distance(q);
    double ux = (q.x() - p.x()) / length;
    double uy = (q.y() - p.y()) / length;
    double uz = (q.z() - p.z()) / length;
    pieces.add(
        new Piece(
            p.x() + from * ux,
            p.y() + from * uy,
            p.z() + from * uz,
            ux,
            uy,
            uz,
            to - from,
            wire.conductor().radius()));
    re.add(cRe);
    im.add(cIm);
  }

  /** The currents on pieces with the radii of their wires. */
  public CurrentExpansion alongWires() {
    return expansion(pieces);
  }

  /** The same currents as lines on the axes. */
  public CurrentExpansion alongAxes() {
    return expansion(
        pieces.stream()
            .map(p -> new Piece(p.x(), p.y(), p.z(), p.ux(), p.uy(), p.uz(), p.length(), 0))
            .toList());
  }

  private CurrentExpansion expansion(List<Piece> along) {
    return new CurrentExpansion(along, re.toArray(new double[0][]), im.toArray(new double[0][]));
  }
}
