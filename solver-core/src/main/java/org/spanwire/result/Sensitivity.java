package org.spanwire.result;

import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * How fast what the feeds show changes with a parameter of the antenna, per unit of that parameter.
 *
 * @param admittance slopes of the short-circuit admittances between the feeds in siemens per unit,
 *     row by row in the order of the antenna's feeds; symmetric
 * @param impedance slope of every feed's input impedance in ohms per unit, all feeds driven as
 *     stated; infinite for a feed without current
 * @param relativeError estimated error of the admittances' slopes over the largest of them: that of
 *     the differentiation, to which the error of the solution comes
 */
public record Sensitivity(
    List<List<Complex>> admittance, List<Complex> impedance, double relativeError) {

  /** Takes copies. */
  public Sensitivity {
    admittance = admittance.stream().map(List::copyOf).toList();
    impedance = List.copyOf(impedance);
  }
}
