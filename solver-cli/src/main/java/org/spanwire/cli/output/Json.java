package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.result.GainSample;
import org.spanwire.result.PeakGain;
import org.spanwire.result.Warning;
import org.spanwire.study.PlaneMismatch;

/**
 * Parts that several JSON outputs share. JSON has no infinity: such values are null with a sibling
 * {@code status}.
 */
final class Json {

  /** Why nothing is known of the current on the outside of the feed line. */
  static final String NO_ROUTE = "the design gives no feed-line";

  static final String FORMAT = "spanwire-result/1";

  private Json() {}

  /** Writes a finite number, or null. */
  static void number(JsonGenerator json, String name, double value) throws IOException {
    if (Double.isFinite(value)) {
      json.writeNumberField(name, value);
    } else {
      json.writeNullField(name);
    }
  }

  static void number(JsonGenerator json, String name, OptionalDouble value) throws IOException {
    number(json, name, value.orElse(Double.NaN));
  }

  static void complex(JsonGenerator json, String name, Complex value) throws IOException {
    json.writeFieldName(name);
    if (value.isInfinite()) {
      json.writeNull();
    } else {
      json.writeStartObject();
      json.writeNumberField("re", value.getReal());
      json.writeNumberField("im", value.getImaginary());
      json.writeEndObject();
    }
  }

  /** Why the SWR against an impedance is infinite. */
  static String totalReflection(Complex impedance) {
    if (impedance.isInfinite()) {
      return "open";
    }
    return impedance.equals(Complex.ZERO) ? "short" : "undefined";
  }

  /** One SWR of a list; infinite for an open, a short or another total reflection. */
  static void swr(JsonGenerator json, PlaneMismatch seen) throws IOException {
    double swr = seen.mismatch().swr();
    json.writeStartObject();
    json.writeStringField("plane", seen.plane().label());
    json.writeNumberField("reference_ohm", seen.mismatch().referenceOhm());
    number(json, "value", swr);
    if (Double.isInfinite(swr)) {
      json.writeStringField("status", totalReflection(seen.mismatch().impedance()));
    }
    json.writeEndObject();
  }

  static void undefined(JsonGenerator json) throws IOException {
    json.writeStringField("status", "undefined");
  }

  static void peak(JsonGenerator json, PeakGain peak) throws IOException {
    json.writeObjectFieldStart("gain");
    number(json, "peak_dbi", peak.gainDbi());
    number(json, "elevation_deg", peak.elevationDegrees());
    number(json, "azimuth_deg", peak.azimuthDegrees());
    if (!Double.isFinite(peak.gainDbi())
        || peak.elevationDegrees().isEmpty()
        || peak.azimuthDegrees().isEmpty()) {
      undefined(json);
    }
    json.writeEndObject();
  }

  static void gainSamples(JsonGenerator json, List<GainSample> samples) throws IOException {
    json.writeArrayFieldStart("gain_samples");
    for (GainSample sample : samples) {
      json.writeStartObject();
      json.writeNumberField("elevation_deg", sample.elevationDegrees());
      number(json, "azimuth_deg", sample.azimuthDegrees());
      number(json, "gain_dbi", sample.gainDbi());
      if (sample.azimuthDegrees().isEmpty() || !Double.isFinite(sample.gainDbi())) {
        undefined(json);
      }
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  static void warnings(JsonGenerator json, List<Warning> warnings) throws IOException {
    json.writeArrayFieldStart("warnings");
    for (Warning warning : warnings) {
      json.writeStartObject();
      json.writeStringField("name", warning.name());
      json.writeStringField("message", warning.message());
      json.writeEndObject();
    }
    json.writeEndArray();
  }
}
