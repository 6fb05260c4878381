package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.complex.Complex;

/**
 * Searches curves over a range that was solved at some frequencies. The steps lie between those,
 * which are close where the antenna's impedance moves fast, and no further apart than an even share
 * of the range, for what the feed chain adds.
 */
final class ResponseScan {

  private static final int PER_GAP = 24;
  private static final int EVEN_SHARES = 1024;
  private static final int MOST_EVALUATIONS = 1000;
  private static final double RELATIVE_ACCURACY = 1e-10;

  private final double[] steps;

  /**
   * A scan.
   *
   * @param solved frequencies in hertz, rising, at least two
   */
  ResponseScan(double[] solved) {
    double share = (solved[solved.length - 1] - solved[0]) / EVEN_SHARES;
    List<Double> all = new ArrayList<>();
    for (int gap = 0; gap + 1 < solved.length; gap++) {
      double width = solved[gap + 1] - solved[gap];
      int count = Math.max(PER_GAP, (int) Math.ceil(width / share));
      for (int i = 0; i < count; i++) {
        all.add(solved[gap] + width * i / count);
      }
    }
    all.add(solved[solved.length - 1]);
    steps = all.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * Where the reactance is zero, rising in frequency, by root finding.
   *
   * @param impedance impedance in ohms at a frequency in hertz
   */
  List<FrequencyResponse.Resonance> resonances(DoubleFunction<Complex> impedance) {
    List<FrequencyResponse.Resonance> resonances = new ArrayList<>();
    double before = impedance.apply(steps[0]).getImaginary();
    for (int i = 1; i < steps.length; i++) {
      double after = impedance.apply(steps[i]).getImaginary();
      if (before != 0 && before * after <= 0) {
        double root =
            after == 0
                ? steps[i]
                : new BrentSolver(RELATIVE_ACCURACY, RELATIVE_ACCURACY * steps[0])
                    .solve(
                        MOST_EVALUATIONS,
                        f -> impedance.apply(f).getImaginary(),
                        steps[i - 1],
                        steps[i]);
        resonances.add(
            new FrequencyResponse.Resonance(root, impedance.apply(root).getReal(), before < 0));
      }
      before = after;
    }
    return resonances;
  }

  /** Searches the magnitude of a reflection coefficient given at a frequency in hertz. */
  ReflectionSearch search(DoubleFunction<Complex> reflection) {
    return new ReflectionSearch(
        steps,
        f -> {
          Complex value = reflection.apply(f);
          return value.getReal() * value.getReal() + value.getImaginary() * value.getImaginary();
        });
  }
}
