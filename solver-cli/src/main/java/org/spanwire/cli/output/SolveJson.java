package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Mismatch;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.PowerBudget;
import org.spanwire.result.Warning;
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
    currents(solution.currents());
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
    double feedpoint = report.conditions().design().feedpointReferenceOhm();
    double swr = Mismatch.of(z, feedpoint).swr();
    Json.swr(json, "feedpoint", feedpoint, swr, z);
    Json.swr(json, "transmitter", report.conditions().design().referenceOhm(), swr, z);
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

  private void currents(List<CurrentSample> currents) throws IOException {
    json.writeArrayFieldStart("currents");
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
