package org.spanwire.internal.moment;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.GaussLegendre;

/**
 * By how much the input admittance of a gap exceeds that of two splines in its place, on an
 * infinitely long straight wire: D = (1/π) ∫ (g(ζ)² − e(ζ)²)/Z(ζ) dζ from 0 to ∞ with the
 * transforms g of the gap and e of the splines. On the wire of an antenna it is the same as long as
 * ends, bends and other wires are not nearer than the splines' half-width: the difference sends no
 * wave along the wire.
 *
 * <p>The path runs from 0 through the upper half plane over k and the guided wave, which lie on the
 * real axis or below, and then along the axis. On it 1/Z and g² serve all widths of splines, and
 * every width serves two pairs: e² = a²e₁² + 2ab e₁e₂ + b²e₂².
 */
final class GapAdmittance {

  /** Where the path returns to the real axis, over k; guided waves lie below. */
  private static final double RETURN = 4;

  private static final double HEIGHT = 0.5;
  private static final int ARC_PANELS = 5;
  private static final int NODES = 10;

  /** Argument of the splines' transform beyond which its square is below 1e-8. */
  private static final double SPLINES_END = 40;

  /** Periods of the gap's transform after which its tail takes over: D errs by 3e-7 of itself. */
  private static final int PERIODS = 8;

  private final double gap;
  private final double[] halfWidths;
  private final Complex gapPart;

  /** (1/π) ∫ e²/Z dζ for every width, and with e times that of the next width instead of e². */
  private final double[][] squares;

  private final double[][] products;

  private final SplinePair[] pairs;
  private final Complex[] differences;

  /**
   * Integrates.
   *
   * @param gap width in metres
   * @param halfWidths half-widths of splines in metres, falling, at least two
   */
  GapAdmittance(TubeSpectrum wire, double gap, double[] halfWidths) {
    this.gap = gap;
    this.halfWidths = halfWidths;
    squares = new double[halfWidths.length][2];
    products = new double[halfWidths.length - 1][2];
    pairs = new SplinePair[products.length];
    differences = new Complex[products.length];
    Complex sum = Complex.ZERO;
    double arcEnd = RETURN * wire.k();
    double gapEnd = PERIODS * 2 * Math.PI / gap;
    GaussLegendre rule = GaussLegendre.of(NODES);
    double from = 0;
    while (from < gapEnd) {
      double to = Math.min(gapEnd, from + panel(from, arcEnd));
      for (int i = 0; i < NODES; i++) {
        double along = 0.5 * (from + to) + 0.5 * (to - from) * rule.node(i);
        double weight = 0.5 * (to - from) * rule.weight(i) / Math.PI;
        Node node = node(wire, along, arcEnd, weight);
        Complex box = SplinePair.box(node.zeta, gap);
        sum = sum.add(node.weight.multiply(box).multiply(box));
        addSplines(node);
      }
      from = to;
    }
    gapPart = sum.add(tail(wire, gapEnd));
    Complex guided = wire.guided();
    for (int first = 0; first < products.length; first++) {
      pairs[first] = SplinePair.of(halfWidths[first], halfWidths[first + 1], gap, guided);
      differences[first] = difference(first);
    }
  }

  /** A place on the path with 1/(πZ) times its weight. */
  private record Node(Complex zeta, Complex weight) {}

  private void addSplines(Node node) {
    Complex wider = Complex.ZERO;
    for (int i = 0; i < halfWidths.length; i++) {
      if (node.zeta.getReal() * halfWidths[i] < SPLINES_END) {
        Complex spline = SplinePair.spline(node.zeta, halfWidths[i]);
        Complex weighted = node.weight.multiply(spline);
        add(weighted, spline, squares[i]);
        if (i > 0) {
          add(weighted, wider, products[i - 1]);
        }
        wider = spline;
      }
    }
  }

  private static void add(Complex a, Complex b, double[] sum) {
    sum[0] += a.getReal() * b.getReal() - a.getImaginary() * b.getImaginary();
    sum[1] += a.getReal() * b.getImaginary() + a.getImaginary() * b.getReal();
  }

  private double panel(double from, double arcEnd) {
    if (from < arcEnd * (1 - 1e-9)) {
      return arcEnd / ARC_PANELS;
    }
    double widest = halfWidths[0];
    double narrowest = halfWidths[halfWidths.length - 1];
    double growth = from < SPLINES_END / narrowest ? 0.6 : 2;
    double step = Math.min(growth * from, 2 * Math.PI / gap);
    return from < SPLINES_END / widest ? Math.min(step, 6 / widest) : step;
  }

  private static Node node(TubeSpectrum wire, double along, double arcEnd, double weight) {
    if (along >= arcEnd) {
      Complex zeta = new Complex(along);
      return new Node(zeta, wire.impedance(zeta).reciprocal().multiply(weight));
    }
    double x = Math.PI * along / arcEnd;
    double height = HEIGHT * wire.k();
    Complex zeta = new Complex(along, height * Math.sin(x));
    Complex direction = new Complex(1, height * Math.PI / arcEnd * Math.cos(x));
    return new Node(zeta, direction.divide(wire.impedance(zeta)).multiply(weight));
  }

  /**
   * Beyond a whole number of periods Z grows like ζ, or like ζ² over a coat, and the mean of the
   * gap's squared transform falls like 2/(ζg)².
   */
  private Complex tail(TubeSpectrum wire, double from) {
    Complex at = wire.impedance(new Complex(from));
    Complex beyond = wire.impedance(new Complex(2 * from));
    double power = Math.log(beyond.abs() / at.abs()) / Math.log(2);
    double mean = 2 / (from * gap * gap * (1 + power));
    return at.reciprocal().multiply(mean / Math.PI);
  }

  private Complex difference(int first) {
    Complex a = pairs[first].wideWeight();
    Complex b = pairs[first].narrowWeight();
    return gapPart
        .subtract(a.multiply(a).multiply(complex(squares[first])))
        .subtract(a.multiply(b).multiply(complex(products[first])).multiply(2))
        .subtract(b.multiply(b).multiply(complex(squares[first + 1])));
  }

  private static Complex complex(double[] parts) {
    return new Complex(parts[0], parts[1]);
  }

  /** The pair of splines of a width and the next that stands in for the gap. */
  SplinePair pair(int first) {
    return pairs[first];
  }

  /** D in siemens for a pair of a width and the next. */
  Complex over(int first) {
    return differences[first];
  }
}
