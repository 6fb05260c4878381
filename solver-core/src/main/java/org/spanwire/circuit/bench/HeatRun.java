package org.spanwire.circuit.bench;

import java.util.SortedMap;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * A quantity that settles exponentially after key-down, y = start + rise (1 − e^(−t/τ)): the
 * temperature of a core, or the SWR as it drifts with it. One thermal mass, constant dissipation.
 *
 * <p>The fit searches τ between a tenth of the shortest step and a hundred times the longest time,
 * with start and rise by least squares for each.
 *
 * @param start value at key-down
 * @param rise final change
 * @param timeConstant τ in seconds
 * @param residual root of the mean squared difference to the readings
 */
public record HeatRun(double start, double rise, double timeConstant, double residual) {

  /**
   * Fits readings.
   *
   * @param readings value by seconds since key-down; at least four
   * @throws IllegalArgumentException if they are too few, do not change, or do not begin to settle
   */
  public static HeatRun fitted(SortedMap<Double, Double> readings) {
    if (readings.size() < 4) {
      throw new IllegalArgumentException(
          "heat run has " + readings.size() + " readings; give at least four");
    }
    double[] t = readings.keySet().stream().mapToDouble(Double::doubleValue).toArray();
    double[] y = readings.values().stream().mapToDouble(Double::doubleValue).toArray();
    double longest = t[t.length - 1] - t[0];
    double shortest = longest;
    for (int i = 1; i < t.length; i++) {
      shortest = Math.min(shortest, t[i] - t[i - 1]);
    }
    double upper = Math.log(100 * longest);
    double best =
        new BrentOptimizer(1e-10, 1e-12)
            .optimize(
                new MaxEval(500),
                GoalType.MINIMIZE,
                new SearchInterval(Math.log(shortest / 10), upper, Math.log(longest / 3)),
                new UnivariateObjectiveFunction(x -> line(t, y, Math.exp(x)).residual()))
            .getPoint();
    HeatRun found = line(t, y, Math.exp(best));
    if (!(found.timeConstant < 10 * longest) || !(Math.abs(found.rise) > 0)) {
      throw new IllegalArgumentException(
          "readings do not begin to settle within %s s; run longer".formatted(longest));
    }
    return found;
  }

  /** Least squares of start and rise for a time constant. */
  private static HeatRun line(double[] t, double[] y, double tau) {
    int n = t.length;
    double sx = 0;
    double sy = 0;
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < n; i++) {
      double x = -Math.expm1(-t[i] / tau);
      sx += x;
      sy += y[i];
      sxx += x * x;
      sxy += x * y[i];
    }
    double rise = (n * sxy - sx * sy) / (n * sxx - sx * sx);
    double start = (sy - rise * sx) / n;
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double error = y[i] - start + rise * Math.expm1(-t[i] / tau);
      sum += error * error;
    }
    return new HeatRun(start, rise, tau, Math.sqrt(sum / n));
  }

  /**
   * Thermal resistance in kelvin per watt, for a run of temperature.
   *
   * @param dissipatedWatts what stayed in the unit during the run, positive
   */
  public double thermalResistance(double dissipatedWatts) {
    requireHeating();
    if (!(dissipatedWatts > 0)) {
      throw new IllegalArgumentException(
          "dissipated power " + dissipatedWatts + " W must be positive");
    }
    return rise / dissipatedWatts;
  }

  /**
   * Largest peak envelope power in watts that keeps the temperature rise within a limit, for any
   * number of equal turns of sending and listening. The highest temperature of a periodic load is P
   * R (1 − e^(−on/τ))/(1 − e^(−(on + off)/τ)).
   *
   * <p>An estimate for the place and box of the run; wind, sun and a closed box change it.
   *
   * @param runWatts power sent during the run, a steady carrier, in watts
   * @param allowedRise limit of the rise in kelvin
   * @param mode sets average over peak
   * @param onSeconds length of one transmission; infinite for key-down without end
   * @param offSeconds length of the pause after it
   */
  public double safePeakPower(
      double runWatts,
      double allowedRise,
      OperatingMode mode,
      double onSeconds,
      double offSeconds) {
    requireHeating();
    if (!(runWatts > 0) || !(allowedRise > 0) || !(onSeconds > 0) || !(offSeconds >= 0)) {
      throw new IllegalArgumentException(
          "power %s W, rise %s K, times %s s and %s s: give positive values"
              .formatted(runWatts, allowedRise, onSeconds, offSeconds));
    }
    double peak =
        Double.isInfinite(onSeconds)
            ? 1
            : Math.expm1(-onSeconds / timeConstant)
                / Math.expm1(-(onSeconds + offSeconds) / timeConstant);
    return runWatts * (allowedRise / rise) / (mode.duty() * peak);
  }

  private void requireHeating() {
    if (!(rise > 0)) {
      throw new IllegalArgumentException(
          "readings fall by " + -rise + "; temperature must rise while the key is down");
    }
  }
}
