package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Winding;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.circuit.bench.TransformerDesign;
import org.spanwire.circuit.bench.TransformerDesign.Cause;
import org.spanwire.circuit.bench.TransformerDesign.PowerLimit;
import org.spanwire.circuit.bench.TransformerSheet;
import org.spanwire.circuit.bench.TransformerSheet.Spot;
import org.spanwire.result.Warning;

/**
 * The outcome of {@code spanwire balun design}.
 *
 * @param version version of the program
 * @param sheet the transformer
 */
public record TransformerReport(String version, TransformerSheet sheet) implements Report {

  private static final List<OperatingMode> MODES =
      List.of(OperatingMode.SSB, OperatingMode.CW, OperatingMode.DATA);

  private TransformerDesign design() {
    return sheet.design();
  }

  private PowerLimit power(Spot spot, double swr, OperatingMode mode) {
    return design()
        .safePower(spot.frequencyHz(), sheet.allowedRise(), sheet.fluxLimit(), swr, mode);
  }

  @Override
  public List<Warning> warnings() {
    return List.of();
  }

  @Override
  public String text(Palette palette) {
    StringBuilder out = new StringBuilder();
    out.append(palette.heading(sheet.title())).append('\n');
    Winding winding = design().winding();
    Conditions.line(out, "winding", StageText.winding(winding));
    Conditions.line(out, "turns", turns());
    Conditions.line(
        out,
        "line",
        StageText.line(winding.line())
            + "; the turns take "
            + Conditions.metres(winding.turns() * winding.core().turnLength()));
    out.append('\n').append(palette.heading("Against frequency")).append('\n');
    out.append(against().render()).append('\n');
    out.append(
            palette.heading(
                "Largest peak power in W for a rise of "
                    + Numbers.significant(sheet.allowedRise(), 3)
                    + " K and "
                    + Numbers.significant(1e3 * sheet.fluxLimit(), 3)
                    + " mT, and what sets it"))
        .append('\n')
        .append(powers().render());
    assumptions(out);
    return out.toString();
  }

  private String turns() {
    String wanted =
        Numbers.significant(sheet.minimumOhm(), 4)
            + " ohm at "
            + Numbers.megahertz(sheet.lowestHz())
            + " MHz";
    double there = design().chokingImpedance(sheet.lowestHz()).abs();
    String has = Numbers.fixed(there, 0) + " ohm";
    if (sheet.turnsFound()) {
      return design().winding().turns() + ", the fewest that reach " + wanted + ": " + has;
    }
    return design().winding().turns()
        + ", given; a winding has "
        + has
        + (there < sheet.minimumOhm() ? ", LESS than the " : ", at least the ")
        + wanted
        + " wanted";
  }

  private Table against() {
    String power = Numbers.significant(sheet.powerWatts(), 4) + " W";
    Table table =
        new Table()
            .word("band")
            .number("frequency", "MHz")
            .number("winding", "ohm")
            .number("common-mode", "ohm")
            .number("loss", "dB")
            .number("SWR at", "the input")
            .number("cores take", "%")
            .number("flux at", power + ", mT")
            .number("rise at", power + ", K");
    for (Spot spot : sheet.spots()) {
      double f = spot.frequencyHz();
      table.row(
          spot.name(),
          Numbers.megahertz(f),
          complex(design().chokingImpedance(f)),
          complex(design().commonModeImpedance(f)),
          Numbers.fixed(design().lossDb(f), 3),
          Numbers.swr(design().inputSwr(f)),
          Numbers.fixed(100 * design().coreShare(f), 2),
          Numbers.fixed(1e3 * design().fluxDensity(f, sheet.powerWatts(), 1), 2),
          Numbers.fixed(design().temperatureRise(f, sheet.powerWatts(), 1), 1));
    }
    return table;
  }

  private static String complex(Complex z) {
    return z.isInfinite()
        ? "inf"
        : Numbers.fixed(z.getReal(), 0)
            + (z.getImaginary() < 0 ? " - j" : " + j")
            + Numbers.fixed(Math.abs(z.getImaginary()), 0);
  }

  private Table powers() {
    Table table = new Table().word("band").number("frequency", "MHz").number("SWR", "antenna");
    MODES.forEach(mode -> table.number(mode.label(), "").word("set", "by"));
    for (Spot spot : sheet.spots()) {
      for (double swr : sheet.swr()) {
        String[] cells = new String[3 + 2 * MODES.size()];
        cells[0] = spot.name();
        cells[1] = Numbers.megahertz(spot.frequencyHz());
        cells[2] = Numbers.significant(swr, 3);
        for (int m = 0; m < MODES.size(); m++) {
          PowerLimit limit = power(spot, swr, MODES.get(m));
          cells[3 + 2 * m] = Numbers.significant(limit.peakWatts(), 2);
          cells[4 + 2 * m] = word(limit.cause());
        }
        table.row(cells);
      }
    }
    return table;
  }

  private static String word(Cause cause) {
    return cause.name().toLowerCase(Locale.ROOT);
  }

  private void assumptions(StringBuilder out) {
    Paragraph.write(
        out,
        "",
        0,
        "Assumed: permeability at small signal, a floating antenna at the worst phase of its SWR,"
            + " still air all around that takes "
            + Numbers.significant(TransformerDesign.HEAT_TRANSFER, 3)
            + " W/(m² K) from the core (common practice, no source), common-mode current none. A"
            + " closed box takes less, an antenna fed off its centre adds the heat of its common"
            + " mode: see the choke and transformer of spanwire bands. Prove it by a heat run; a"
            + " core can burn, or set fire to what it lies on.");
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    Winding winding = design().winding();
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "balun design");
    json.writeStringField("version", version);
    json.writeStringField("title", sheet.title());
    json.writeNumberField("ratio", winding.connection().ratio());
    json.writeNumberField("turns", winding.turns());
    json.writeBooleanField("turns_found", sheet.turnsFound());
    json.writeNumberField("line_length_m", winding.line().length());
    json.writeStringField("material", winding.core().material().provenance());
    json.writeNumberField("power_w", sheet.powerWatts());
    json.writeNumberField("allowed_rise_k", sheet.allowedRise());
    json.writeNumberField("flux_limit_t", sheet.fluxLimit());
    json.writeArrayFieldStart("spots");
    for (Spot spot : sheet.spots()) {
      spot(json, spot);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void spot(JsonGenerator json, Spot spot) throws IOException {
    double f = spot.frequencyHz();
    json.writeStartObject();
    json.writeStringField("name", spot.name());
    json.writeNumberField("frequency_hz", f);
    Json.complex(json, "winding_impedance_ohm", design().chokingImpedance(f));
    Json.complex(json, "common_mode_impedance_ohm", design().commonModeImpedance(f));
    json.writeNumberField("loss_db", design().lossDb(f));
    json.writeNumberField("input_swr", design().inputSwr(f));
    json.writeNumberField("core_share", design().coreShare(f));
    json.writeNumberField("flux_density_t", design().fluxDensity(f, sheet.powerWatts(), 1));
    json.writeNumberField("temperature_rise_k", design().temperatureRise(f, sheet.powerWatts(), 1));
    json.writeArrayFieldStart("safe_power");
    for (double swr : sheet.swr()) {
      for (OperatingMode mode : OperatingMode.values()) {
        PowerLimit limit = power(spot, swr, mode);
        json.writeStartObject();
        json.writeNumberField("swr", swr);
        json.writeStringField("mode", mode.word());
        Json.number(json, "peak_w", limit.peakWatts());
        json.writeStringField("set_by", word(limit.cause()));
        json.writeEndObject();
      }
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** One row per frequency, SWR and mode. */
  @Override
  public void csv(CSVPrinter csv) throws IOException {
    csv.printRecord(
        "name",
        "frequency_hz",
        "winding_resistance_ohm",
        "winding_reactance_ohm",
        "common_mode_resistance_ohm",
        "common_mode_reactance_ohm",
        "loss_db",
        "input_swr",
        "core_share",
        "flux_density_t",
        "temperature_rise_k",
        "swr",
        "mode",
        "safe_peak_w",
        "set_by");
    for (Spot spot : sheet.spots()) {
      double f = spot.frequencyHz();
      Complex z = design().chokingImpedance(f);
      Complex common = design().commonModeImpedance(f);
      for (double swr : sheet.swr()) {
        for (OperatingMode mode : OperatingMode.values()) {
          PowerLimit limit = power(spot, swr, mode);
          csv.printRecord(
              spot.name(),
              f,
              z.getReal(),
              z.getImaginary(),
              SolveCsv.cell(common.getReal()),
              SolveCsv.cell(common.getImaginary()),
              design().lossDb(f),
              design().inputSwr(f),
              design().coreShare(f),
              design().fluxDensity(f, sheet.powerWatts(), 1),
              design().temperatureRise(f, sheet.powerWatts(), 1),
              swr,
              mode.word(),
              SolveCsv.cell(limit.peakWatts()),
              word(limit.cause()));
        }
      }
    }
  }
}
