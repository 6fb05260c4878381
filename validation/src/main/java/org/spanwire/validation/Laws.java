package org.spanwire.validation;

import java.util.List;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.FieldSource;
import org.spanwire.Solution;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.Direction;
import org.spanwire.result.NearField;
import org.spanwire.unit.PhysicalConstants;

/** Identities that hold for any structure; each is 1, or 0 where it is called a defect. */
final class Laws {

  private static final int ELEVATIONS = 64;
  private static final int AZIMUTHS = 32;
  private static final int SAMPLES = 400;

  /** Step of differences in wavelengths. */
  private static final double STEP = 0.01;

  private Laws() {}

  static Complex reciprocityDefect(ValidationCase c, Workbench bench) {
    Complex[][] z = bench.solve(c.structure()).portMatrix();
    return new Complex(z[0][1].subtract(z[1][0]).abs() / z[0][1].abs());
  }

  /** Mean of the gain over all directions, over the radiation efficiency. */
  static Complex patternIntegral(ValidationCase c, Workbench bench) {
    Solution solution = bench.solve(c.structure());
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(ELEVATIONS, -1, 1);
    double mean = 0.5 * rule.integrate(sine -> ringMean(solution, sine));
    return new Complex(mean / solution.radiationEfficiency());
  }

  private static double ringMean(FieldSource source, double sine) {
    double sum = 0;
    for (int i = 0; i < AZIMUTHS; i++) {
      Direction direction = new Direction(Math.toDegrees(Math.asin(sine)), i * 360.0 / AZIMUTHS);
      sum += Math.pow(10, source.gainDbi(direction) / 10);
    }
    return sum / AZIMUTHS;
  }

  /** |H + curl E/jωμ| over |H|, the curl by differences of fourth order. */
  static Complex curlDefect(ValidationCase c, Workbench bench) {
    Solution solution = bench.solve(c.structure());
    double wavelength = PhysicalConstants.wavelength(c.structure().frequencyHz());
    Point at =
        new Point(
            c.parameters().number("atRhoMetres"),
            0.03 * wavelength,
            c.parameters().number("atZMetres"));
    double d = STEP * wavelength;
    NearField[] x = new NearField[4];
    NearField[] y = new NearField[4];
    NearField[] z = new NearField[4];
    for (int i = 0; i < 4; i++) {
      double step = (i < 2 ? i - 2 : i - 1) * d;
      x[i] = solution.nearField(new Point(at.x() + step, at.y(), at.z()));
      y[i] = solution.nearField(new Point(at.x(), at.y() + step, at.z()));
      z[i] = solution.nearField(new Point(at.x(), at.y(), at.z() + step));
    }
    Complex curlX = slope(y, NearField::ez, d).subtract(slope(z, NearField::ey, d));
    Complex curlY = slope(z, NearField::ex, d).subtract(slope(x, NearField::ez, d));
    Complex curlZ = slope(x, NearField::ey, d).subtract(slope(y, NearField::ex, d));
    Complex scale =
        new Complex(
            0,
            PhysicalConstants.wavenumber(c.structure().frequencyHz())
                * PhysicalConstants.IMPEDANCE_OF_FREE_SPACE);
    NearField here = solution.nearField(at);
    double off =
        Math.hypot(
            Math.hypot(
                here.hx().add(curlX.divide(scale)).abs(), here.hy().add(curlY.divide(scale)).abs()),
            here.hz().add(curlZ.divide(scale)).abs());
    return new Complex(off / here.magnetic());
  }

  @FunctionalInterface
  private interface Component {
    Complex of(NearField field);
  }

  /** Derivative from values at −2, −1, 1 and 2 steps. */
  private static Complex slope(NearField[] f, Component component, double step) {
    Complex near = component.of(f[2]).subtract(component.of(f[1])).multiply(8);
    Complex far = component.of(f[3]).subtract(component.of(f[0]));
    return near.subtract(far).divide(12 * step);
  }

  /** Impedances of two equal wires driven alike and against each other, less Z11 ± Z12. */
  static Complex modeDefect(ValidationCase c, Workbench bench) {
    Solution solution = bench.solve(c.structure());
    Complex[][] z = solution.portMatrix();
    String first = c.structure().antenna().feeds().get(0).name();
    Complex even = solution.driven(List.of(Complex.ONE, Complex.ONE)).impedance(first);
    Complex odd = solution.driven(List.of(Complex.ONE, Complex.ONE.negate())).impedance(first);
    double off =
        even.subtract(z[0][0].add(z[0][1])).abs() + odd.subtract(z[0][0].subtract(z[0][1])).abs();
    return new Complex(off / z[0][0].abs());
  }

  /** What loss adds to the input impedance, over Z' ∫ I² ds/I0². */
  static Complex lossIncrease(ValidationCase c, Workbench bench) {
    Solution perfect = bench.solve(c.reference());
    Complex added = bench.solve(c.structure()).impedance().subtract(perfect.impedance());
    Complex perMetre =
        Parts.conductor(c.parameters()).surfaceImpedance(c.parameters().frequencyHz());
    List<CurrentSample> samples = perfect.currents(SAMPLES + 1);
    Complex square = Complex.ZERO;
    for (int i = 0; i <= SAMPLES; i++) {
      double weight = i == 0 || i == SAMPLES ? 1 : i % 2 == 0 ? 2 : 4;
      Complex current = samples.get(i).current();
      square = square.add(current.multiply(current).multiply(weight));
    }
    Complex feed = perfect.feedCurrent(c.structure().antenna().feeds().get(0).name());
    double step = samples.get(1).distance() - samples.get(0).distance();
    Complex integral = square.multiply(step / 3).divide(feed.multiply(feed));
    return added.divide(perMetre.multiply(integral));
  }

  /** Impedance of two half voltages in adjacent gaps over that of the whole in one gap. */
  static Complex splitSource(ValidationCase c, Workbench bench) {
    Antenna whole = c.structure().antenna();
    Feed feed = whole.feeds().get(0);
    double gap = feed.gap().orElseThrow();
    double middle = 0.5 * whole.wires().get(0).length();
    Antenna.Builder split = Antenna.builder().ground(whole.ground());
    whole.wires().forEach(split::wire);
    for (int side = -1; side <= 1; side += 2) {
      split.feed(
          Feed.of("side " + side, feed.wire(), Position.distance(middle + side * gap / 4))
              .withGap(gap / 2)
              .withVoltage(new Complex(0.5)));
    }
    Solution solved = bench.solve(split.build(), c.structure().frequencyHz());
    Complex current = solved.feedCurrent("side -1").add(solved.feedCurrent("side 1")).multiply(0.5);
    return current.reciprocal().divide(bench.solve(c.structure()).impedance());
  }
}
