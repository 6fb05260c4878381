package org.spanwire.cli.chart;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepQuantity;
import org.spanwire.study.SweepRow;

/**
 * The pictures of a sweep over a grid: lines for one parameter, a map of the worst SWR over the
 * frequencies for two.
 *
 * @param sweep the sweep
 * @param rows all of its rows
 */
public record SweepCharts(Sweep sweep, List<SweepRow> rows) {

  /** Lines that can still be told apart. */
  private static final int MOST_LINES = 7;

  private static final Map<String, String> UNITS =
      Map.of("ohm", "ohm", "dbi", "dBi", "db", "dB", "deg", "deg");

  /** Takes a copy. */
  public SweepCharts {
    rows = List.copyOf(rows);
  }

  /** Why a sweep cannot be drawn, or an empty text. */
  public static String obstacle(Sweep sweep) {
    if (!(sweep.space() instanceof ParameterGrid grid)) {
      return "draws a grid; leave out --sample";
    }
    if (grid.axes().size() > 2) {
      return "draws one or two varied parameters, not " + grid.axes().size();
    }
    boolean swr = sweep.request().quantities().contains(SweepQuantity.SWR);
    return grid.axes().size() == 2 && !swr ? "draws a map of SWR; add swr to --of" : "";
  }

  /** The pictures. */
  public List<Chart> charts() {
    ParameterGrid grid = (ParameterGrid) sweep.space();
    return grid.axes().size() == 2 ? List.of(map(grid)) : lines(grid.axes().get(0));
  }

  private MapChart map(ParameterGrid grid) {
    ParameterGrid.Axis up = grid.axes().get(0);
    ParameterGrid.Axis across = grid.axes().get(1);
    int column = sweep.request().columns().indexOf(SweepQuantity.SWR.columns().get(0));
    int frequencies = sweep.frequenciesHz().size();
    List<List<OptionalDouble>> cells = new ArrayList<>();
    for (int j = 0; j < up.values().size(); j++) {
      List<OptionalDouble> line = new ArrayList<>();
      for (int i = 0; i < across.values().size(); i++) {
        int first = (j * across.values().size() + i) * frequencies;
        List<SweepRow> here = rows.subList(first, first + frequencies);
        line.add(
            here.stream().anyMatch(row -> row.values().isEmpty())
                ? OptionalDouble.empty()
                : here.stream().mapToDouble(row -> row.values().get(column)).max());
      }
      cells.add(line);
    }
    return new MapChart(
        "Worst SWR at the " + sweep.request().plane().label() + " over all frequencies",
        new MapChart.Axis(across.parameter(), across.values(), -1),
        new MapChart.Axis(up.parameter(), up.values(), -1),
        cells,
        MapScale.swr());
  }

  private List<Chart> lines(ParameterGrid.Axis axis) {
    ParameterText text = new ParameterText(axis.values());
    List<Double> x = axis.values().stream().map(text::number).toList();
    String across = text.label(axis.parameter());
    List<Chart> charts = new ArrayList<>();
    List<String> columns = sweep.request().columns();
    for (int column = 0; column < columns.size(); column++) {
      String name = columns.get(column);
      List<LineChart.Line> lines = new ArrayList<>();
      for (int f : drawn()) {
        lines.add(
            new LineChart.Line(
                Numbers.megahertz(sweep.frequenciesHz().get(f)) + " MHz", x, values(f, column)));
      }
      charts.add(new LineChart(words(name), across, words(name), lines));
    }
    return charts;
  }

  /** The words of a column's name, its unit behind a comma. */
  public static String words(String column) {
    for (Map.Entry<String, String> unit : UNITS.entrySet()) {
      if (column.endsWith("_" + unit.getKey())) {
        String quantity = column.substring(0, column.length() - unit.getKey().length() - 1);
        return quantity.replace('_', ' ') + ", " + unit.getValue();
      }
    }
    return column.equals("swr") ? "SWR" : column.replace('_', ' ');
  }

  /** Frequencies that get a line: all, or as many as can be told apart, evenly chosen. */
  private List<Integer> drawn() {
    int count = sweep.frequenciesHz().size();
    if (count <= MOST_LINES) {
      return IntStream.range(0, count).boxed().toList();
    }
    List<Integer> chosen = new ArrayList<>();
    for (int i = 0; i < MOST_LINES; i++) {
      chosen.add((int) Math.round((double) i * (count - 1) / (MOST_LINES - 1)));
    }
    return Collections.unmodifiableList(chosen);
  }

  private List<Double> values(int frequency, int column) {
    List<Double> values = new ArrayList<>();
    int count = sweep.frequenciesHz().size();
    for (int row = frequency; row < rows.size(); row += count) {
      List<Double> here = rows.get(row).values();
      values.add(here.isEmpty() ? Double.NaN : here.get(column));
    }
    return values;
  }
}
