package org.spanwire.cli.output;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.GainSample;
import org.spanwire.result.PowerBudget;
import org.spanwire.result.Warning;
import org.spanwire.study.CommonMode;
import org.spanwire.study.Ledger;
import org.spanwire.study.Plane;
import org.spanwire.study.SolvedFeed;
import org.spanwire.study.SolvedFrequency;

/** The outcome of {@code spanwire solve} for reading. */
final class SolveText {

  private final SolveReport report;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  SolveText(SolveReport report, Palette palette) {
    this.report = report;
    this.palette = palette;
  }

  String render() {
    out.append(palette.heading(report.conditions().design().title())).append("\n\n");
    section("Feeds", feeds());
    section("Radiation", radiation());
    SolvedFrequency first = report.solutions().get(0);
    if (!first.gainSamples().isEmpty()) {
      section("Gain by direction", gains());
    }
    if (first.powerBudget().isPresent()) {
      section("Where the accepted power goes", budget());
    }
    String power = " at " + Numbers.significant(report.powerWatts(), 6) + " W";
    if (first.ledger().isPresent()) {
      section("From the transmitter to the sky" + power, ledger());
    }
    if (first.commonMode().isPresent()) {
      section("Outside of the feed line" + power + ", rms", commonMode());
    }
    if (first.feeds().size() > 1) {
      section("Impedances between the feeds", ports());
    }
    if (!first.currents().isEmpty()) {
      section("Currents, rms, for the feed voltages of the design", currents());
    }
    report.conditions().text(out, palette);
    warnings(out, palette, report.warnings());
    out.append('\n');
    Conditions.cautions(out, palette);
    return out.toString();
  }

  private void section(String title, Table table) {
    out.append(palette.heading(title)).append('\n').append(table.render()).append('\n');
  }

  private Table feeds() {
    Conditions conditions = report.conditions();
    Table table =
        new Table()
            .number("frequency", "MHz")
            .word("feed")
            .number("resistance", "ohm")
            .number("reactance", "ohm")
            .number("error of |Z|", "ohm")
            .number("SWR,", "feedpoint", conditions.feedpointReference())
            .number("SWR, trans-", "former input", conditions.transformerReference())
            .number("SWR,", "transmitter", conditions.transmitterReference())
            .number("gap", "mm")
            .number("unknowns");
    for (SolvedFrequency solution : report.solutions()) {
      for (SolvedFeed feed : solution.feeds()) {
        Complex z = feed.impedance();
        boolean open = z.isInfinite();
        table.row(
            Numbers.megahertz(solution.frequencyHz()),
            feed.name(),
            open ? "open" : Numbers.ohms(z.getReal(), feed.errorOhm()),
            open ? "-" : Numbers.ohms(z.getImaginary(), feed.errorOhm()),
            open ? "-" : Numbers.significant(feed.errorOhm(), 2),
            swr(feed, Plane.FEEDPOINT),
            swr(feed, Plane.TRANSFORMER_INPUT),
            swr(feed, Plane.TRANSMITTER),
            Numbers.significant(feed.gapMetres() * 1e3, 4),
            Integer.toString(solution.unknowns()));
      }
    }
    return table;
  }

  private static String swr(SolvedFeed feed, Plane plane) {
    return feed.find(plane).map(mismatch -> Numbers.swr(mismatch.swr())).orElse("-");
  }

  private Table ledger() {
    Table table = new Table().number("frequency", "MHz");
    Ledger first = report.solutions().get(0).ledger().orElseThrow();
    first.entries().forEach(entry -> table.number(entry.part(), "W"));
    table.number("sum", "W");
    for (SolvedFrequency solution : report.solutions()) {
      Ledger ledger = solution.ledger().orElseThrow();
      List<String> row = new ArrayList<>();
      row.add(Numbers.megahertz(solution.frequencyHz()));
      ledger.entries().forEach(entry -> row.add(Numbers.heat(entry.part(), entry.watts(), 3)));
      row.add(Numbers.fixed(ledger.availableWatts() * (1 + ledger.closure()), 3));
      table.row(row.toArray(new String[0]));
    }
    return table;
  }

  private Table commonMode() {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .number("open", "V")
            .number("source", "ohm")
            .number("choke", "ohm")
            .number("choke", "V")
            .number("choke", "W")
            .number("current at", "choke, A")
            .number("largest", "A")
            .number("at", "m")
            .number("other", "chokes, W");
    for (SolvedFrequency solution : report.solutions()) {
      CommonMode mode = solution.commonMode().orElseThrow();
      table.row(
          Numbers.megahertz(solution.frequencyHz()),
          Numbers.fixed(mode.drive().openVoltage().abs(), 1),
          Numbers.rectangular(mode.drive().sourceImpedance()),
          Numbers.rectangular(mode.chokeOhm()),
          Numbers.fixed(mode.chokes().get(0).voltage(), 1),
          Numbers.fixed(mode.topWatts(), 2),
          Numbers.fixed(mode.current().abs(), 4),
          Numbers.fixed(mode.largest().current().abs(), 4),
          Numbers.fixed(mode.largest().distance(), 2),
          mode.chokes().size() == 1
              ? "-"
              : mode.chokes().stream()
                  .skip(1)
                  .map(choke -> Numbers.fixed(choke.watts(), 2))
                  .collect(Collectors.joining(", ")));
    }
    return table;
  }

  private Table radiation() {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .number("peak gain", "dBi")
            .number("elevation", "deg")
            .number("azimuth", "deg")
            .number("efficiency", "%")
            .number("power balance");
    for (SolvedFrequency solution : report.solutions()) {
      table.row(
          Numbers.megahertz(solution.frequencyHz()),
          Numbers.fixed(solution.peak().gainDbi(), 2),
          Numbers.fixed(solution.peak().elevationDegrees(), 1),
          Numbers.fixed(solution.peak().azimuthDegrees(), 1),
          Numbers.fixed(100 * solution.radiationEfficiency(), 2),
          Numbers.fixed(solution.powerBalance(), 6));
    }
    return table;
  }

  private Table gains() {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .number("elevation", "deg")
            .number("azimuth", "deg")
            .number("gain", "dBi");
    for (SolvedFrequency solution : report.solutions()) {
      for (GainSample sample : solution.gainSamples()) {
        table.row(
            Numbers.megahertz(solution.frequencyHz()),
            Numbers.significant(sample.elevationDegrees(), 6),
            Numbers.fixed(sample.azimuthDegrees(), 1),
            Numbers.fixed(sample.gainDbi(), 2));
      }
    }
    return table;
  }

  private Table budget() {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .number("accepted", "W")
            .number("radiated", "%")
            .number("conductors", "%")
            .number("fittings", "%")
            .number("soil", "%");
    for (SolvedFrequency solution : report.solutions()) {
      PowerBudget budget = solution.powerBudget().orElseThrow();
      double scale = 100 / budget.accepted();
      table.row(
          Numbers.megahertz(solution.frequencyHz()),
          Numbers.significant(budget.accepted(), 5),
          Numbers.fixed(scale * budget.radiated(), 3),
          Numbers.fixed(scale * budget.conductorLoss(), 3),
          Numbers.fixed(scale * budget.fittingLoss(), 3),
          budget.soilAbsorbed().isPresent()
              ? Numbers.fixed(scale * budget.soilAbsorbed().getAsDouble(), 3)
              : "-");
    }
    return table;
  }

  private Table ports() {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .word("voltage at")
            .word("current at")
            .number("resistance", "ohm")
            .number("reactance", "ohm");
    for (SolvedFrequency solution : report.solutions()) {
      Complex[][] z = solution.portMatrix();
      for (int i = 0; i < z.length; i++) {
        for (int j = 0; j < z.length; j++) {
          boolean open = z[i][j].isInfinite();
          double error = solution.feeds().get(i).errorOhm();
          table.row(
              Numbers.megahertz(solution.frequencyHz()),
              solution.feeds().get(i).name(),
              solution.feeds().get(j).name(),
              open ? "open" : Numbers.ohms(z[i][j].getReal(), error),
              open ? "-" : Numbers.ohms(z[i][j].getImaginary(), error));
        }
      }
    }
    return table;
  }

  private Table currents() {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .word("wire")
            .number("distance", "m")
            .number("magnitude", "mA")
            .number("phase", "deg");
    for (SolvedFrequency solution : report.solutions()) {
      for (CurrentSample sample : solution.currents()) {
        double magnitude = sample.current().abs();
        table.row(
            Numbers.megahertz(solution.frequencyHz()),
            sample.wire(),
            Numbers.fixed(sample.distance(), 3),
            Numbers.fixed(1e3 * magnitude, 4),
            magnitude == 0
                ? "-"
                : Numbers.fixed(Math.toDegrees(sample.current().getArgument()), 1));
      }
    }
    return table;
  }

  /** One line for each different warning, with how often it was given. */
  static void warnings(StringBuilder out, Palette palette, List<Warning> warnings) {
    Map<Warning, Integer> counts = new LinkedHashMap<>();
    warnings.forEach(warning -> counts.merge(warning, 1, Integer::sum));
    if (counts.isEmpty()) {
      return;
    }
    out.append('\n').append(palette.heading("Warnings")).append('\n');
    counts.forEach(
        (warning, count) -> {
          out.append("  ").append(palette.warning(warning.name())).append('\n');
          String times = count > 1 ? " (" + count + " times)" : "";
          Paragraph.write(out, "      ", 6, warning.message() + times);
        });
  }
}
