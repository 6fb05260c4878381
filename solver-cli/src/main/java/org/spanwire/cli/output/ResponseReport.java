package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Mismatch;
import org.spanwire.result.Direction;
import org.spanwire.result.Warning;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.FrequencyResponse;
import org.spanwire.study.InstallationResponse;
import org.spanwire.study.Plane;
import org.spanwire.study.SwrAt;

/**
 * The outcome of {@code spanwire response}.
 *
 * @param conditions what it holds for
 * @param response the response
 * @param plane where impedance and SWR are seen
 * @param directions where the gain is given, perhaps none
 * @param frequenciesHz frequencies of the rows
 */
public record ResponseReport(
    Conditions conditions,
    InstallationResponse response,
    Plane plane,
    List<Direction> directions,
    List<Double> frequenciesHz)
    implements Report {

  /** Limits of SWR that bandwidths are given for. */
  static final List<Double> LIMITS = List.of(2.0, 3.0);

  /** Takes copies. */
  public ResponseReport {
    directions = List.copyOf(directions);
    frequenciesHz = List.copyOf(frequenciesHz);
  }

  /** A direction in words. */
  public static String label(Direction direction) {
    return "elevation "
        + Numbers.significant(direction.elevationDegrees(), 6)
        + " deg, azimuth "
        + Numbers.significant(direction.azimuthDegrees(), 6)
        + " deg";
  }

  /** A place of the feed chain, as a heading names it. */
  public static String place(Plane plane) {
    return plane == Plane.TRANSFORMER_INPUT ? "transformer's input" : plane.label();
  }

  /** Series or parallel. */
  static String kind(FrequencyResponse.Resonance resonance) {
    return resonance.series() ? "series" : "parallel";
  }

  @Override
  public List<Warning> warnings() {
    return response.warnings();
  }

  @Override
  public String text(Palette palette) {
    return new ResponseText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    conditions.jsonHead(json, "response");
    range(json, "range", response.range());
    json.writeStringField("plane", plane.label());
    json.writeNumberField(
        "reference_ohm", response.at(plane, response.range().lowHz()).referenceOhm());
    json.writeNumberField("solves", response.solvedFrequencies().size());
    json.writeNumberField("reflection_error", response.reflectionError());
    json.writeNumberField("gain_error", response.gainError());
    json.writeArrayFieldStart("resonances");
    for (FrequencyResponse.Resonance resonance : response.resonances(Plane.FEEDPOINT)) {
      json.writeStartObject();
      json.writeNumberField("frequency_hz", resonance.frequencyHz());
      json.writeStringField("kind", kind(resonance));
      json.writeNumberField("resistance_ohm", resonance.resistanceOhm());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("best_matches");
    for (SwrAt match : response.bestMatches(plane)) {
      json.writeStartObject();
      json.writeNumberField("frequency_hz", match.frequencyHz());
      Json.number(json, "value", match.swr());
      if (Double.isInfinite(match.swr())) {
        json.writeStringField("status", Json.totalReflection(at(match.frequencyHz())));
      }
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("within");
    for (double limit : LIMITS) {
      json.writeStartObject();
      json.writeNumberField("swr", limit);
      json.writeArrayFieldStart("ranges");
      for (FrequencyRange range : response.within(plane, limit)) {
        json.writeStartObject();
        ends(json, range);
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("directions");
    for (Direction direction : directions) {
      json.writeStartObject();
      json.writeNumberField("elevation_deg", direction.elevationDegrees());
      json.writeNumberField("azimuth_deg", direction.azimuthDegrees());
      json.writeEndObject();
    }
    json.writeEndArray();
    rows(json);
    Json.warnings(json, warnings());
    json.writeEndObject();
  }

  private void rows(JsonGenerator json) throws IOException {
    json.writeArrayFieldStart("rows");
    for (double frequency : frequenciesHz) {
      Mismatch seen = response.at(plane, frequency);
      json.writeStartObject();
      json.writeNumberField("frequency_hz", frequency);
      Json.complex(json, "impedance_ohm", seen.impedance());
      Json.number(json, "swr", seen.swr());
      if (Double.isInfinite(seen.swr())) {
        json.writeStringField("status", Json.totalReflection(seen.impedance()));
      }
      gains(json, frequency);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void gains(JsonGenerator json, double frequency) throws IOException {
    if (directions.isEmpty()) {
      return;
    }
    json.writeArrayFieldStart("gains_dbi");
    for (Direction direction : directions) {
      double gain = response.gainDbi(direction, frequency);
      if (Double.isFinite(gain)) {
        json.writeNumber(gain);
      } else {
        json.writeNull();
      }
    }
    json.writeEndArray();
  }

  private Complex at(double frequency) {
    return response.at(plane, frequency).impedance();
  }

  private static void range(JsonGenerator json, String name, FrequencyRange range)
      throws IOException {
    json.writeObjectFieldStart(name);
    ends(json, range);
    json.writeEndObject();
  }

  private static void ends(JsonGenerator json, FrequencyRange range) throws IOException {
    json.writeNumberField("low_hz", range.lowHz());
    json.writeNumberField("high_hz", range.highHz());
  }

  @Override
  public void csv(CSVPrinter csv) throws IOException {
    List<Object> header =
        new ArrayList<>(List.of("frequency_hz", "resistance_ohm", "reactance_ohm", "swr"));
    directions.forEach(direction -> header.add(SolveCsv.gainColumn(direction)));
    csv.printRecord(header);
    for (double frequency : frequenciesHz) {
      Mismatch seen = response.at(plane, frequency);
      List<Object> row = new ArrayList<>();
      row.add(frequency);
      row.add(SolveCsv.cell(seen.impedance().getReal()));
      row.add(seen.impedance().isInfinite() ? "" : SolveCsv.cell(seen.impedance().getImaginary()));
      row.add(SolveCsv.cell(seen.swr()));
      directions.forEach(
          direction -> row.add(SolveCsv.cell(response.gainDbi(direction, frequency))));
      csv.printRecord(row);
    }
  }
}
