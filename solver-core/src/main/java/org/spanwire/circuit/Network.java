package org.spanwire.circuit;

/** A linear network whose parameters depend on frequency. Implementations are immutable. */
@FunctionalInterface
public interface Network {

  /**
   * Its parameters at one frequency.
   *
   * @param frequencyHz frequency in hertz, positive
   * @throws CircuitException if it has none there, for example outside the range of measured data
   */
  NPort at(double frequencyHz);

  /** This 2-port followed by another: port 2 of this joined to port 1 of the next. */
  default Network cascade(Network next) {
    return f -> at(f).cascade(next.at(f));
  }
}
