package org.spanwire.study;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BinaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a table of bands comes down to: what it takes to transmit on which band, and which part is
 * in danger first.
 *
 * @param bands the bands in the order of the plan
 */
public record BandSummary(List<BandResponse> bands) {

  /** Below it a heat is the rounding of a part without loss. */
  private static final double NEGLIGIBLE_WATTS = 1e-6;

  /** Stages without a core at the wire. */
  private static final Set<String> SPREADING =
      Set.of("line", "stub", "attenuator", "matching", "tuner");

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
   * The hottest of the parts up at the wire that give off their heat in one small body: choke,
   * transformers, and fittings such as traps; empty if none is known to have any.
   */
  public Optional<PartHeat> burnsFirst() {
    return hottest().filter(each -> !spreadsHeat(each)).findFirst();
  }

  /** The largest heat of each of the other stages, such as the line, which spreads it. */
  public List<PartHeat> others() {
    return hottest().filter(BandSummary::spreadsHeat).toList();
  }

  /** Stages of a kind are numbered from the second on: "line 2". */
  private static boolean spreadsHeat(PartHeat each) {
    return SPREADING.contains(each.heat().part().replaceFirst(" \\d+$", ""));
  }

  /** The largest heat of each part over the bands, the hottest first. */
  private Stream<PartHeat> hottest() {
    Comparator<PartHeat> byWatts = Comparator.comparingDouble(each -> each.heat().watts());
    return bands.stream()
        .flatMap(band -> band.heat().stream().map(heat -> new PartHeat(band.band(), heat)))
        .filter(each -> each.heat().watts() > NEGLIGIBLE_WATTS)
        .collect(
            Collectors.toMap(
                each -> each.heat().part(),
                each -> each,
                BinaryOperator.maxBy(byWatts),
                LinkedHashMap::new))
        .values()
        .stream()
        .sorted(byWatts.reversed());
  }
}
