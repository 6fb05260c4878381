package org.spanwire.cli.report;

import java.util.List;

/** How to use the page on site. */
record SiteUseSection() implements Section {

  @Override
  public String id() {
    return "use";
  }

  @Override
  public String title() {
    return "How to use this page";
  }

  @Override
  public void write(Page page) {
    page.list(
        List.of(
            "Choose the height, the soil and the length of the feed line as they are here: the curves"
                + " show the SWR to expect. Without scripts, look it up in the table at the end.",
            "Read the SWR at the transmitter's end of the line with least power, nobody near wire or"
                + " line, no tuner on the way.",
            "Enter the readings: the page says which of them the choice explains, and which choice"
                + " explains all of them best. It works without a network and sends nothing."),
        "plain");
  }
}
