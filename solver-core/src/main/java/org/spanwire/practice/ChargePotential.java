package org.spanwire.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * Scalar potential in the Lorenz gauge on the axis of a wire, from the charge of a solution: φ =
 * (1/4πε0) ∫ q exp(−jkR)/R ds, R² = z² + a² on the wire itself, which is exact for charge on a tube
 * of radius a. The ground adds the charge's image, of strength −1 over perfect ground and −(ε −
 * 1)/(ε + 1) over soil of complex relative permittivity ε: the quasi-static image.
 *
 * <p>Quadrature: panels that shrink by a factor of 3 toward ends, bends, feeds and fittings, where
 * the charge varies on the scale of the radius, and toward the nearest place of each straight
 * stretch.
 */
final class ChargePotential {

  private static final int NODES = 8;
  private static final double SHRINK = 3;
  private static final double SMALLEST_OVER_RADIUS = 0.1;

  private final Antenna antenna;
  private final Solution solution;
  private final double wavenumber;
  private final Complex image;
  private final GaussIntegrator rule = new GaussIntegratorFactory().legendre(NODES);

  ChargePotential(Antenna antenna, Solution solution) {
    this.antenna = antenna;
    this.solution = solution;
    this.wavenumber = PhysicalConstants.wavenumber(solution.frequencyHz());
    this.image = image(antenna, solution.frequencyHz());
  }

  private static Complex image(Antenna antenna, double frequencyHz) {
    if (antenna.ground() instanceof FreeSpace) {
      return Complex.ZERO;
    }
    if (antenna.ground() instanceof Soil soil) {
      Complex permittivity = soil.complexPermittivity(frequencyHz);
      return Complex.ONE.subtract(permittivity).divide(permittivity.add(1));
    }
    return Complex.ONE.negate();
  }

  /** Potential in volts at a place. */
  Complex at(Point place) {
    Complex sum = contribution(place);
    if (!image.equals(Complex.ZERO)) {
      Point mirrored = new Point(place.x(), place.y(), -place.z());
      sum = sum.add(contribution(mirrored).multiply(image));
    }
    return sum.divide(4 * Math.PI * PhysicalConstants.ELECTRIC_CONSTANT);
  }

  private Complex contribution(Point place) {
    Complex sum = Complex.ZERO;
    for (Wire wire : antenna.wires()) {
      double start = 0;
      for (int i = 1; i < wire.path().size(); i++) {
        Point p = wire.path().get(i - 1);
        Point q = wire.path().get(i);
        double length = p.distance(q);
        sum = sum.add(stretch(wire, start, p, q, length, place));
        start += length;
      }
    }
    return sum;
  }

  private Complex stretch(Wire wire, double start, Point p, Point q, double length, Point place) {
    double along =
        ((place.x() - p.x()) * (q.x() - p.x())
                + (place.y() - p.y()) * (q.y() - p.y())
                + (place.z() - p.z()) * (q.z() - p.z()))
            / length;
    double across2 = Math.max(0, square(place.distance(p)) - along * along);
    double radius = wire.conductor().outerRadius();
    double off = Math.sqrt(across2 + radius * radius);
    List<Double> edges = edges(wire, start, length, Math.max(0, Math.min(length, along)), radius);
    double re = 0;
    double im = 0;
    for (int panel = 1; panel < edges.size(); panel++) {
      double half = 0.5 * (edges.get(panel) - edges.get(panel - 1));
      double middle = edges.get(panel) - half;
      for (int i = 0; i < NODES; i++) {
        double s = middle + half * rule.getPoint(i);
        double distance = Math.hypot(s - along, off);
        double weight = half * rule.getWeight(i) / distance;
        double cos = weight * Math.cos(wavenumber * distance);
        double sin = weight * Math.sin(wavenumber * distance);
        Complex charge = solution.charge(wire.name(), start + s);
        re += charge.getReal() * cos + charge.getImaginary() * sin;
        im += charge.getImaginary() * cos - charge.getReal() * sin;
      }
    }
    return new Complex(re, im);
  }

  private static double square(double x) {
    return x * x;
  }

  /** Panel edges of a straight stretch that begins at a distance along its wire. */
  private List<Double> edges(
      Wire wire, double start, double length, double nearest, double radius) {
    TreeSet<Double> places = new TreeSet<>(List.of(0.0, length, nearest));
    for (double edge : gapEdges(wire)) {
      if (edge > start && edge < start + length) {
        places.add(edge - start);
      }
    }
    double smallest = SMALLEST_OVER_RADIUS * radius;
    double longest = 1 / wavenumber;
    List<Double> edges = new ArrayList<>();
    edges.add(0.0);
    double from = 0;
    for (double to : places) {
      if (to > from) {
        grade(edges, from, to, smallest, longest);
        from = to;
      }
    }
    return edges;
  }

  /** Appends edges that lie finely at both ends of an interval. */
  private static void grade(
      List<Double> edges, double from, double to, double smallest, double longest) {
    List<Double> toward = new ArrayList<>();
    double middle = 0.5 * (from + to);
    double step = smallest;
    double at = 0;
    while (from + at + step < middle) {
      at += step;
      edges.add(from + at);
      toward.add(to - at);
      step = Math.min(step * SHRINK, longest);
    }
    edges.add(middle);
    for (int i = toward.size() - 1; i >= 0; i--) {
      edges.add(toward.get(i));
    }
    edges.add(to);
  }

  private List<Double> gapEdges(Wire wire) {
    List<Double> edges = new ArrayList<>();
    double narrow = 4 * wire.conductor().radius();
    for (Feed feed : antenna.feeds()) {
      if (feed.wire().equals(wire.name())) {
        add(edges, feed.at().distanceAlong(wire.length()), solution.gap(feed.name()));
      }
    }
    for (Fitting fitting : antenna.fittings()) {
      if (fitting.wire().equals(wire.name())) {
        add(edges, fitting.at().distanceAlong(wire.length()), fitting.gap().orElse(narrow));
      }
    }
    return edges;
  }

  private static void add(List<Double> edges, double at, double gap) {
    edges.add(at - gap / 2);
    edges.add(at + gap / 2);
  }
}
