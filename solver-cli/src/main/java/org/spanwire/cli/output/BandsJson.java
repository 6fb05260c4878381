package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.spanwire.result.Warning;
import org.spanwire.study.BandResponse;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.SwrAt;

/** The outcome of {@code spanwire bands} as JSON. */
final class BandsJson {

  private final BandsReport report;
  private final JsonGenerator json;

  BandsJson(BandsReport report, JsonGenerator json) {
    this.report = report;
    this.json = json;
  }

  void write() throws IOException {
    report.conditions().jsonHead(json, "bands");
    json.writeStringField("feed", report.feed());
    json.writeArrayFieldStart("bands");
    for (BandResponse band : report.bands()) {
      band(band);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void band(BandResponse band) throws IOException {
    json.writeStartObject();
    json.writeStringField("band", band.band());
    json.writeNumberField("low_hz", band.range().lowHz());
    json.writeNumberField("high_hz", band.range().highHz());
    json.writeArrayFieldStart("swr");
    plane("feedpoint", report.conditions().design().feedpointReferenceOhm(), band);
    plane("transmitter", report.conditions().design().referenceOhm(), band);
    json.writeEndArray();
    json.writeObjectFieldStart("best_match");
    json.writeNumberField("frequency_hz", band.best().frequencyHz());
    Json.complex(json, "impedance_ohm", band.feed().impedance());
    if (band.feed().impedance().isInfinite()) {
      json.writeNullField("impedance_error_ohm");
      json.writeStringField("status", "open");
    } else {
      Json.number(json, "impedance_error_ohm", band.feed().errorOhm());
    }
    Json.peak(json, band.peak());
    Json.gainSamples(json, band.gainSamples());
    json.writeNumberField("radiation_efficiency", band.radiationEfficiency());
    json.writeEndObject();
    json.writeNumberField("points", band.points());
    json.writeNumberField("largest_relative_error", band.largestRelativeError());
    json.writeNumberField("interpolation_error", band.interpolationError());
    List<Warning> warnings = new ArrayList<>(report.doubts());
    warnings.addAll(band.warnings());
    Json.warnings(json, warnings);
    json.writeEndObject();
  }

  /** SWR at one end of the feed chain. Behind ideal transformers it is the same at both. */
  private void plane(String plane, double referenceOhm, BandResponse band) throws IOException {
    json.writeStartObject();
    json.writeStringField("plane", plane);
    json.writeNumberField("reference_ohm", referenceOhm);
    json.writeStringField("verdict", band.verdict().label());
    value("low_edge", new SwrAt(band.range().lowHz(), band.swrLow()));
    value("middle", new SwrAt(band.range().middleHz(), band.swrMiddle()));
    value("high_edge", new SwrAt(band.range().highHz(), band.swrHigh()));
    value("minimum", band.best());
    value("maximum", band.worst());
    json.writeArrayFieldStart("at_most_2");
    for (FrequencyRange range : band.direct()) {
      json.writeStartObject();
      json.writeNumberField("low_hz", range.lowHz());
      json.writeNumberField("high_hz", range.highHz());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void value(String name, SwrAt swr) throws IOException {
    json.writeObjectFieldStart(name);
    json.writeNumberField("frequency_hz", swr.frequencyHz());
    Json.number(json, "value", swr.swr());
    if (Double.isInfinite(swr.swr())) {
      Json.undefined(json);
    }
    json.writeEndObject();
  }
}
