package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepRow;

/**
 * A sweep as one JSON object.
 *
 * @param sweep the sweep
 * @param version version of the program
 * @param tolerance wanted relative accuracy of impedances
 * @param json takes the object
 */
public record SweepJson(Sweep sweep, String version, double tolerance, JsonGenerator json)
    implements SweepWriter {

  @Override
  public void begin() throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "sweep");
    json.writeStringField("design", sweep.base().title());
    json.writeStringField("version", version);
    json.writeNumberField("tolerance", tolerance);
    json.writeStringField("feed", sweep.request().feed());
    json.writeStringField("plane", sweep.request().plane().label());
    json.writeObjectFieldStart("units");
    for (String name : sweep.space().parameters()) {
      json.writeStringField(name, sweep.base().parameters().get(name).value().dimension().symbol());
    }
    json.writeEndObject();
    json.writeArrayFieldStart("rows");
  }

  @Override
  public void row(SweepRow row) throws IOException {
    json.writeStartObject();
    json.writeObjectFieldStart("parameters");
    List<String> names = sweep.space().parameters();
    for (int i = 0; i < names.size(); i++) {
      json.writeNumberField(names.get(i), row.parameters().get(i).value());
    }
    json.writeEndObject();
    json.writeNumberField("frequency_hz", row.frequencyHz());
    boolean finite = true;
    List<String> columns = sweep.request().columns();
    for (int i = 0; i < columns.size(); i++) {
      double value = row.values().isEmpty() ? Double.NaN : row.values().get(i);
      finite &= Double.isFinite(value);
      Json.number(json, columns.get(i), value);
    }
    json.writeStringField(
        "status", row.failure().isEmpty() && !finite ? "undefined" : row.status());
    if (row.failure().isPresent()) {
      json.writeStringField("message", row.failure().get().message());
    }
    json.writeEndObject();
  }

  @Override
  public void end() throws IOException {
    json.writeEndArray();
    json.writeEndObject();
  }
}
