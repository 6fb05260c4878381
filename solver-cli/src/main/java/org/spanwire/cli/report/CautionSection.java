package org.spanwire.cli.report;

import java.util.List;
import org.jsoup.nodes.Element;

/**
 * What can hurt people. Every page has it, and nothing leaves it out. The clearances of 3 m and of
 * twice the height, and what to do about heat, lightning and loads, are common practice, no source.
 */
record CautionSection() implements Section {

  /**
   * A caution.
   *
   * @param about what it is about
   * @param text what to do, and why
   */
  record Caution(String about, String text) {}

  static final List<Caution> ALL =
      List.of(
          new Caution(
              "Power lines",
              "Treat every overhead line as live. Nothing may come within 3 m of one, even when wire,"
                  + " rope or mast falls or breaks; better keep twice the height of whatever can"
                  + " fall. Never pass above or below a line."),
          new Caution(
              "Voltage at the ends and the feedpoint",
              "Ends and feedpoint carry dangerous RF voltage while transmitting: they burn people,"
                  + " and set fire to rope, wood and dry grass. Hang them out of reach, at least 3 m"
                  + " up. Touch and trim nothing before the transmitter is off and disconnected."),
          new Caution(
              "Exposure of people",
              "Keep people away as far as the limits of RF exposure ask, on every band and at the"
                  + " power and mode in use. Computed distances are an estimate and no certificate;"
                  + " people with implants need more, ask their physicians."),
          new Caution(
              "Heat of transformer and choke",
              "SWR that climbs while transmitting means a core at its limit: stop and let it cool."
                  + " Housings can be hot enough to burn."),
          new Caution(
              "Lightning and static",
              "No wire antenna is lightning-proof. Disconnect it in good time, never during a"
                  + " thunderstorm; bond the line's shield where it enters the house; bleed static"
                  + " charge, and short the line before connecting it."),
          new Caution(
              "Falling loads",
              "Transformer, line, ropes and ice fall when something breaks, and a wire under tension"
                  + " lashes: let nobody stand below or in its line, wear gloves and eye protection."
                  + " Only trained people climb. No dead trees; leave sag; fit a weak link where local"
                  + " practice asks for one."),
          new Caution(
              "Feed line",
              "Its outside is part of the antenna until the choke says otherwise: expect RF voltage"
                  + " on it and on whatever it is joined to."),
          new Caution(
              "Local codes and licensed practice",
              "Licence, bands, power, building and wiring codes go before this page; have licensed"
                  + " people do licensed work. A calculation is no permit and no certificate."),
          new Caution(
              "Limits of the figures",
              "They hold for flat, even ground without houses, trees and other wires. Measure the"
                  + " installed antenna."));

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
    Element list = page.list("cautions");
    for (Caution caution : ALL) {
      Element item = list.appendElement("li");
      item.appendElement("strong").text(caution.about() + ".");
      item.appendText(" " + caution.text());
    }
  }
}
