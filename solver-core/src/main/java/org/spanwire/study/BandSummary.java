package org.spanwire.study;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a table of bands comes down to: what it takes to transmit on which band, and which part is
 * in danger first.
 *
 * @param bands the bands in the order of the plan
 */
public record BandSummary(List<BandResponse> bands) {

  /** Below it a heat is the rounding of a part without loss. */
  private static final double NEGLIGIBLE_WATTS = 1e-6;

  /**
   * Heat of a part on a band.
   *
   * @param band name of the band
   * @param heat the largest there
   */
  public record PartHeat(String band, HeatAt heat) {}

  /** Takes a copy. */
  public BandSummary {
    bands = List.copyOf(bands);
  }

  /** The names of the bands with a verdict, in the order of the plan. */
  public List<String> with(Verdict verdict) {
    return bands.stream()
        .filter(band -> band.verdict() == verdict)
        .map(BandResponse::band)
        .toList();
  }

  /**
   * The largest heat of any part that gives it off in one small body; empty if no such part has
   * any. A line spreads its heat over its length and is left out.
   */
  public Optional<PartHeat> burnsFirst() {
    return hottest(false);
  }

  /** The largest heat of the line; empty if it has none. */
  public Optional<PartHeat> line() {
    return hottest(true);
  }

  private Optional<PartHeat> hottest(boolean line) {
    return bands.stream()
        .flatMap(band -> band.heat().stream().map(heat -> new PartHeat(band.band(), heat)))
        .filter(each -> each.heat().part().startsWith(ChainModel.LINE) == line)
        .filter(each -> each.heat().watts() > NEGLIGIBLE_WATTS)
        .max(Comparator.comparingDouble(each -> each.heat().watts()));
  }
}
