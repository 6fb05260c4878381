package org.spanwire.design;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.unit.Dimension;

/** Reads SWR as typed at an installation, in YAML 1.2 or JSON. */
public final class MeasuredSwrReader {

  /** What a file of this version begins with, under the key {@code format}. */
  public static final String FORMAT = "spanwire-measured/1";

  private static final double REFERENCE_OHM = 50;

  private static final Map<String, MeasuredSwr.Plane> PLANES =
      Map.of(
          "feedpoint", MeasuredSwr.Plane.FEEDPOINT,
          "transformer-input", MeasuredSwr.Plane.TRANSFORMER_INPUT,
          "transmitter", MeasuredSwr.Plane.TRANSMITTER);

  private final Evaluator evaluator = new Evaluator(Optional.empty(), Map.of());

  private MeasuredSwrReader() {}

  /**
   * Reads a file.
   *
   * @throws DesignException if the file cannot be read or holds no readings
   */
  public static MeasuredSwr read(Path file) {
    Item root =
        Document.parse(TextFile.read(file), file.toString(), Optional.empty())
            .root()
            .as("the file");
    return new MeasuredSwrReader().measured(root);
  }

  private MeasuredSwr measured(Item root) {
    Fields fields =
        root.fields("format", "title", "plane", "reference", "line", "error", "readings");
    Item format = fields.required("format", FORMAT);
    if (!format.text().equals(FORMAT)) {
      throw format.fault(
          "format " + Words.quote(format.text()) + " is not known here; expected " + FORMAT);
    }
    String title = Words.oneLine(fields.required("title", "Larch hut").text());
    MeasuredSwr.Plane plane =
        fields
            .optional("plane")
            .map(item -> item.choice(PLANES))
            .orElse(MeasuredSwr.Plane.TRANSMITTER);
    double reference =
        fields
            .optional("reference")
            .map(r -> evaluator.positive(r, Dimension.RESISTANCE))
            .orElse(REFERENCE_OHM);
    double error = fields.optional("error").map(this::error).orElse(MeasuredSwr.USUAL_ERROR);
    Optional<TransmissionLine> line = fields.optional("line").map(this::line);
    List<MeasuredSwr.Reading> readings = readings(fields, error);
    return root.checked(() -> new MeasuredSwr(title, plane, reference, line, readings));
  }

  private TransmissionLine line(Item item) {
    return new LineReader(evaluator).line(item, item.fields(LineReader.KEYS));
  }

  private double error(Item item) {
    double error = evaluator.positive(item, Dimension.NUMBER);
    if (error >= 1) {
      throw item.fault(item.name() + " is " + error + "; expected a share of the SWR such as 5 %");
    }
    return error;
  }

  private List<MeasuredSwr.Reading> readings(Fields fields, double usual) {
    List<MeasuredSwr.Reading> readings = new ArrayList<>();
    String example = "[{at: 7.1 MHz, swr: 1.8}]";
    for (Item each : fields.required("readings", example).items("a list such as " + example)) {
      Fields row = each.fields("at", "swr", "error");
      double frequency = evaluator.positive(row.required("at", "7.1 MHz"), Dimension.FREQUENCY);
      Item swr = row.required("swr", "1.8");
      double value = evaluator.value(swr, Dimension.NUMBER);
      double error = row.optional("error").map(this::error).orElse(usual);
      readings.add(swr.checked(() -> new MeasuredSwr.Reading(frequency, value, error)));
    }
    return readings;
  }
}
