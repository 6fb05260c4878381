package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class RationalFitTest {

  private static final Complex[] POLES = {
    new Complex(2.5, 0.05), new Complex(4.1, -0.2), new Complex(7.7, 0.01), new Complex(-3, 1)
  };

  /** Two quantities with four common poles: partial fractions and a constant. */
  private static Complex[] partialFractions(double x) {
    Complex first = new Complex(3, -1);
    Complex second = new Complex(0, 2);
    for (int p = 0; p < POLES.length; p++) {
      Complex term = new Complex(x, 0).subtract(POLES[p]).reciprocal();
      first = first.add(term.multiply(new Complex(1 + p, 0.5 * p)));
      second = second.add(term.multiply(new Complex(-2 + p, 1)));
    }
    return new Complex[] {first, second};
  }

  private static RationalFit.Samples samples(int count, double noise) {
    Random random = new Random(7);
    double[] places = new double[count];
    Complex[][] quantities = new Complex[count][];
    for (int i = 0; i < count; i++) {
      places[i] = 1 + 9.0 * i / (count - 1);
      quantities[i] = partialFractions(places[i]);
      for (int q = 0; q < 2; q++) {
        double factor = 1 + noise * (2 * random.nextDouble() - 1);
        quantities[i][q] = quantities[i][q].multiply(factor);
      }
    }
    return new RationalFit.Samples(places, quantities);
  }

  private static double worst(RationalFit fit) {
    double worst = 0;
    for (int i = 0; i <= 5000; i++) {
      double x = 1 + 9.0 * i / 5000;
      worst = Math.max(worst, RationalFit.relativeDistance(partialFractions(x), fit.at(x)));
    }
    return worst;
  }

  @Test
  void findsARationalFunctionOfItsOwnDegreeExactly() {
    RationalFit fit = RationalFit.of(samples(14, 0), 1e-12, 7);
    assertThat(fit.supports().size()).isEqualTo(POLES.length + 1);
    assertThat(worst(fit)).isLessThan(1e-10);
  }

  @Test
  void aDegreeTooFewIsSeenInTheMisfit() {
    RationalFit fit = RationalFit.of(samples(14, 0), 1e-12, POLES.length);
    assertThat(fit.misfit()).isGreaterThan(1e-3);
    assertThat(worst(fit)).isGreaterThan(1e-3);
  }

  @Test
  void doesNotFollowNoiseBelowItsTolerance() {
    RationalFit fit = RationalFit.of(samples(40, 1e-4), 5e-4, 20);
    assertThat(fit.supports().size()).isLessThanOrEqualTo(POLES.length + 3);
    assertThat(worst(fit)).isLessThan(2e-3);
  }

  @Test
  void goesThroughItsSupportPoints() {
    RationalFit.Samples samples = samples(14, 0);
    RationalFit fit = RationalFit.of(samples, 1e-12, 7);
    int exact = 0;
    for (int i = 0; i < samples.count(); i++) {
      Complex[] at = fit.at(samples.places()[i]);
      exact += RationalFit.relativeDistance(samples.quantities()[i], at) == 0 ? 1 : 0;
    }
    assertThat(exact).isGreaterThanOrEqualTo(fit.supports().size());
  }
}
