package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jsoup.nodes.Element;
import org.spanwire.cli.chart.Chart;
import org.spanwire.cli.chart.LineChart;
import org.spanwire.cli.chart.MapChart;
import org.spanwire.cli.chart.MapScale;
import org.spanwire.cli.chart.ParameterText;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.ParameterGrid;

/**
 * Pictures of one quantity: a map for each slice and group of frequencies, or curves.
 *
 * @param grid the rows
 * @param column index of the quantity
 * @param groups frequencies that are drawn together
 * @param slices values of all parameters but the two that are drawn; one without a name if there
 *     are no others
 */
record SweepPictures(SweepGrid grid, int column, List<SweepGrid.Group> groups, List<Slice> slices)
    implements Section {

  /** Curves of one picture. */
  private static final int MOST_CURVES = 6;

  /**
   * Values of the first parameters.
   *
   * @param name the values in words, empty for none
   * @param first number of its first place
   */
  record Slice(String name, long first) {}

  private String name() {
    return grid.columns().get(column);
  }

  @Override
  public String id() {
    return name().replaceAll("[^a-z0-9]+", "-");
  }

  @Override
  public String title() {
    String words = SweepGrid.words(name())[0];
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  @Override
  public void write(Page page) {
    boolean maps = grid.axes().size() > 1;
    page.paragraph(maps ? mapped() : "One curve for each frequency; dots are what was solved.");
    Element gallery = page.gallery();
    for (Slice slice : slices) {
      for (SweepGrid.Group group : shown(maps)) {
        String title =
            title() + ", " + group.name() + (slice.name().isEmpty() ? "" : "; " + slice.name());
        Chart chart = maps ? map(title, slice, group) : curves(title, group);
        page.picture(gallery, chart, chosenBy(slice, group), "");
      }
    }
  }

  /** The maps end with one of all frequencies, few curves share a picture. */
  private List<SweepGrid.Group> shown(boolean maps) {
    boolean few = groups.stream().allMatch(group -> group.frequencies().size() == 1);
    if (!maps) {
      return few ? List.of(SweepGrid.all(grid.sweep())) : groups;
    }
    List<SweepGrid.Group> shown = new ArrayList<>(groups);
    if (groups.size() > 1
        && slices.size() == 1
        && SweepGrid.worst(name()) != SweepGrid.Side.MIDDLE) {
      shown.add(SweepGrid.all(grid.sweep()));
    }
    return shown;
  }

  private String chosenBy(Slice slice, SweepGrid.Group group) {
    if (slices.size() > 1) {
      return slice.name();
    }
    return groups.contains(group) ? group.name() : "";
  }

  private String mapped() {
    boolean single = grid.sweep().frequenciesHz().size() == 1;
    String which =
        switch (SweepGrid.worst(name())) {
          case LARGEST ->
              "Where several frequencies are drawn together, the largest value counts. ";
          case SMALLEST ->
              "Where several frequencies are drawn together, the smallest value counts. ";
          case MIDDLE -> "Of several frequencies the middle one is drawn. ";
        };
    return (single ? "" : which) + "Darker is more; the shades are explained below each map.";
  }

  private MapChart map(String title, Slice slice, SweepGrid.Group group) {
    ParameterGrid.Axis up = grid.axes().get(grid.axes().size() - 2);
    ParameterGrid.Axis across = grid.axes().get(grid.axes().size() - 1);
    List<List<OptionalDouble>> cells = new ArrayList<>();
    long place = slice.first();
    for (int j = 0; j < up.values().size(); j++) {
      List<OptionalDouble> line = new ArrayList<>();
      for (int i = 0; i < across.values().size(); i++) {
        line.add(grid.value(place++, group, column));
      }
      cells.add(line);
    }
    return new MapChart(title, axis(across), axis(up), cells, scale());
  }

  private MapChart.Axis axis(ParameterGrid.Axis axis) {
    return new MapChart.Axis(
        axis.parameter(), axis.values(), MapSection.nominal(axis, grid.sweep().base()));
  }

  /** One for all maps of the quantity, so that they can be held side by side. */
  private MapScale scale() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (long place = 0; place < grid.sweep().space().count(); place++) {
      for (SweepGrid.Group group : shown(true)) {
        double value = grid.value(place, group, column).orElse(Double.NaN);
        if (Double.isFinite(value)) {
          low = Math.min(low, value);
          high = Math.max(high, value);
        }
      }
    }
    return SweepSummary.scale(
        name(), SweepGrid.words(name())[1], low <= high ? low : 0, low <= high ? high : 1);
  }

  private LineChart curves(String title, SweepGrid.Group group) {
    ParameterGrid.Axis axis = grid.axes().get(0);
    ParameterText text = new ParameterText(axis.values());
    List<Double> x = axis.values().stream().map(text::number).toList();
    String[] words = SweepGrid.words(name());
    List<LineChart.Line> lines = new ArrayList<>();
    for (int frequency : drawn(group)) {
      lines.add(
          new LineChart.Line(
              Numbers.megahertz(grid.sweep().frequenciesHz().get(frequency)) + " MHz",
              x,
              IntStream.range(0, x.size())
                  .mapToObj(place -> grid.value(place, frequency, column))
                  .toList()));
    }
    return new LineChart(
        title,
        text.label(axis.parameter()),
        words[1].isEmpty() ? title() : words[0] + ", " + words[1],
        lines);
  }

  /** All frequencies of a group, or the edges and the middle of many. */
  private static List<Integer> drawn(SweepGrid.Group group) {
    List<Integer> all = group.frequencies();
    return all.size() <= MOST_CURVES
        ? all
        : List.of(all.get(0), all.get(all.size() / 2), all.get(all.size() - 1));
  }
}
