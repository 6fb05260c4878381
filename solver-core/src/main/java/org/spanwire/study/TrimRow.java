package org.spanwire.study;

import java.util.Optional;

/**
 * What taking wire off does in one band.
 *
 * @param band name of the band
 * @param effect the effect; empty where the antenna has no best match in or near the band
 */
public record TrimRow(String band, Optional<Effect> effect) {

  /**
   * Where the match is best and how it moves.
   *
   * @param bestMatchHz frequency in hertz of the smallest SWR at the feedpoint, in or near the band
   * @param hertzPerMetre rise of that frequency per metre of wire taken off in all
   */
  public record Effect(double bestMatchHz, double hertzPerMetre) {}
}
