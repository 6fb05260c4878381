package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanwire.result.Warning;
import org.spanwire.study.BandFixes;
import org.spanwire.study.BandResponse;
import org.spanwire.study.BandSummary;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.HeatAt;
import org.spanwire.study.Ledger;
import org.spanwire.study.Plane;
import org.spanwire.study.PlaneResponse;
import org.spanwire.study.SwrAt;
import org.spanwire.study.Verdict;

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
    summary();
    json.writeArrayFieldStart("bands");
    for (BandResponse band : report.bands()) {
      band(band);
    }
    json.writeEndArray();
    if (report.ratingTables().isPresent()) {
      report.ratingTables().get().json(json);
    }
    if (report.lineLengths().isPresent()) {
      report.lineLengths().get().json(json);
    }
    if (report.fixes().isPresent()) {
      fixes(report.fixes().get());
    }
    json.writeEndObject();
  }

  private void fixes(List<BandFixes> all) throws IOException {
    json.writeArrayFieldStart("fixes");
    for (BandFixes band : all) {
      json.writeStartObject();
      json.writeStringField("band", band.band());
      json.writeStringField("verdict", band.now().label());
      json.writeNumberField("worst_swr", band.worst());
      json.writeStringField("wanted", band.wanted().label());
      json.writeArrayFieldStart("changes");
      for (BandFixes.Fix fix : band.fixes()) {
        json.writeStartObject();
        json.writeStringField("part", fix.part().name().toLowerCase(Locale.ROOT));
        json.writeStringField("name", fix.name());
        json.writeStringField("unit", fix.to().dimension().symbol());
        json.writeNumberField("from", fix.from().value());
        json.writeNumberField("to", fix.to().value());
        json.writeNumberField("worst_swr", fix.worst());
        json.writeNumberField("swr_per_unit", fix.perUnit());
        json.writeArrayFieldStart("spoilt");
        for (String spoilt : fix.spoilt()) {
          json.writeString(spoilt);
        }
        json.writeEndArray();
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void summary() throws IOException {
    BandSummary summary = report.summary();
    json.writeObjectFieldStart("summary");
    for (Verdict verdict : Verdict.values()) {
      json.writeArrayFieldStart(verdict.label().replace('-', '_'));
      for (String band : summary.with(verdict)) {
        json.writeString(band);
      }
      json.writeEndArray();
    }
    json.writeFieldName("burns_first");
    Optional<BandSummary.PartHeat> first = summary.burnsFirst();
    if (first.isPresent()) {
      json.writeStartObject();
      json.writeStringField("part", first.get().heat().part());
      json.writeStringField("band", first.get().band());
      json.writeNumberField("heat_w", first.get().heat().watts());
      json.writeNumberField("frequency_hz", first.get().heat().frequencyHz());
      json.writeEndObject();
    } else {
      json.writeNull();
    }
    List<String> unknown = report.unknownHeat();
    if (!unknown.isEmpty()) {
      json.writeStringField("burns_first_reason", String.join("; ", unknown));
    }
    json.writeEndObject();
  }

  private void band(BandResponse band) throws IOException {
    json.writeStartObject();
    json.writeStringField("band", band.band());
    json.writeNumberField("low_hz", band.range().lowHz());
    json.writeNumberField("high_hz", band.range().highHz());
    json.writeArrayFieldStart("swr");
    for (PlaneResponse plane : band.planes()) {
      plane(plane, band.range());
    }
    json.writeEndArray();
    json.writeObjectFieldStart("best_match");
    json.writeNumberField("frequency_hz", band.at(Plane.TRANSMITTER).best().frequencyHz());
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
    heat(band);
    json.writeNumberField("points", band.points());
    json.writeNumberField("largest_relative_error", band.largestRelativeError());
    json.writeNumberField("interpolation_error", band.interpolationError());
    List<Warning> warnings = new ArrayList<>(report.doubts());
    warnings.addAll(band.warnings());
    Json.warnings(json, warnings);
    json.writeEndObject();
  }

  private void heat(BandResponse band) throws IOException {
    json.writeArrayFieldStart("heat");
    for (HeatAt heat : band.heat()) {
      json.writeStartObject();
      json.writeStringField("part", heat.part());
      json.writeNumberField("heat_w", heat.watts());
      json.writeNumberField("frequency_hz", heat.frequencyHz());
      json.writeEndObject();
    }
    json.writeEndArray();
    OptionalDouble choke =
        band.heat(Ledger.CHOKE)
            .map(h -> OptionalDouble.of(h.watts()))
            .orElse(OptionalDouble.empty());
    Json.number(json, "choke_heat_w", choke);
    if (choke.isEmpty()) {
      json.writeStringField("choke_heat_reason", Json.NO_ROUTE);
    }
  }

  private void plane(PlaneResponse plane, FrequencyRange range) throws IOException {
    json.writeStartObject();
    json.writeStringField("plane", plane.plane().label());
    json.writeNumberField("reference_ohm", plane.referenceOhm());
    json.writeStringField("verdict", plane.verdict().label());
    value("low_edge", new SwrAt(range.lowHz(), plane.low()));
    value("middle", new SwrAt(range.middleHz(), plane.middle()));
    value("high_edge", new SwrAt(range.highHz(), plane.high()));
    value("minimum", plane.best());
    value("maximum", plane.worst());
    json.writeArrayFieldStart("at_most_2");
    for (FrequencyRange direct : plane.direct()) {
      json.writeStartObject();
      json.writeNumberField("low_hz", direct.lowHz());
      json.writeNumberField("high_hz", direct.highHz());
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
