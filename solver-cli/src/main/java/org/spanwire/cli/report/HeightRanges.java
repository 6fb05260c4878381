package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.spanwire.study.Verdict;
import org.spanwire.study.WorstSwrMap;
import org.spanwire.unit.Quantity;

/**
 * For which values of the map's upward parameter a band needs no tuner, the other parameter as the
 * design has it.
 *
 * @param question what is asked
 * @param answer ranges by band
 */
record HeightRanges(String question, String answer) {

  static Optional<HeightRanges> of(DesignReport report) {
    return report.map().map(map -> of(map, report));
  }

  private static HeightRanges of(WorstSwrMap map, DesignReport report) {
    int nominal = MapSection.nominal(map.across(), report.design());
    List<String> bands = new ArrayList<>();
    for (int band = 0; band < map.bands().size(); band++) {
      String ranges = ranges(map, nominal, band);
      bands.add(map.bands().get(band).name() + ": " + (ranges.isEmpty() ? "at none" : ranges));
    }
    return new HeightRanges(
        "no tuner at which " + map.up().parameter(),
        String.join("; ", bands) + " (looked at: " + looked(map) + ")");
  }

  private static String looked(WorstSwrMap map) {
    return map.up().values().stream().map(Quantity::toString).collect(Collectors.joining(", "));
  }

  /** Neighbouring values that all need no tuner, as ranges. */
  private static String ranges(WorstSwrMap map, int across, int band) {
    List<Quantity> values = map.up().values();
    List<String> ranges = new ArrayList<>();
    int start = -1;
    for (int j = 0; j <= values.size(); j++) {
      boolean direct = j < values.size() && isDirect(map.worst(across, j, band));
      if (direct && start < 0) {
        start = j;
      } else if (!direct && start >= 0) {
        String low = values.get(start).toString();
        ranges.add(start == j - 1 ? low : low + " to " + values.get(j - 1));
        start = -1;
      }
    }
    return String.join(", ", ranges);
  }

  private static boolean isDirect(OptionalDouble swr) {
    return swr.isPresent() && Verdict.of(swr.getAsDouble()) == Verdict.DIRECT;
  }
}
