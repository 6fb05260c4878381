package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.Design;
import org.spanwire.result.Warning;
import org.spanwire.study.Goal;
import org.spanwire.study.OptimizeResult;
import org.spanwire.study.OptimizeStudy;

/**
 * The outcome of {@code spanwire optimize}.
 *
 * @param design the design
 * @param version version of the program
 * @param tolerance wanted relative accuracy of impedances
 * @param study what was asked for
 * @param result the result
 * @param warnings named doubts
 */
public record OptimizeReport(
    Design design,
    String version,
    double tolerance,
    OptimizeStudy study,
    OptimizeResult result,
    List<Warning> warnings)
    implements Report {

  /** Takes a copy. */
  public OptimizeReport {
    warnings = List.copyOf(warnings);
  }

  /** Whether a candidate is as good as the best. */
  boolean isTie(OptimizeResult.Candidate candidate) {
    return result.candidates().size() > 1
        && result.candidates().get(1).cost() - result.candidates().get(0).cost()
            <= OptimizeResult.TIE
        && candidate.cost() - result.candidates().get(0).cost() <= OptimizeResult.TIE;
  }

  @Override
  public String text(Palette palette) {
    return new OptimizeText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "optimize");
    json.writeStringField("design", design.title());
    json.writeStringField("version", version);
    json.writeNumberField("tolerance", tolerance);
    json.writeNumberField("seed", study.seed());
    json.writeArrayFieldStart("goals");
    for (Goal goal : result.goals()) {
      json.writeString(goal.label());
    }
    json.writeEndArray();
    json.writeNumberField("scanned", result.scanned());
    json.writeNumberField("solves", result.solves());
    json.writeNumberField("reflection_error", result.modelError());
    json.writeFieldName("nominal");
    candidate(json, result.nominal());
    json.writeArrayFieldStart("best");
    for (OptimizeResult.Candidate each : result.candidates()) {
      candidate(json, each);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("front");
    for (OptimizeResult.Candidate each : result.front()) {
      candidate(json, each);
    }
    json.writeEndArray();
    Json.warnings(json, warnings);
    json.writeEndObject();
  }

  private void candidate(JsonGenerator json, OptimizeResult.Candidate each) throws IOException {
    json.writeStartObject();
    settings(json, "parameters", each.parameters());
    json.writeBooleanField("feasible", each.feasible());
    json.writeBooleanField("tie", result.candidates().contains(each) && isTie(each));
    json.writeArrayFieldStart("values");
    for (double value : each.values()) {
      json.writeNumber(value);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("at_bound");
    for (OptimizeResult.Setting setting : each.parameters()) {
      if (setting.atBound()) {
        json.writeString(setting.parameter());
      }
    }
    json.writeEndArray();
    json.writeArrayFieldStart("binding");
    for (OptimizeResult.Binding binding : each.binding()) {
      json.writeStartObject();
      json.writeStringField("band", binding.band());
      json.writeNumberField("frequency_hz", binding.frequencyHz());
      settings(json, "installation", binding.installation());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("bands");
    for (OptimizeResult.BandValue band : each.bands()) {
      json.writeStartObject();
      json.writeStringField("band", band.band());
      json.writeNumberField("value", band.value());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("flatness");
    for (OptimizeResult.Flatness flat : each.flatness()) {
      json.writeStartObject();
      json.writeStringField("parameter", flat.parameter());
      Json.number(json, "low", flat.low());
      Json.number(json, "high", flat.high());
      if (flat.low().isEmpty() || flat.high().isEmpty()) {
        Json.undefined(json);
      }
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void settings(
      JsonGenerator json, String name, List<OptimizeResult.Setting> settings) throws IOException {
    json.writeObjectFieldStart(name);
    for (OptimizeResult.Setting setting : settings) {
      json.writeNumberField(setting.parameter(), setting.value().value());
    }
    json.writeEndObject();
  }

  /** One row per design: as it is, the best, and the front. */
  @Override
  public void csv(CSVPrinter csv) throws IOException {
    List<String> header = new ArrayList<>(List.of("kind"));
    result.nominal().parameters().forEach(setting -> header.add(setting.parameter()));
    result.goals().forEach(goal -> header.add(goal.label()));
    header.add("feasible");
    result.nominal().bands().forEach(band -> header.add(band.band()));
    csv.printRecord(header);
    row(csv, "nominal", result.nominal());
    for (OptimizeResult.Candidate each : result.candidates()) {
      row(csv, isTie(each) ? "tie" : "best", each);
    }
    for (OptimizeResult.Candidate each : result.front()) {
      row(csv, "front", each);
    }
  }

  private static void row(CSVPrinter csv, String kind, OptimizeResult.Candidate each)
      throws IOException {
    List<Object> row = new ArrayList<>(List.of(kind));
    each.parameters().forEach(setting -> row.add(setting.value().value()));
    row.addAll(each.values());
    row.add(each.feasible());
    each.bands().forEach(band -> row.add(band.value()));
    csv.printRecord(row);
  }
}
