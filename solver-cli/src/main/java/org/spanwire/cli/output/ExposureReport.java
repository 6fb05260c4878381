package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.ExposureLimit;
import org.spanwire.design.ExposureRules;
import org.spanwire.geometry.Point;
import org.spanwire.practice.FarFieldScreen;
import org.spanwire.practice.FieldStrength;
import org.spanwire.practice.KeepOut;
import org.spanwire.result.Warning;
import org.spanwire.study.BandExposure;

/**
 * The outcome of {@code spanwire exposure}.
 *
 * @param conditions what it holds for
 * @param rules what exposure is judged by
 * @param powerWatts peak envelope power that the transmitter delivers
 * @param bands the bands in the order of the plan
 * @param doubts named doubts about all of them
 */
public record ExposureReport(
    Conditions conditions,
    ExposureRules rules,
    double powerWatts,
    List<BandExposure> bands,
    List<Warning> doubts)
    implements Report {

  /** What stands beside every number. */
  public static final String NO_CERTIFICATE =
      "An estimate for flat, uniform ground without houses, trees and wiring, and no certificate:"
          + " whoever answers for the station judges it by the law of the place, and measures where"
          + " it matters.";

  /** Takes copies. */
  public ExposureReport {
    bands = List.copyOf(bands);
    doubts = List.copyOf(doubts);
  }

  @Override
  public List<Warning> warnings() {
    List<Warning> all = new ArrayList<>(doubts);
    bands.forEach(band -> all.addAll(band.warnings()));
    return all.stream().distinct().toList();
  }

  @Override
  public String text(Palette palette) {
    return new ExposureText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    conditions.jsonHead(json, "exposure");
    json.writeStringField("caution", NO_CERTIFICATE);
    json.writeNumberField("power_w", powerWatts);
    json.writeStringField("mode", rules.mode().word());
    json.writeNumberField("transmitting", rules.transmitting());
    json.writeNumberField("duty", rules.duty());
    json.writeArrayFieldStart("limits");
    for (ExposureLimit limit : rules.limits()) {
      json.writeStartObject();
      json.writeStringField("name", limit.name());
      json.writeStringField("title", limit.title());
      json.writeStringField("population", CutReport.word(limit.population()));
      json.writeNumberField("averaging_min", limit.averagingMinutes());
      json.writeStringField("date", limit.date());
      json.writeStringField("source", limit.source());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("bands");
    for (BandExposure band : bands) {
      json.writeStartObject();
      json.writeStringField("band", band.band());
      json.writeNumberField("antenna_w", band.antennaWatts());
      json.writeArrayFieldStart("rows");
      for (BandExposure.Row row : band.rows()) {
        row(json, row);
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
    Json.warnings(json, warnings());
    json.writeEndObject();
  }

  private static void row(JsonGenerator json, BandExposure.Row row) throws IOException {
    KeepOut keepOut = row.keepOut();
    double frequency = keepOut.frequencyHz();
    json.writeStartObject();
    json.writeNumberField("floor_m", keepOut.floor());
    json.writeStringField("limit", keepOut.limit().name());
    json.writeNumberField("frequency_hz", frequency);
    json.writeNumberField("limit_e_v_per_m", keepOut.limit().electric(frequency));
    Json.number(json, "limit_h_a_per_m", keepOut.limit().magnetic(frequency));
    json.writeNumberField("distance_m", keepOut.distance());
    json.writeNumberField("shortest_m", keepOut.shortest());
    json.writeNumberField("longest_m", keepOut.longest());
    json.writeNumberField("field_uncertainty", keepOut.uncertainty());
    json.writeStringField("decides", keepOut.electricDecides() ? "electric" : "magnetic");
    if (keepOut.at().isPresent()) {
      person(json, "at", keepOut.at().get());
    } else {
      json.writeNullField("at");
    }
    person(json, "strongest", keepOut.strongest());
    json.writeNumberField("exposure", keepOut.exposure());
    json.writeObjectFieldStart("far_field_screen");
    json.writeNumberField("distance_m", row.screen().distance());
    json.writeNumberField("valid_from_m", FarFieldScreen.validFrom(frequency));
    json.writeBooleanField("valid", row.screen().valid());
    json.writeEndObject();
    json.writeArrayFieldStart("outline_m");
    for (Point point : keepOut.outline()) {
      json.writeStartArray();
      json.writeNumber(point.x());
      json.writeNumber(point.y());
      json.writeEndArray();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void person(JsonGenerator json, String name, FieldStrength person)
      throws IOException {
    json.writeObjectFieldStart(name);
    json.writeNumberField("x_m", person.place().x());
    json.writeNumberField("y_m", person.place().y());
    json.writeNumberField("z_m", person.place().z());
    json.writeNumberField("electric_v_per_m", person.electric());
    json.writeNumberField("magnetic_a_per_m", person.magnetic());
    json.writeEndObject();
  }

  /** One row for each band, floor and limit. */
  @Override
  public void csv(CSVPrinter csv) throws IOException {
    csv.printRecord(
        "band",
        "antenna_w",
        "duty",
        "floor_m",
        "limit",
        "frequency_hz",
        "limit_e_v_per_m",
        "limit_h_a_per_m",
        "distance_m",
        "shortest_m",
        "longest_m",
        "field_uncertainty",
        "decides",
        "exposure",
        "strongest_x_m",
        "strongest_y_m",
        "strongest_z_m",
        "strongest_electric_v_per_m",
        "strongest_magnetic_a_per_m",
        "far_field_screen_m",
        "far_field_screen_valid");
    for (BandExposure band : bands) {
      for (BandExposure.Row row : band.rows()) {
        csvRow(csv, band, row);
      }
    }
  }

  private void csvRow(CSVPrinter csv, BandExposure band, BandExposure.Row row) throws IOException {
    KeepOut keepOut = row.keepOut();
    FieldStrength strongest = keepOut.strongest();
    double frequency = keepOut.frequencyHz();
    csv.printRecord(
        band.band(),
        band.antennaWatts(),
        rules.duty(),
        keepOut.floor(),
        keepOut.limit().name(),
        frequency,
        keepOut.limit().electric(frequency),
        keepOut.limit().magnetic(frequency).isPresent()
            ? keepOut.limit().magnetic(frequency).getAsDouble()
            : "",
        keepOut.distance(),
        keepOut.shortest(),
        keepOut.longest(),
        keepOut.uncertainty(),
        keepOut.electricDecides() ? "electric" : "magnetic",
        keepOut.exposure(),
        strongest.place().x(),
        strongest.place().y(),
        strongest.place().z(),
        strongest.electric(),
        strongest.magnetic(),
        row.screen().distance(),
        row.screen().valid());
  }
}
