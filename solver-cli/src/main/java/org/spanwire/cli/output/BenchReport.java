package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.circuit.bench.BackToBack;
import org.spanwire.circuit.bench.Imbalance;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.result.Warning;

/**
 * The outcome of {@code spanwire balun bench}.
 *
 * @param version version of the program
 * @param limits what the usable range keeps
 * @param units the units in the order of the inputs
 */
public record BenchReport(String version, Limits limits, List<Unit> units) implements Report {

  private static final Warning BLIND_SPOT =
      new Warning("pair-hides-imbalance", BackToBack.BLIND_SPOT);

  /**
   * One unit, or one of a pair of equal ones.
   *
   * @param source file it was read from
   * @param rows rising in frequency
   * @param usable where all limits are kept; empty for a pair, whose balance is not known
   */
  public record Unit(String source, List<Row> rows, Optional<List<Limits.Range>> usable) {
    /** Takes a copy. */
    public Unit {
      rows = List.copyOf(rows);
    }
  }

  /**
   * A reading.
   *
   * @param frequencyHz frequency in hertz
   * @param lossDb loss of one unit in dB
   * @param returnLossDb return loss at the unbalanced port of the unit or the pair in dB
   * @param balance of the outputs; empty for a pair
   */
  public record Row(
      double frequencyHz, double lossDb, double returnLossDb, Optional<Balance> balance) {}

  /**
   * Balance of two outputs.
   *
   * @param imbalance how they differ
   * @param conversionDb from common to differential mode in dB
   */
  public record Balance(Imbalance imbalance, double conversionDb) {}

  /** Takes a copy. */
  public BenchReport {
    units = List.copyOf(units);
  }

  @Override
  public List<Warning> warnings() {
    return units.stream().anyMatch(unit -> unit.usable().isEmpty())
        ? List.of(BLIND_SPOT)
        : List.of();
  }

  @Override
  public String text(Palette palette) {
    StringBuilder out = new StringBuilder();
    for (Unit unit : units) {
      String kind = unit.usable().isPresent() ? "" : ", one of a pair of equal units back to back";
      out.append(palette.heading(unit.source() + kind)).append('\n').append(table(unit).render());
      unit.usable().ifPresent(ranges -> out.append("usable: ").append(words(ranges)).append('\n'));
      out.append('\n');
    }
    out.append(palette.heading("Usable range")).append('\n');
    Paragraph.write(
        out,
        "  ",
        2,
        "loss <= %s dB, amplitude imbalance <= %s dB, phase imbalance <= %s deg, return loss >= %s dB; between readings by straight lines"
            .formatted(
                Numbers.significant(limits.maximumLossDb(), 4),
                Numbers.significant(limits.maximumAmplitudeDb(), 4),
                Numbers.significant(limits.maximumPhaseDegrees(), 4),
                Numbers.significant(limits.minimumReturnLossDb(), 4)));
    SolveText.warnings(out, palette, warnings());
    return out.toString();
  }

  private static Table table(Unit unit) {
    Table table =
        new Table()
            .number("frequency", "MHz")
            .number("loss", "dB")
            .number("return", "loss, dB")
            .number("amplitude", "imbalance, dB")
            .number("phase", "imbalance, deg")
            .number("common-mode", "rejection, dB")
            .number("conversion", "dB");
    for (Row row : unit.rows()) {
      Optional<Balance> balance = row.balance();
      table.row(
          Numbers.megahertz(row.frequencyHz()),
          Numbers.fixed(row.lossDb(), 3),
          Numbers.fixed(row.returnLossDb(), 1),
          balance.map(b -> Numbers.fixed(b.imbalance().amplitudeDb(), 2)).orElse("-"),
          balance.map(b -> Numbers.fixed(b.imbalance().phaseDegrees(), 2)).orElse("-"),
          balance.map(b -> Numbers.fixed(b.imbalance().rejectionDb(), 1)).orElse("-"),
          balance.map(b -> Numbers.fixed(b.conversionDb(), 1)).orElse("-"));
    }
    return table;
  }

  private static String words(List<Limits.Range> ranges) {
    return ranges.isEmpty()
        ? "nowhere"
        : ranges.stream()
            .map(r -> Numbers.megahertz(r.fromHz()) + "-" + Numbers.megahertz(r.toHz()) + " MHz")
            .collect(Collectors.joining(", "));
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "balun bench");
    json.writeStringField("version", version);
    json.writeObjectFieldStart("limits");
    json.writeNumberField("loss_max_db", limits.maximumLossDb());
    json.writeNumberField("amplitude_imbalance_max_db", limits.maximumAmplitudeDb());
    json.writeNumberField("phase_imbalance_max_deg", limits.maximumPhaseDegrees());
    json.writeNumberField("return_loss_min_db", limits.minimumReturnLossDb());
    json.writeEndObject();
    json.writeArrayFieldStart("units");
    for (Unit unit : units) {
      unit(json, unit);
    }
    json.writeEndArray();
    Json.warnings(json, warnings());
    json.writeEndObject();
  }

  private static void unit(JsonGenerator json, Unit unit) throws IOException {
    json.writeStartObject();
    json.writeStringField("source", unit.source());
    json.writeStringField("measured_as", unit.usable().isPresent() ? "unit" : "pair");
    json.writeFieldName("usable");
    if (unit.usable().isEmpty()) {
      json.writeNull();
    } else {
      json.writeStartArray();
      for (Limits.Range range : unit.usable().get()) {
        json.writeStartObject();
        json.writeNumberField("low_hz", range.fromHz());
        json.writeNumberField("high_hz", range.toHz());
        json.writeEndObject();
      }
      json.writeEndArray();
    }
    json.writeArrayFieldStart("readings");
    for (Row row : unit.rows()) {
      json.writeStartObject();
      json.writeNumberField("frequency_hz", row.frequencyHz());
      json.writeNumberField("loss_db", row.lossDb());
      Json.number(json, "return_loss_db", row.returnLossDb());
      if (row.balance().isPresent()) {
        Balance balance = row.balance().get();
        json.writeNumberField("amplitude_imbalance_db", balance.imbalance().amplitudeDb());
        json.writeNumberField("phase_imbalance_deg", balance.imbalance().phaseDegrees());
        Json.number(json, "rejection_db", balance.imbalance().rejectionDb());
        Json.number(json, "conversion_db", balance.conversionDb());
      }
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** One row per reading. An infinite value is {@code inf}; what a pair cannot show is empty. */
  @Override
  public void csv(CSVPrinter csv) throws IOException {
    csv.printRecord(
        "source",
        "measured_as",
        "frequency_hz",
        "loss_db",
        "return_loss_db",
        "amplitude_imbalance_db",
        "phase_imbalance_deg",
        "rejection_db",
        "conversion_db",
        "warnings");
    for (Unit unit : units) {
      boolean pair = unit.usable().isEmpty();
      for (Row row : unit.rows()) {
        Optional<Imbalance> imbalance = row.balance().map(Balance::imbalance);
        csv.printRecord(
            unit.source(),
            pair ? "pair" : "unit",
            row.frequencyHz(),
            row.lossDb(),
            SolveCsv.cell(row.returnLossDb()),
            imbalance.map(i -> SolveCsv.cell(i.amplitudeDb())).orElse(""),
            imbalance.map(i -> SolveCsv.cell(i.phaseDegrees())).orElse(""),
            imbalance.map(i -> SolveCsv.cell(i.rejectionDb())).orElse(""),
            row.balance().map(b -> SolveCsv.cell(b.conversionDb())).orElse(""),
            pair ? BLIND_SPOT.name() : "");
      }
    }
  }
}
