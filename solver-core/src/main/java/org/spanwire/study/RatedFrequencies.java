package org.spanwire.study;

import java.util.List;
import org.spanwire.design.Band;

/** Where in a band fields, voltages and heat are looked at, which change little within it. */
final class RatedFrequencies {

  /** Bands narrower than this, over their frequency, are looked at in the middle only. */
  private static final double NARROW = 0.005;

  private RatedFrequencies() {}

  /** Those of several bands. */
  static List<Double> of(List<Band> bands) {
    return bands.stream().flatMap(band -> of(band).stream()).toList();
  }

  /** Frequencies in hertz: both edges, or the middle of a narrow band. */
  static List<Double> of(Band band) {
    boolean narrow = band.highHz() - band.lowHz() < NARROW * band.middleHz();
    return narrow ? List.of(band.middleHz()) : List.of(band.lowHz(), band.highHz());
  }
}
