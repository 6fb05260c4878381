package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.result.Warning;

/** A result that can be written in every format. */
public interface Report {

  /** All named doubts, the same one perhaps several times. */
  List<Warning> warnings();

  /** For reading, in plain text. */
  String text(Palette palette);

  /** Writes one JSON object. */
  void json(JsonGenerator json) throws IOException;

  /** Writes the header row and the rows. */
  void csv(CSVPrinter csv) throws IOException;

  /** The whole output in a format. */
  default String render(Format format, Palette palette) throws IOException {
    StringWriter out = new StringWriter();
    switch (format) {
      case TEXT -> out.write(text(palette));
      case JSON -> {
        try (JsonGenerator json = generator(out)) {
          json(json);
        }
        out.write('\n');
      }
      case CSV -> {
        CSVFormat rfc = CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();
        try (CSVPrinter csv = new CSVPrinter(out, rfc)) {
          csv(csv);
        }
      }
    }
    return out.toString();
  }

  /** Writes JSON for people to read too, line by line. */
  static JsonGenerator generator(Writer out) throws IOException {
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    JsonGenerator json =
        JsonFactory.builder()
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            .build()
            .createGenerator(out);
    json.setPrettyPrinter(printer);
    return json;
  }
}
