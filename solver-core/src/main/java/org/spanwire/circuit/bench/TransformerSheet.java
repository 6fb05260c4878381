package org.spanwire.circuit.bench;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A transformer to be wound, and what it is to do.
 *
 * @param title what it is for
 * @param design winding and resistance
 * @param lowestHz lowest frequency in hertz
 * @param minimumOhm impedance of a winding wanted there, in ohms
 * @param turnsFound whether the turns are the fewest that reach it, not given
 * @param spots where it is judged, at least one
 * @param powerWatts power at the unbalanced port, a steady carrier
 * @param swr SWR on the antenna side to judge at, each at least 1; at least one
 * @param allowedRise limit of the temperature rise in kelvin
 * @param fluxLimit limit of the flux density in tesla
 * @param limits what a wound unit must keep on the bench, with the range it must serve
 */
public record TransformerSheet(
    String title,
    TransformerDesign design,
    double lowestHz,
    double minimumOhm,
    boolean turnsFound,
    List<Spot> spots,
    double powerWatts,
    List<Double> swr,
    double allowedRise,
    double fluxLimit,
    Optional<Acceptance> limits) {

  /**
   * A frequency to judge at.
   *
   * @param name of the band, or the frequency
   * @param frequencyHz frequency in hertz
   */
  public record Spot(String name, double frequencyHz) {}

  /**
   * What a wound unit must keep.
   *
   * @param limits the limits
   * @param range where
   */
  public record Acceptance(Limits limits, Limits.Range range) {}

  /** Takes copies. */
  public TransformerSheet {
    Objects.requireNonNull(design, "design");
    spots = List.copyOf(spots);
    swr = List.copyOf(swr);
  }
}
