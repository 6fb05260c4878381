package org.spanwire.internal.moment;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.GaussLegendre;

/**
 * By how much the input admittance of a gap exceeds that of splines in its place, on an infinitely
 * long straight wire: D = (1/π) ∫ (g(ζ)² − e(ζ)²)/Z(ζ) dζ from 0 to ∞ with the transforms g of the
 * gap and e of the splines. On the wire of an antenna it is the same as long as ends, bends and
 * other wires are not nearer than the splines' half-width: the difference sends no wave along the
 * wire.
 *
 * <p>The path runs from 0 through the upper half plane over k and the guided wave, which lie on the
 * real axis or below, and then along the axis. 1/Z and g² on it serve all widths of splines.
 */
final class GapAdmittance {

  /** Where the path returns to the real axis, over k; guided waves lie below. */
  private static final double RETURN = 4;

  private static final double HEIGHT = 0.5;
  private static final int ARC_PANELS = 8;
  private static final int NODES = 12;

  /** Argument of the splines' transform beyond which its square is below 1e-8. */
  private static final double SPLINES_END = 40;

  /** Periods of the gap's transform after which its tail takes over. */
  private static final int PERIODS = 12;

  private final double gap;
  private final Complex guided;
  private final List<Node> nodes = new ArrayList<>();
  private final Complex gapPart;

  /** A place on the path with 1/(πZ) times its weight. */
  private record Node(Complex zeta, Complex weight) {}

  /**
   * Integrates what does not depend on the splines.
   *
   * @param gap width in metres
   * @param widest half-width of the widest spline that will be asked for
   * @param narrowest half-width of the narrowest one
   */
  GapAdmittance(TubeSpectrum wire, double gap, double widest, double narrowest) {
    this.gap = gap;
    guided = wire.guided();
    Complex sum = Complex.ZERO;
    double splinesEnd = SPLINES_END / narrowest;
    double from = 0;
    double arcEnd = RETURN * wire.k();
    double gapEnd = PERIODS * 2 * Math.PI / gap;
    while (from < gapEnd) {
      double to = Math.min(gapEnd, from + panel(from, arcEnd, widest, splinesEnd));
      GaussLegendre rule = GaussLegendre.of(NODES);
      for (int i = 0; i < NODES; i++) {
        double along = 0.5 * (from + to) + 0.5 * (to - from) * rule.node(i);
        double weight = 0.5 * (to - from) * rule.weight(i) / Math.PI;
        Node node = node(wire, along, arcEnd, weight);
        Complex box = SplinePair.box(node.zeta, gap);
        sum = sum.add(node.weight.multiply(box).multiply(box));
        if (along < splinesEnd) {
          nodes.add(node);
        }
      }
      from = to;
    }
    gapPart = sum.add(tail(wire, gapEnd));
  }

  private double panel(double from, double arcEnd, double widest, double splinesEnd) {
    if (from < arcEnd * (1 - 1e-9)) {
      return arcEnd / ARC_PANELS;
    }
    double step = Math.min((from < splinesEnd ? 0.6 : 2) * from, 2 * Math.PI / gap);
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

  /** The pair of splines that stands in for the gap. */
  SplinePair pair(double wide, double narrow) {
    return SplinePair.of(wide, narrow, gap, guided);
  }

  /** D in siemens for a pair. */
  Complex over(SplinePair pair) {
    Complex sum = gapPart;
    double end = SPLINES_END / pair.narrow();
    for (Node node : nodes) {
      if (node.zeta.getReal() < end) {
        Complex transform = pair.transform(node.zeta);
        sum = sum.subtract(node.weight.multiply(transform).multiply(transform));
      }
    }
    return sum;
  }
}
