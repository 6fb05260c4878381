package org.spanwire.circuit;

import java.util.List;

/**
 * A feed chain at one frequency: impedance and power at every plane, and where the watts go.
 *
 * @param frequencyHz frequency in hertz
 * @param availablePower what the transmitter could give, in watts
 * @param planes at the transmitter and behind every stage, the last one at the feedpoint
 * @param losses watts lost in every stage, in the same order
 */
public record ChainState(
    double frequencyHz, double availablePower, List<Plane> planes, List<StageLoss> losses) {

  /**
   * A plane between two stages, seen towards the antenna.
   *
   * @param name "transmitter", or the stage before it
   * @param mismatch impedance there against the plane's reference: SWR, return loss, mismatch loss
   * @param power net power through the plane towards the antenna, in watts
   */
  public record Plane(String name, Mismatch mismatch, double power) {}

  /**
   * Loss of a stage.
   *
   * @param name of the stage
   * @param watts power that stays in it, in watts
   */
  public record StageLoss(String name, double watts) {}

  /** Copies the lists. */
  public ChainState {
    planes = List.copyOf(planes);
    losses = List.copyOf(losses);
  }

  /** Power that the chain accepts, in watts. */
  public double acceptedPower() {
    return planes.get(0).power();
  }

  /** Power into the load at the feedpoint, in watts. */
  public double deliveredPower() {
    return planes.get(planes.size() - 1).power();
  }

  /** Power that the transmitter could give but the chain does not accept, in watts. */
  public double reflectedPower() {
    return availablePower - acceptedPower();
  }

  /**
   * Accepted power less the losses less the delivered power, over the available power: zero but for
   * rounding, since losses are counted from the waves of each stage alone.
   */
  public double closure() {
    double lost = losses.stream().mapToDouble(StageLoss::watts).sum();
    return (acceptedPower() - lost - deliveredPower()) / availablePower;
  }
}
