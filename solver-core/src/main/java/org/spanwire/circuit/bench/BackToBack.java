package org.spanwire.circuit.bench;

import org.spanwire.circuit.NPort;

/**
 * Loss of single transformers from pairs joined at their antenna sides.
 *
 * <p>Pairs add in dB: equal units have half of the pair's loss each; three units measured in three
 * pairs have L_A = (AB + AC − BC)/2. Loss is the power that stays in the pair, −10 log10(|S21|²/(1
 * − |S11|²)), so that what the pair reflects does not count.
 *
 * @param unitLossDb loss of one unit in dB
 * @param inputReturnLossDb return loss of the pair at the input in dB
 */
public record BackToBack(double unitLossDb, double inputReturnLossDb) {

  /** What this test cannot show; to stand beside its results. */
  public static final String BLIND_SPOT =
      "A back-to-back pair hides imbalance: what the first unit turns into common mode the second"
          + " hardly turns back, and no common-mode voltage is applied. Measure the balance apart.";

  /**
   * From a pair of equal units measured as a 2-port. Forward and reverse loss are averaged.
   *
   * @throws IllegalArgumentException if it is not a 2-port or lets nothing through
   */
  public static BackToBack ofEqualUnits(NPort pair) {
    if (pair.ports() != 2) {
      throw new IllegalArgumentException("a pair has 2 ports, not " + pair.ports());
    }
    double mean = (lossDb(pair, 1, 2) + lossDb(pair, 2, 1)) / 2;
    return new BackToBack(mean / 2, -20 * Math.log10(pair.s(1, 1).abs()));
  }

  /** Loss of the first of three units, from the three pairs' losses in dB. */
  public static double firstOfThreeDb(double firstSecond, double firstThird, double secondThird) {
    return (firstSecond + firstThird - secondThird) / 2;
  }

  /**
   * Loss in dB without what the input reflects, for the insertion loss −20 log10|S21| and the
   * return loss read there: insertion loss + 10 log10(1 − |S11|²).
   *
   * @throws IllegalArgumentException if nothing enters at that return loss
   */
  public static double withoutReflectionDb(double insertionLossDb, double returnLossDb) {
    double entering = 1 - Math.pow(10, -returnLossDb / 10);
    if (!(entering > 0)) {
      throw new IllegalArgumentException(
          "return loss " + returnLossDb + " dB lets nothing in; expected more than 0 dB");
    }
    return insertionLossDb + 10 * Math.log10(entering);
  }

  /** Loss in dB from one port of a 2-port to the other, reflection at the input left out. */
  public static double lossDb(NPort network, int from, int to) {
    double through = network.s(to, from).abs();
    double reflected = network.s(from, from).abs();
    double share = through * through / (1 - reflected * reflected);
    if (!(share > 0) || Double.isInfinite(share)) {
      throw new IllegalArgumentException(
          "network passes no power from port %d to port %d; check the connections"
              .formatted(from, to));
    }
    return -10 * Math.log10(share);
  }

  /**
   * Largest ripple in dB that two equal reflections inside a pair put on its transmission, 20
   * log10(1 + |Γ|²), for the return loss in dB of one unit at the joint.
   */
  public static double rippleDb(double returnLossDb) {
    return 20 * Math.log10(1 + Math.pow(10, -returnLossDb / 10));
  }
}
