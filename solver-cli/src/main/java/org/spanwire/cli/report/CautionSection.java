package org.spanwire.cli.report;

import java.util.List;
import java.util.stream.Stream;
import org.spanwire.cli.output.Conditions;
import org.spanwire.cli.output.CutText;

/** Cautions that belong beside every figure of the page. */
record CautionSection() implements Section {

  private static final List<String> MORE =
      List.of(
          "A transformer or choke whose SWR climbs while transmitting is at its limit: stop and let"
              + " it cool.",
          "No wire antenna is lightning-proof: disconnect early, bleed static charge, follow the"
              + " local wiring code.",
          "Figures hold for flat, even ground without houses and trees; the installed antenna is to"
              + " be measured.");

  @Override
  public String id() {
    return "cautions";
  }

  @Override
  public String title() {
    return "Cautions";
  }

  @Override
  public void write(Page page) {
    page.list(
        Stream.of(Conditions.CAUTIONS, CutText.CAUTIONS, MORE).flatMap(List::stream).toList(),
        "cautions");
  }
}
