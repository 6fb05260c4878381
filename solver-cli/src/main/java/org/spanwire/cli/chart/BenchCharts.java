package org.spanwire.cli.chart;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.spanwire.circuit.bench.BenchQuantity;
import org.spanwire.circuit.bench.UnitReading;
import org.spanwire.cli.output.BenchReport;

/**
 * The pictures of bench readings: one for each quantity that any unit shows, one line for each
 * unit; and the choking impedances.
 *
 * @param report the readings
 */
public record BenchCharts(BenchReport report) {

  private static final String ACROSS = "frequency, MHz";

  /** The pictures; none for heat runs. */
  public List<Chart> charts() {
    List<Chart> charts = new ArrayList<>();
    for (BenchQuantity quantity : BenchQuantity.values()) {
      List<LineChart.Line> lines = lines(quantity);
      if (!lines.isEmpty()) {
        String title = quantity.label() + ", " + quantity.unit();
        charts.add(new LineChart(title, ACROSS, title, lines));
      }
    }
    if (!report.chokes().isEmpty()) {
      String title = "choking impedance, ohm";
      charts.add(new LineChart(title, ACROSS, title, chokes()));
    }
    return charts;
  }

  private List<LineChart.Line> lines(BenchQuantity quantity) {
    List<LineChart.Line> lines = new ArrayList<>();
    for (BenchReport.Unit unit : report.units()) {
      List<UnitReading> readings =
          unit.measured().readings().stream().filter(r -> quantity.of(r).isPresent()).toList();
      if (!readings.isEmpty()) {
        lines.add(
            new LineChart.Line(
                name(unit.measured().name()),
                readings.stream().map(r -> r.frequencyHz() / 1e6).toList(),
                readings.stream().map(r -> quantity.of(r).getAsDouble()).toList()));
      }
    }
    return lines;
  }

  private List<LineChart.Line> chokes() {
    return report.chokes().stream()
        .map(
            choke ->
                new LineChart.Line(
                    name(choke.source()),
                    choke.readings().stream().map(r -> r.frequencyHz() / 1e6).toList(),
                    choke.readings().stream().map(r -> r.reading().impedance().abs()).toList()))
        .toList();
  }

  /** The last part of a path. */
  private static String name(String source) {
    return Path.of(source).getFileName().toString();
  }
}
