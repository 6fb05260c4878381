package org.spanwire.circuit;

import org.apache.commons.math3.complex.Complex;

/**
 * What an antenna tuner can do: within its range it presents its reference impedance to the
 * transmitter, outside it passes the load through.
 *
 * <p>Its loss in dB grows linearly with log SWR of the load, from matchedLossDb at SWR 1 to
 * limitLossDb at the end of its range. Common practice, no source: makers state these two figures
 * at best; a capacitive load of low resistance costs more than the model says.
 *
 * @param referenceOhm impedance presented to the transmitter, in ohms, positive
 * @param maximumSwr largest SWR of a load it can match, against the same reference, at least 1
 * @param matchedLossDb loss into a load of SWR 1, in dB, not negative
 * @param limitLossDb loss into a load of the largest SWR, in dB, at least as much
 */
public record Tuner(
    double referenceOhm, double maximumSwr, double matchedLossDb, double limitLossDb) {

  /** Checks the ranges. */
  public Tuner {
    if (!(referenceOhm > 0) || !(maximumSwr >= 1) || Double.isInfinite(maximumSwr)) {
      throw new IllegalArgumentException(
          "tuner needs a positive reference and a finite SWR of at least 1, got %s ohm and %s"
              .formatted(referenceOhm, maximumSwr));
    }
    if (!(matchedLossDb >= 0) || !(limitLossDb >= matchedLossDb)) {
      throw new IllegalArgumentException(
          "tuner loss %s dB rising to %s dB must neither be negative nor fall"
              .formatted(matchedLossDb, limitLossDb));
    }
  }

  /** Whether it can match a load in ohms. */
  public boolean matches(Complex load) {
    return Mismatch.of(load, referenceOhm).swr() <= maximumSwr;
  }

  /** Loss in dB into a load that it can match. */
  public double lossDb(Complex load) {
    double swr = Mismatch.of(load, referenceOhm).swr();
    if (maximumSwr == 1 || swr == 1) {
      return matchedLossDb;
    }
    double share = Math.min(1, Math.log(swr) / Math.log(maximumSwr));
    return matchedLossDb + share * (limitLossDb - matchedLossDb);
  }

  /**
   * The 2-port it becomes for a load: matched both ways, its reference at port 1 and the load
   * itself at port 2; a direct connection if it cannot match the load.
   */
  public NPort facing(Complex load) {
    boolean able = matches(load);
    Complex through = new Complex(able ? Math.pow(10, -lossDb(load) / 20) : 1, 0);
    Complex reference = new Complex(referenceOhm, 0);
    return NPort.ofScattering(
        new Complex[][] {{Complex.ZERO, through}, {through, Complex.ZERO}},
        reference,
        able ? load : reference);
  }
}
