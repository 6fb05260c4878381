package org.spanwire.cli.report;

import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jsoup.nodes.Element;
import org.spanwire.cli.chart.MapScale;
import org.spanwire.cli.chart.ParameterText;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.ParameterGrid;

/**
 * What was varied, and where it is best.
 *
 * @param grid the rows
 */
record SweepSummary(SweepGrid grid) implements Section {

  /** More values are told by their ends. */
  private static final int MOST_LISTED = 4;

  @Override
  public String id() {
    return "answers";
  }

  @Override
  public String title() {
    return "In short";
  }

  @Override
  public void write(Page page) {
    Element terms = page.terms();
    grid.axes().forEach(axis -> Page.term(terms, axis.parameter() + " varied", range(axis)));
    Page.term(terms, "frequencies", frequencies());
    for (int column = 0; column < grid.columns().size(); column++) {
      String[] words = SweepGrid.words(grid.columns().get(column));
      Page.term(terms, words[0], found(column, words[1]));
    }
    long without = grid.rows().stream().filter(row -> row.failure().isPresent()).count();
    if (without > 0) {
      Page.term(
          terms,
          "without result",
          without
              + " of "
              + grid.rows().size()
              + " rows; the first: "
              + grid.rows().stream()
                  .flatMap(row -> row.failure().stream())
                  .findFirst()
                  .orElseThrow()
                  .message());
    }
  }

  private static String range(ParameterGrid.Axis axis) {
    ParameterText words = new ParameterText(axis.values());
    if (axis.values().size() <= MOST_LISTED) {
      return axis.values().stream().map(words::text).collect(Collectors.joining(", "));
    }
    return words.text(axis.values().get(0))
        + " to "
        + words.text(axis.values().get(axis.values().size() - 1))
        + ", "
        + axis.values().size()
        + " values";
  }

  private String frequencies() {
    int count = grid.sweep().frequenciesHz().size();
    String names =
        SweepGrid.groups(grid.sweep()).stream()
            .map(SweepGrid.Group::name)
            .collect(Collectors.joining(", "));
    return count == SweepGrid.groups(grid.sweep()).size()
        ? names
        : count + " frequencies: " + names;
  }

  /** The best place by the worst frequency, or how far the values reach. */
  private String found(int column, String unit) {
    SweepGrid.Side side = SweepGrid.worst(grid.columns().get(column));
    SweepGrid.Group all = SweepGrid.all(grid.sweep());
    long least = -1;
    long most = -1;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (long place = 0; place < grid.sweep().space().count(); place++) {
      OptionalDouble value = grid.value(place, all, column);
      if (value.isPresent() && value.getAsDouble() < low) {
        low = value.getAsDouble();
        least = place;
      }
      if (value.isPresent() && value.getAsDouble() > high) {
        high = value.getAsDouble();
        most = place;
      }
    }
    if (least < 0) {
      return "none could be solved";
    }
    boolean one = all.frequencies().size() == 1;
    MapScale scale = scale(grid.columns().get(column), unit, low, high);
    return switch (side) {
      case LARGEST -> "smallest" + (one ? "" : " at its worst") + ": " + at(scale, low, least);
      case SMALLEST -> "largest" + (one ? "" : " at its worst") + ": " + at(scale, high, most);
      case MIDDLE ->
          at(scale, low, least)
              + ", to "
              + at(scale, high, most)
              + (one
                  ? ""
                  : ", at "
                      + Numbers.megahertz(
                          grid.sweep().frequenciesHz().get(all.frequencies().size() / 2))
                      + " MHz");
    };
  }

  private String at(MapScale scale, double value, long place) {
    return scale.text(value) + " at " + grid.place(place);
  }

  /** SWR has a scale of its own. */
  static MapScale scale(String column, String unit, double low, double high) {
    return column.equals("swr")
        ? MapScale.swr()
        : MapScale.over(SweepGrid.words(column)[0], unit, low, high);
  }
}
