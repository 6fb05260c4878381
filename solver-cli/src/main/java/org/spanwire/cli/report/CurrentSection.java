package org.spanwire.cli.report;

import java.util.Comparator;
import java.util.List;
import org.jsoup.nodes.Element;
import org.spanwire.cli.chart.WireChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.FreeSpace;
import org.spanwire.study.BandPortrait;
import org.spanwire.study.WireState;

/**
 * Current and charge along the wires.
 *
 * @param report what is reported
 */
record CurrentSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "currents";
  }

  @Override
  public String title() {
    return "Current and charge along the wires";
  }

  @Override
  public void write(Page page) {
    page.paragraph(
        "Amounts (rms) at the best match of each band and the transmitter's power, standing off the"
            + " wire: current as the filled area on one side, charge as the dashed line on the other."
            + " Where the charge is large, so is the voltage. The antenna is drawn to scale.");
    for (WireChart.View view : WireChart.View.values()) {
      String name = view == WireChart.View.SIDE ? "Side view, " : "Plan view, ";
      Element gallery = page.gallery();
      for (BandPortrait portrait : report.portraits()) {
        page.picture(
            gallery,
            new WireChart(name + portrait.band(), view, portrait.along(), feed(), ground()),
            portrait.band(),
            "");
      }
    }
    table(page);
  }

  private boolean ground() {
    return !(report.design().antenna().ground() instanceof FreeSpace);
  }

  private Point feed() {
    Feed feed = report.design().antenna().feeds().get(0);
    Wire wire = report.design().antenna().wire(feed.wire()).orElseThrow();
    return wire.at(feed.at().distanceAlong(wire.length()));
  }

  private void table(Page page) {
    Page.TableRows rows =
        page.table(
            "Largest current (rms) on each wire",
            "band",
            "wire",
            "current, A",
            "at, m from its first point");
    for (BandPortrait portrait : report.portraits()) {
      for (Wire wire : report.installation().wires()) {
        List<WireState> along =
            portrait.along().stream().filter(s -> s.wire().equals(wire.name())).toList();
        WireState most =
            along.stream().max(Comparator.comparingDouble(s -> s.current().abs())).orElseThrow();
        rows.bandRow(
            portrait.band(),
            wire.name(),
            Numbers.significant(most.current().abs(), 3),
            Numbers.fixed(most.distance(), 2));
      }
    }
  }
}
