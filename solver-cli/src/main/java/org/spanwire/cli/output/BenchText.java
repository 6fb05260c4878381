package org.spanwire.cli.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.bench.BatchStatistics;
import org.spanwire.circuit.bench.BenchQuantity;
import org.spanwire.circuit.bench.BenchReadings;
import org.spanwire.circuit.bench.Imbalance;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.circuit.bench.UnitReading;

/** The outcome of {@code spanwire balun bench} for reading. */
final class BenchText {

  /** The units of more files than these are shown in one table, without the readings of each. */
  private static final int FEW_FILES = 3;

  /** More frequencies than these are thinned out in the statistics of a batch. */
  private static final int MANY_FREQUENCIES = 12;

  private final BenchReport report;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  BenchText(BenchReport report, Palette palette) {
    this.report = report;
    this.palette = palette;
  }

  String render() {
    if (report.range().isPresent()) {
      outcomes();
    }
    boolean few =
        report.units().stream().map(BenchReport.Unit::source).distinct().count() <= FEW_FILES;
    if (few) {
      report.units().forEach(this::unit);
    } else if (report.range().isEmpty()) {
      ranges();
    }
    report.batch().ifPresent(this::batch);
    report.chokes().forEach(this::choke);
    report.heatRuns().forEach(this::heatRun);
    if (!report.units().isEmpty()) {
      limits(few);
    }
    SolveText.warnings(out, palette, report.warnings());
    return out.toString();
  }

  private void outcomes() {
    Table table = new Table().word("outcome").word("unit").word("measured as").word("why");
    for (BenchReport.Unit unit : report.units()) {
      unit.judgement()
          .ifPresent(
              judgement ->
                  table.row(
                      judgement.passed() ? "passed" : "FAILED",
                      unit.title(),
                      unit.measured().method().label(),
                      why(unit, judgement)));
    }
    long failed = report.units().stream().filter(BenchReport.Unit::failed).count();
    out.append(palette.heading("Units judged over " + words(report.range().orElseThrow())))
        .append('\n')
        .append(table.render())
        .append(
            failed == 0
                ? "all %d keep their limits".formatted(report.units().size())
                : "%d of %d failed".formatted(failed, report.units().size()))
        .append("\n\n");
  }

  private static String why(BenchReport.Unit unit, Limits.Judgement judgement) {
    if (judgement.passed()) {
      return "";
    }
    List<UnitReading> readings = unit.measured().readings();
    if (!judgement.covered()) {
      return "measured from "
          + Numbers.megahertz(readings.get(0).frequencyHz())
          + " to "
          + Numbers.megahertz(readings.get(readings.size() - 1).frequencyHz())
          + " MHz only";
    }
    if (judgement.breaches().isEmpty()) {
      return "a limit is crossed between readings";
    }
    Limits.Breach first = judgement.breaches().get(0);
    int more = judgement.breaches().size() - 1;
    return first.quantity().label()
        + " "
        + Numbers.significant(first.value(), 3)
        + " "
        + first.quantity().unit()
        + " at "
        + Numbers.megahertz(first.frequencyHz())
        + " MHz"
        + (more > 0 ? ", " + more + " more" : "");
  }

  private void ranges() {
    Table table = new Table().word("unit").word("measured as").word("usable");
    for (BenchReport.Unit unit : report.units()) {
      table.row(
          unit.title(),
          unit.measured().method().label(),
          unit.usable().map(BenchText::words).orElse("-"));
    }
    out.append(palette.heading("Units")).append('\n').append(table.render()).append('\n');
  }

  private void unit(BenchReport.Unit unit) {
    out.append(palette.heading(unit.title() + ": " + unit.measured().method().words()))
        .append('\n')
        .append(table(unit.measured().readings()).render());
    unit.usable().ifPresent(ranges -> out.append("usable: ").append(words(ranges)).append('\n'));
    out.append('\n');
  }

  private static Table table(List<UnitReading> readings) {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .number("loss", "dB")
            .number("return", "loss, dB")
            .number("amplitude", "imbalance, dB")
            .number("phase", "imbalance, deg")
            .number("common-mode", "rejection, dB")
            .number("conversion", "dB");
    for (UnitReading reading : readings) {
      Optional<Imbalance> balance = reading.imbalance();
      table.row(
          Numbers.megahertz(reading.frequencyHz()),
          Numbers.fixed(reading.lossDb(), 3),
          Numbers.fixed(reading.returnLossDb(), 1),
          balance.map(b -> Numbers.fixed(b.amplitudeDb(), 2)).orElse("-"),
          balance.map(b -> Numbers.fixed(b.phaseDegrees(), 2)).orElse("-"),
          balance.map(b -> Numbers.fixed(b.rejectionDb(), 1)).orElse("-"),
          Numbers.fixed(reading.conversionDb(), 1));
    }
    return table;
  }

  private void batch(BatchStatistics statistics) {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .word("quantity")
            .number("mean", "")
            .number("standard", "deviation")
            .number("least", "")
            .number("largest", "");
    report.golden().ifPresent(name -> table.number("mean less", "golden unit"));
    List<Double> frequencies =
        statistics.rows().stream().map(BatchStatistics.Row::frequencyHz).distinct().toList();
    int step = (frequencies.size() + MANY_FREQUENCIES - 1) / MANY_FREQUENCIES;
    for (BatchStatistics.Row row : statistics.rows()) {
      if (frequencies.indexOf(row.frequencyHz()) % step == 0) {
        table.row(cells(row).toArray(new String[0]));
      }
    }
    out.append(palette.heading("Batch of " + report.units().size() + " units"))
        .append('\n')
        .append(table.render());
    report.golden().ifPresent(name -> out.append("golden unit: ").append(name).append('\n'));
    if (step > 1) {
      out.append("every ").append(step).append("th frequency; all of them with --format json\n");
    }
    out.append('\n');
  }

  private List<String> cells(BatchStatistics.Row row) {
    int decimals = row.quantity() == BenchQuantity.LOSS ? 3 : 2;
    List<String> cells = new ArrayList<>();
    cells.add(Numbers.megahertz(row.frequencyHz()));
    cells.add(row.quantity().label() + ", " + row.quantity().unit());
    cells.add(Numbers.fixed(row.batch().mean(), decimals));
    cells.add(Numbers.fixed(row.batch().deviation(), decimals));
    cells.add(Numbers.fixed(row.batch().least(), decimals));
    cells.add(Numbers.fixed(row.batch().largest(), decimals));
    report.golden().ifPresent(name -> cells.add(Numbers.fixed(row.offset(), decimals)));
    return cells;
  }

  private void choke(BenchReport.Choke choke) {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .number("resistance", "ohm")
            .number("reactance", "ohm")
            .number("magnitude", "ohm")
            .number("uncertain by", "ohm");
    for (BenchReadings.ChokeAt at : choke.readings()) {
      Complex z = at.reading().impedance();
      table.row(
          Numbers.megahertz(at.frequencyHz()),
          Numbers.fixed(z.getReal(), 0),
          Numbers.fixed(z.getImaginary(), 0),
          Numbers.fixed(z.abs(), 0),
          Numbers.fixed(at.reading().uncertaintyOhm(), 0));
    }
    out.append(palette.heading(choke.source() + ": choking impedance"))
        .append('\n')
        .append(table.render())
        .append("fixture removed; uncertainty for the stated error of the readings\n\n");
  }

  private void heatRun(BenchReport.HeatRun each) {
    BenchReadings.Heat heat = each.heat();
    out.append(palette.heading(each.source() + ": heat run")).append('\n');
    Conditions.line(
        out,
        "settles",
        "%s K above %s °C with a time constant of %s min, readings within %s K"
            .formatted(
                Numbers.fixed(heat.run().rise(), 1),
                Numbers.fixed(heat.run().start(), 1),
                Numbers.fixed(heat.run().timeConstant() / 60, 1),
                Numbers.fixed(heat.run().residual(), 2)));
    heat.dissipatedWatts()
        .ifPresent(
            watts ->
                Conditions.line(
                    out,
                    "resistance",
                    Numbers.significant(heat.run().thermalResistance(watts), 3) + " K/W"));
    Table table = new Table().word("mode").number("duty", "%").number("safe peak", "power, W");
    for (OperatingMode mode : OperatingMode.values()) {
      table.row(
          mode.label(),
          Numbers.fixed(100 * mode.duty(), 0),
          Numbers.significant(heat.safePeakPower(mode), 2));
    }
    out.append(table.render());
    Paragraph.write(
        out,
        "",
        0,
        "for a rise of "
            + Numbers.significant(heat.allowedRise(), 3)
            + " K, key down without end, in the place and box of the run. Sun and a closed box"
            + " change it: a core can burn, or set fire to what it lies on.");
    out.append('\n');
  }

  private void limits(boolean few) {
    Limits limits = report.limits();
    out.append(palette.heading("Limits")).append('\n');
    Paragraph.write(
        out,
        "  ",
        2,
        "loss <= %s dB, amplitude imbalance <= %s dB, phase imbalance <= %s deg, return loss >= %s dB; between readings by straight lines%s"
            .formatted(
                Numbers.significant(limits.maximumLossDb(), 4),
                Numbers.significant(limits.maximumAmplitudeDb(), 4),
                Numbers.significant(limits.maximumPhaseDegrees(), 4),
                Numbers.significant(limits.minimumReturnLossDb(), 4),
                few ? "" : "; the readings of every unit with --format csv"));
  }

  private static String words(List<Limits.Range> ranges) {
    return ranges.isEmpty()
        ? "nowhere"
        : ranges.stream().map(BenchText::words).collect(Collectors.joining(", "));
  }

  private static String words(Limits.Range range) {
    return Numbers.megahertz(range.fromHz()) + "-" + Numbers.megahertz(range.toHz()) + " MHz";
  }
}
