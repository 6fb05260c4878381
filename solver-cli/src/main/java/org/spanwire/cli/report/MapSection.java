package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jsoup.nodes.Element;
import org.spanwire.cli.chart.MapChart;
import org.spanwire.cli.chart.MapScale;
import org.spanwire.design.Design;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.WorstSwrMap;

/**
 * Worst SWR against two parameters.
 *
 * @param report what is reported
 */
record MapSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "map";
  }

  @Override
  public String title() {
    return "Where to feed it, and how high";
  }

  /** Place of the design's own value on an axis. */
  static int nominal(ParameterGrid.Axis axis, Design design) {
    return axis.values().indexOf(design.parameters().get(axis.parameter()).value());
  }

  @Override
  public void write(Page page) {
    if (report.map().isEmpty()) {
      page.paragraph(
          "Not drawn: the design has no two such parameters. Name a parameter for the feedpoint's"
              + " offset and one for the height, and give --map OFFSET,HEIGHT.");
      return;
    }
    WorstSwrMap map = report.map().get();
    page.paragraph(
        "Worst SWR at the transmitter, looked at at "
            + (map.pointsPerBand() == 2
                ? "both edges of each band"
                : map.pointsPerBand() + " frequencies of each band, edges included")
            + ". Frame: the design as it stands. Darker is worse.");
    Element gallery = page.gallery();
    for (int band = 0; band < map.bands().size(); band++) {
      String name = map.bands().get(band).name();
      page.picture(gallery, chart(map, band, "Worst SWR, " + name), name, "");
    }
    if (map.bands().size() > 1) {
      page.picture(gallery, chart(map, -1, "Worst SWR, worst band"), "", "");
    }
  }

  private MapChart chart(WorstSwrMap map, int band, String title) {
    List<List<OptionalDouble>> cells = new ArrayList<>();
    for (int j = 0; j < map.up().values().size(); j++) {
      List<OptionalDouble> row = new ArrayList<>();
      for (int i = 0; i < map.across().values().size(); i++) {
        row.add(band < 0 ? map.worst(i, j) : map.worst(i, j, band));
      }
      cells.add(row);
    }
    return new MapChart(title, axis(map.across()), axis(map.up()), cells, MapScale.swr());
  }

  private MapChart.Axis axis(ParameterGrid.Axis axis) {
    return new MapChart.Axis(axis.parameter(), axis.values(), nominal(axis, report.design()));
  }
}
