package org.spanwire.circuit.bench;

import java.util.List;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;

/**
 * One quantity of one frequency over a batch of wound units.
 *
 * @param count number of units
 * @param mean mean
 * @param deviation standard deviation of the sample, with n − 1; 0 for a single unit
 * @param least smallest value
 * @param largest largest value
 */
public record Batch(long count, double mean, double deviation, double least, double largest) {

  /** Of the values of all units, at least one. */
  public static Batch of(List<Double> values) {
    if (values.isEmpty()) {
      throw new IllegalArgumentException("a batch needs at least one unit");
    }
    SummaryStatistics statistics = new SummaryStatistics();
    values.forEach(statistics::addValue);
    return new Batch(
        statistics.getN(),
        statistics.getMean(),
        statistics.getStandardDeviation(),
        statistics.getMin(),
        statistics.getMax());
  }

  /** How many standard deviations a unit lies from the mean; 0 if the batch does not spread. */
  public double standing(double value) {
    return deviation > 0 ? (value - mean) / deviation : 0;
  }

  /** How far the batch's mean lies from the golden unit. */
  public double offset(double goldenUnit) {
    return mean - goldenUnit;
  }
}
