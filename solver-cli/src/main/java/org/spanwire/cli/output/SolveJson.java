package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.PowerBudget;
import org.spanwire.result.Warning;
import org.spanwire.study.CommonMode;
import org.spanwire.study.Ledger;
import org.spanwire.study.PlaneMismatch;
import org.spanwire.study.SolvedFeed;
import org.spanwire.study.SolvedFrequency;

/** The outcome of {@code spanwire solve} as JSON. */
final class SolveJson {

  private final SolveReport report;
  private final JsonGenerator json;

  SolveJson(SolveReport report, JsonGenerator json) {
    this.report = report;
    this.json = json;
  }

  void write() throws IOException {
    report.conditions().jsonHead(json, "solve");
    json.writeArrayFieldStart("solutions");
    for (SolvedFrequency solution : report.solutions()) {
      solution(solution);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void solution(SolvedFrequency solution) throws IOException {
    json.writeStartObject();
    json.writeNumberField("frequency_hz", solution.frequencyHz());
    json.writeArrayFieldStart("feeds");
    for (SolvedFeed feed : solution.feeds()) {
      feed(feed);
    }
    json.writeEndArray();
    portMatrix(solution.portMatrix());
    Json.peak(json, solution.peak());
    Json.gainSamples(json, solution.gainSamples());
    json.writeNumberField("radiation_efficiency", solution.radiationEfficiency());
    Json.number(json, "power_balance", solution.powerBalance());
    if (solution.powerBudget().isPresent()) {
      budget(solution.powerBudget().get());
    }
    if (solution.ledger().isPresent()) {
      ledger(solution.ledger().get());
    }
    if (solution.commonMode().isPresent()) {
      commonMode(solution.commonMode().get());
    } else {
      json.writeNullField("common_mode");
      json.writeStringField("common_mode_reason", Json.NO_ROUTE);
    }
    currents("currents", solution.currents());
    json.writeNumberField("unknowns", solution.unknowns());
    List<Warning> warnings = new ArrayList<>(report.doubts());
    warnings.addAll(solution.warnings());
    Json.warnings(json, warnings);
    json.writeEndObject();
  }

  private void feed(SolvedFeed feed) throws IOException {
    Complex z = feed.impedance();
    json.writeStartObject();
    json.writeStringField("name", feed.name());
    Json.complex(json, "impedance_ohm", z);
    if (z.isInfinite()) {
      json.writeNullField("impedance_error_ohm");
      json.writeStringField("status", "open");
    } else {
      Json.number(json, "impedance_error_ohm", feed.errorOhm());
    }
    json.writeNumberField("gap_m", feed.gapMetres());
    json.writeArrayFieldStart("swr");
    for (PlaneMismatch each : feed.planes()) {
      Json.swr(json, each);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void portMatrix(Complex[][] matrix) throws IOException {
    json.writeArrayFieldStart("port_matrix_ohm");
    for (Complex[] row : matrix) {
      json.writeStartArray();
      for (Complex z : row) {
        json.writeStartObject();
        Json.number(json, "re", z.isInfinite() ? Double.NaN : z.getReal());
        Json.number(json, "im", z.isInfinite() ? Double.NaN : z.getImaginary());
        if (z.isInfinite()) {
          json.writeStringField("status", "open");
        }
        json.writeEndObject();
      }
      json.writeEndArray();
    }
    json.writeEndArray();
  }

  private void budget(PowerBudget budget) throws IOException {
    json.writeObjectFieldStart("power_budget_w");
    json.writeNumberField("accepted", budget.accepted());
    json.writeNumberField("radiated", budget.radiated());
    json.writeNumberField("conductor_loss", budget.conductorLoss());
    json.writeNumberField("fitting_loss", budget.fittingLoss());
    Json.number(json, "soil_absorbed", budget.soilAbsorbed());
    json.writeEndObject();
  }

  private void ledger(Ledger ledger) throws IOException {
    json.writeObjectFieldStart("power_ledger");
    json.writeNumberField("available_w", ledger.availableWatts());
    json.writeArrayFieldStart("parts");
    for (Ledger.Entry entry : ledger.entries()) {
      json.writeStartObject();
      json.writeStringField("part", entry.part());
      json.writeNumberField("power_w", entry.watts());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeNumberField("closure", ledger.closure());
    json.writeEndObject();
  }

  private void commonMode(CommonMode mode) throws IOException {
    json.writeObjectFieldStart("common_mode");
    json.writeNumberField("power_w", report.powerWatts());
    json.writeNumberField("open_voltage_v", mode.drive().openVoltage().abs());
    Json.complex(json, "source_impedance_ohm", mode.drive().sourceImpedance());
    Json.complex(json, "choke_impedance_ohm", mode.chokeOhm());
    json.writeNumberField("current_at_choke_a", mode.current().abs());
    json.writeArrayFieldStart("chokes");
    for (CommonMode.ChokeHeat choke : mode.chokes()) {
      json.writeStartObject();
      json.writeNumberField("distance_m", choke.distanceMetres());
      json.writeNumberField("voltage_v", choke.voltage());
      json.writeNumberField("heat_w", choke.watts());
      json.writeEndObject();
    }
    json.writeEndArray();
    currents("line_currents", mode.samples());
    json.writeEndObject();
  }

  private void currents(String name, List<CurrentSample> currents) throws IOException {
    json.writeArrayFieldStart(name);
    for (CurrentSample sample : currents) {
      json.writeStartObject();
      json.writeStringField("wire", sample.wire());
      json.writeNumberField("distance_m", sample.distance());
      Json.complex(json, "current_a", sample.current());
      json.writeEndObject();
    }
    json.writeEndArray();
  }
}
