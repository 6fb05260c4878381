package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.OptionalDouble;
import org.spanwire.circuit.bench.BatchStatistics;
import org.spanwire.circuit.bench.BenchReadings;
import org.spanwire.circuit.bench.Imbalance;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.circuit.bench.UnitReading;

/** The outcome of {@code spanwire balun bench} as JSON. */
final class BenchJson {

  private final BenchReport report;
  private final JsonGenerator json;

  BenchJson(BenchReport report, JsonGenerator json) {
    this.report = report;
    this.json = json;
  }

  void write() throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "balun bench");
    json.writeStringField("version", report.version());
    json.writeObjectFieldStart("limits");
    json.writeNumberField("loss_max_db", report.limits().maximumLossDb());
    json.writeNumberField("amplitude_imbalance_max_db", report.limits().maximumAmplitudeDb());
    json.writeNumberField("phase_imbalance_max_deg", report.limits().maximumPhaseDegrees());
    json.writeNumberField("return_loss_min_db", report.limits().minimumReturnLossDb());
    json.writeEndObject();
    if (report.range().isPresent()) {
      json.writeFieldName("judged_over");
      range(report.range().get());
    }
    json.writeArrayFieldStart("units");
    for (BenchReport.Unit unit : report.units()) {
      unit(unit);
    }
    json.writeEndArray();
    if (report.batch().isPresent()) {
      batch(report.batch().get());
    }
    json.writeArrayFieldStart("chokes");
    for (BenchReport.Choke choke : report.chokes()) {
      choke(choke);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("heat_runs");
    for (BenchReport.HeatRun run : report.heatRuns()) {
      heatRun(run);
    }
    json.writeEndArray();
    Json.warnings(json, report.warnings());
    json.writeEndObject();
  }

  private void unit(BenchReport.Unit unit) throws IOException {
    json.writeStartObject();
    json.writeStringField("source", unit.source());
    json.writeStringField("name", unit.measured().name());
    json.writeStringField("measured_as", unit.measured().method().label());
    json.writeFieldName("usable");
    if (unit.usable().isEmpty()) {
      json.writeNull();
    } else {
      json.writeStartArray();
      for (Limits.Range range : unit.usable().get()) {
        range(range);
      }
      json.writeEndArray();
    }
    if (unit.judgement().isPresent()) {
      judgement(unit.judgement().get());
    }
    json.writeArrayFieldStart("readings");
    for (UnitReading reading : unit.measured().readings()) {
      reading(reading);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void range(Limits.Range range) throws IOException {
    json.writeStartObject();
    json.writeNumberField("low_hz", range.fromHz());
    json.writeNumberField("high_hz", range.toHz());
    json.writeEndObject();
  }

  private void judgement(Limits.Judgement judgement) throws IOException {
    json.writeStringField("outcome", judgement.passed() ? "passed" : "failed");
    json.writeBooleanField("measured_over_range", judgement.covered());
    json.writeArrayFieldStart("breaches");
    for (Limits.Breach breach : judgement.breaches()) {
      json.writeStartObject();
      json.writeNumberField("frequency_hz", breach.frequencyHz());
      json.writeStringField("quantity", breach.quantity().label());
      Json.number(json, "value", breach.value());
      json.writeNumberField("limit", breach.limit());
      json.writeStringField("unit", breach.quantity().unit());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void reading(UnitReading reading) throws IOException {
    json.writeStartObject();
    json.writeNumberField("frequency_hz", reading.frequencyHz());
    shown("loss_db", reading.lossDb());
    shown("return_loss_db", reading.returnLossDb());
    if (reading.imbalance().isPresent()) {
      Imbalance imbalance = reading.imbalance().get();
      json.writeNumberField("amplitude_imbalance_db", imbalance.amplitudeDb());
      json.writeNumberField("phase_imbalance_deg", imbalance.phaseDegrees());
      Json.number(json, "rejection_db", imbalance.rejectionDb());
    }
    shown("conversion_db", reading.conversionDb());
    json.writeEndObject();
  }

  /** What a reading shows; null for infinity. */
  private void shown(String name, OptionalDouble value) throws IOException {
    if (value.isPresent()) {
      Json.number(json, name, value);
    }
  }

  private void batch(BatchStatistics statistics) throws IOException {
    json.writeObjectFieldStart("batch");
    json.writeNumberField("units", report.units().size());
    if (report.golden().isPresent()) {
      json.writeStringField("golden", report.golden().get());
    }
    json.writeArrayFieldStart("rows");
    for (BatchStatistics.Row row : statistics.rows()) {
      json.writeStartObject();
      json.writeNumberField("frequency_hz", row.frequencyHz());
      json.writeStringField("quantity", row.quantity().label());
      json.writeStringField("unit", row.quantity().unit());
      json.writeNumberField("mean", row.batch().mean());
      json.writeNumberField("deviation", row.batch().deviation());
      json.writeNumberField("least", row.batch().least());
      json.writeNumberField("largest", row.batch().largest());
      shown("mean_less_golden", row.offset());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void choke(BenchReport.Choke choke) throws IOException {
    json.writeStartObject();
    json.writeStringField("source", choke.source());
    json.writeArrayFieldStart("readings");
    for (BenchReadings.ChokeAt at : choke.readings()) {
      json.writeStartObject();
      json.writeNumberField("frequency_hz", at.frequencyHz());
      Json.complex(json, "impedance_ohm", at.reading().impedance());
      Json.number(json, "uncertainty_ohm", at.reading().uncertaintyOhm());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void heatRun(BenchReport.HeatRun each) throws IOException {
    BenchReadings.Heat heat = each.heat();
    json.writeStartObject();
    json.writeStringField("source", each.source());
    json.writeNumberField("start_celsius", heat.run().start());
    json.writeNumberField("rise_k", heat.run().rise());
    json.writeNumberField("time_constant_s", heat.run().timeConstant());
    json.writeNumberField("residual_k", heat.run().residual());
    if (heat.dissipatedWatts().isPresent()) {
      json.writeNumberField(
          "thermal_resistance_k_per_w",
          heat.run().thermalResistance(heat.dissipatedWatts().getAsDouble()));
    }
    json.writeNumberField("allowed_rise_k", heat.allowedRise());
    json.writeObjectFieldStart("safe_peak_power_w");
    for (OperatingMode mode : OperatingMode.values()) {
      json.writeNumberField(mode.word(), heat.safePeakPower(mode));
    }
    json.writeEndObject();
    json.writeEndObject();
  }
}
