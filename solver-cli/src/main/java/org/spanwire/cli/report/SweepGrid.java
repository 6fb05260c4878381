package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.spanwire.cli.chart.ParameterText;
import org.spanwire.cli.chart.SweepCharts;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.Band;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepRow;
import org.spanwire.unit.Quantity;

/**
 * The rows of a sweep over a grid by place, frequency and column.
 *
 * @param sweep the sweep, over a grid
 * @param rows all of its rows
 */
record SweepGrid(Sweep sweep, List<SweepRow> rows) {

  /** So many frequencies have pictures of their own; more are drawn together band by band. */
  private static final int MOST_ALONE = 6;

  private static final String ALL = "all frequencies";

  /**
   * Frequencies that are drawn together.
   *
   * @param name of the frequency or the band
   * @param frequencies their indices, rising
   */
  record Group(String name, List<Integer> frequencies) {}

  /** Which of several values counts. */
  enum Side {
    /** The largest. */
    LARGEST,
    /** The smallest. */
    SMALLEST,
    /** That at the middle frequency. */
    MIDDLE
  }

  List<ParameterGrid.Axis> axes() {
    return ((ParameterGrid) sweep.space()).axes();
  }

  List<String> columns() {
    return sweep.request().columns();
  }

  /** Name and unit of a column in words; the unit is empty for none. */
  static String[] words(String column) {
    String[] parts = SweepCharts.words(column).split(", (?=[^,]*$)", 2);
    return new String[] {parts[0], parts.length > 1 ? parts[1] : ""};
  }

  /** Which value of a column is the one to be afraid of. */
  static Side worst(String column) {
    if (column.equals("swr") || column.startsWith("mismatch_loss") || column.contains("_error_")) {
      return Side.LARGEST;
    }
    return column.endsWith("dbi")
            || column.startsWith("return_loss")
            || column.equals("radiation_efficiency")
        ? Side.SMALLEST
        : Side.MIDDLE;
  }

  /** Each frequency alone if they are few, else band by band. */
  static List<Group> groups(Sweep sweep) {
    List<Double> frequencies = sweep.frequenciesHz();
    List<Group> groups = new ArrayList<>();
    if (frequencies.size() <= MOST_ALONE) {
      for (int i = 0; i < frequencies.size(); i++) {
        groups.add(new Group(Numbers.megahertz(frequencies.get(i)) + " MHz", List.of(i)));
      }
      return groups;
    }
    for (Band band : sweep.base().bands()) {
      List<Integer> within =
          IntStream.range(0, frequencies.size())
              .filter(
                  i -> frequencies.get(i) >= band.lowHz() && frequencies.get(i) <= band.highHz())
              .boxed()
              .toList();
      if (!within.isEmpty()) {
        groups.add(new Group(band.name(), within));
      }
    }
    int grouped = groups.stream().mapToInt(group -> group.frequencies().size()).sum();
    return grouped == frequencies.size() ? groups : List.of(all(sweep));
  }

  /** All frequencies together. */
  static Group all(Sweep sweep) {
    return new Group(ALL, IntStream.range(0, sweep.frequenciesHz().size()).boxed().toList());
  }

  /** Value of a column for a group of frequencies; empty where it is not known at one of them. */
  OptionalDouble value(long place, Group group, int column) {
    Side side = worst(columns().get(column));
    List<Integer> frequencies = group.frequencies();
    if (side == Side.MIDDLE) {
      double value = value(place, frequencies.get(frequencies.size() / 2), column);
      return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
    double[] values = frequencies.stream().mapToDouble(f -> value(place, f, column)).toArray();
    double worst = side == Side.LARGEST ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    for (double each : values) {
      if (Double.isNaN(each)) {
        return OptionalDouble.empty();
      }
      worst = side == Side.LARGEST ? Math.max(worst, each) : Math.min(worst, each);
    }
    return OptionalDouble.of(worst);
  }

  /** A value; NaN where there is none. */
  double value(long place, int frequency, int column) {
    SweepRow row = rows.get((int) (place * sweep.frequenciesHz().size() + frequency));
    return row.values().isEmpty() ? Double.NaN : row.values().get(column);
  }

  /** The values of the varied parameters at a place in words. */
  String place(long place) {
    return settings(sweep.space().at(place), axes().size());
  }

  /** The first parameters with their values in words. */
  String settings(List<Quantity> values, int count) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < count; i++) {
      text.append(i == 0 ? "" : ", ")
          .append(axes().get(i).parameter())
          .append(' ')
          .append(new ParameterText(axes().get(i).values()).text(values.get(i)));
    }
    return text.toString();
  }
}
