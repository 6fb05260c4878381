package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.Design;
import org.spanwire.result.Warning;
import org.spanwire.study.FitResult;
import org.spanwire.study.Measurement;
import org.spanwire.study.PhysicalChange;

/**
 * The outcome of {@code spanwire fit}.
 *
 * @param design the design
 * @param version version of the program
 * @param tolerance wanted relative accuracy of impedances
 * @param source the measured file, or how else the readings came
 * @param measurement what was measured
 * @param result the result
 * @param warnings named doubts
 */
public record FitReport(
    Design design,
    String version,
    double tolerance,
    String source,
    Measurement measurement,
    FitResult result,
    List<Warning> warnings)
    implements Report {

  /** Takes a copy. */
  public FitReport {
    warnings = List.copyOf(warnings);
  }

  @Override
  public String text(Palette palette) {
    return new FitText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "fit");
    json.writeStringField("design", design.title());
    json.writeStringField("version", version);
    json.writeNumberField("tolerance", tolerance);
    json.writeStringField("measured", source);
    json.writeStringField("readings", measurement.phase() ? "reflection" : "swr");
    json.writeStringField("plane", measurement.plane().label());
    json.writeNumberField("frequencies", result.frequencies());
    json.writeNumberField("solves", result.solves());
    json.writeNumberField("reflection_error", result.modelError());
    json.writeNumberField("nominal_misfit", result.nominalMisfit());
    json.writeNumberField("misfit", result.misfit());
    if (result.overErrors().isPresent()) {
      json.writeNumberField("misfit_over_errors", result.overErrors().getAsDouble());
    }
    json.writeBooleanField("as_designed", result.asDesigned());
    json.writeArrayFieldStart("estimates");
    for (int i = 0; i < result.estimates().size(); i++) {
      estimate(json, i);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("causes");
    for (FitResult.Cause cause : result.causes()) {
      json.writeStartObject();
      json.writeStringField("parameter", cause.parameter());
      json.writeNumberField("value", cause.value().value());
      json.writeNumberField("misfit", cause.misfit());
      json.writeNumberField("explained", cause.explained());
      json.writeBooleanField("enough", cause.enough());
      change(json, cause.change());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("others");
    for (FitResult.Candidate other : result.others()) {
      candidate(json, other);
    }
    json.writeEndArray();
    json.writeFieldName("further_reading");
    if (result.reading().isEmpty()) {
      json.writeNull();
    } else {
      FitResult.Reading reading = result.reading().get();
      json.writeStartObject();
      json.writeNumberField("frequency_hz", reading.frequencyHz());
      json.writeBooleanField("alternatives", reading.alternatives());
      json.writeFieldName("first");
      candidate(json, reading.first());
      json.writeFieldName("second");
      candidate(json, reading.second());
      json.writeNumberField("first_swr", reading.firstSwr());
      json.writeNumberField("second_swr", reading.secondSwr());
      json.writeNumberField("difference", reading.difference());
      json.writeBooleanField("parts", reading.parts());
      json.writeEndObject();
    }
    json.writeArrayFieldStart("compared");
    for (FitResult.Comparison each : result.comparisons()) {
      json.writeStartObject();
      json.writeNumberField("frequency_hz", each.frequencyHz());
      Json.number(json, "read_swr", each.readSwr());
      Json.number(json, "designed_swr", each.designedSwr());
      Json.number(json, "estimated_swr", each.estimatedSwr());
      json.writeEndObject();
    }
    json.writeEndArray();
    Json.warnings(json, warnings);
    json.writeEndObject();
  }

  private void estimate(JsonGenerator json, int index) throws IOException {
    FitResult.Estimate estimate = result.estimates().get(index);
    json.writeStartObject();
    json.writeStringField("parameter", estimate.parameter());
    json.writeStringField("unit", estimate.value().dimension().symbol());
    json.writeNumberField("nominal", estimate.nominal().value());
    json.writeNumberField("value", estimate.value().value());
    Json.number(json, "standard_error", estimate.standardError());
    Json.number(json, "low", estimate.low());
    Json.number(json, "high", estimate.high());
    if (Double.isNaN(estimate.standardError())) {
      Json.undefined(json);
    }
    json.writeBooleanField("at_bound", estimate.atBound());
    change(json, estimate.change());
    json.writeObjectFieldStart("correlations");
    for (int j = 0; j < result.estimates().size(); j++) {
      if (j != index) {
        Json.number(json, result.estimates().get(j).parameter(), result.correlations()[index][j]);
      }
    }
    json.writeEndObject();
    json.writeEndObject();
  }

  private static void candidate(JsonGenerator json, FitResult.Candidate candidate)
      throws IOException {
    json.writeStartArray();
    for (FitResult.Setting setting : candidate.settings()) {
      json.writeStartObject();
      json.writeStringField("parameter", setting.parameter());
      json.writeNumberField("value", setting.value().value());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void change(JsonGenerator json, PhysicalChange change) throws IOException {
    json.writeObjectFieldStart("change");
    json.writeStringField("kind", change.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    json.writeNumberField("by", change.by());
    json.writeEndObject();
  }

  /** One row per parameter. */
  @Override
  public void csv(CSVPrinter csv) throws IOException {
    csv.printRecord(
        "parameter",
        "unit",
        "nominal",
        "value",
        "standard_error",
        "low",
        "high",
        "alone_value",
        "alone_misfit",
        "alone_explained");
    for (FitResult.Estimate estimate : result.estimates()) {
      FitResult.Cause alone = cause(estimate.parameter());
      csv.printRecord(
          estimate.parameter(),
          estimate.value().dimension().symbol(),
          estimate.nominal().value(),
          estimate.value().value(),
          SolveCsv.cell(estimate.standardError()),
          SolveCsv.cell(estimate.low()),
          SolveCsv.cell(estimate.high()),
          alone.value().value(),
          alone.misfit(),
          alone.explained());
    }
  }

  private FitResult.Cause cause(String parameter) {
    return result.causes().stream()
        .filter(cause -> cause.parameter().equals(parameter))
        .findFirst()
        .orElseThrow();
  }
}
