package org.spanwire;

/** The solver could not reach the wanted tolerance. */
public final class ToleranceException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final double frequencyHz;
  private final double wanted;
  private final double reached;

  /**
   * Creates the exception.
   *
   * @param message one line: what was wanted and reached
   * @param frequencyHz frequency in hertz
   * @param wanted relative accuracy asked for
   * @param reached relative accuracy reached
   */
  public ToleranceException(String message, double frequencyHz, double wanted, double reached) {
    super(message);
    this.frequencyHz = frequencyHz;
    this.wanted = wanted;
    this.reached = reached;
  }

  /** The frequency in hertz. */
  public double frequencyHz() {
    return frequencyHz;
  }

  /** The relative accuracy that was asked for. */
  public double wanted() {
    return wanted;
  }

  /** The relative accuracy that was reached. */
  public double reached() {
    return reached;
  }
}
