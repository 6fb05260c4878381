package org.spanwire.design;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanwire.circuit.Winding;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.circuit.bench.TransformerDesign;
import org.spanwire.circuit.bench.TransformerSheet;
import org.spanwire.unit.Dimension;

/** Reads a transformer to be wound, in YAML 1.2 or JSON. */
public final class TransformerSheetReader {

  /** What a file of this version begins with, under the key {@code format}. */
  public static final String FORMAT = "spanwire-transformer/1";

  /** Impedance of a winding asked for where the file states none; common practice, no source. */
  private static final double MINIMUM_OHM = 1000;

  /** Temperature rise allowed where the file states none; common practice, no source. */
  private static final double ALLOWED_RISE = 60;

  /**
   * Flux density in tesla up to which the small-signal permeability is taken to hold, where the
   * file states none; common practice, no source: a fraction of a ferrite's saturation.
   */
  private static final double FLUX_LIMIT = 0.05;

  private static final double REFERENCE_OHM = 50;
  private static final double POWER_WATTS = 100;

  private final Evaluator evaluator = new Evaluator(Optional.empty(), Map.of());

  private TransformerSheetReader() {}

  /**
   * Reads a file. Files that it names are looked for beside it.
   *
   * @throws DesignException if the file cannot be read or describes no transformer
   */
  public static TransformerSheet read(Path file) {
    Path directory = Optional.ofNullable(file.getParent()).orElse(Path.of(""));
    Item root =
        Document.parse(TextFile.read(file), file.toString(), Optional.of(directory))
            .root()
            .as("the file");
    return new TransformerSheetReader().sheet(root);
  }

  private TransformerSheet sheet(Item root) {
    Fields fields =
        root.fields(
            "format",
            "title",
            "ratio",
            "output",
            "wound",
            "lowest",
            "minimum-impedance",
            "frequencies",
            "bands",
            "reference",
            "power",
            "swr",
            "temperature-rise",
            "flux-density",
            "limits");
    Item format = fields.required("format", FORMAT);
    if (!format.text().equals(FORMAT)) {
      throw format.fault(
          "format " + Words.quote(format.text()) + " is not known here; expected " + FORMAT);
    }
    String title = Words.oneLine(fields.required("title", "4:1 for the long kit").text());
    double lowest = evaluator.positive(fields.required("lowest", "3.5 MHz"), Dimension.FREQUENCY);
    double minimum = positive(fields, "minimum-impedance", MINIMUM_OHM, Dimension.RESISTANCE);
    Item wound = fields.required("wound", "{connection: equal-delay, core: …}");
    boolean found = !WindingReader.statesTurns(wound);
    Winding sketch = winding(fields).sketch(wound);
    Winding winding =
        found
            ? wound.checked(
                () -> sketch.withTurns(TransformerDesign.turns(sketch.core(), lowest, minimum)))
            : sketch;
    double reference = positive(fields, "reference", REFERENCE_OHM, Dimension.RESISTANCE);
    return new TransformerSheet(
        title,
        new TransformerDesign(winding, reference),
        lowest,
        minimum,
        found,
        spots(fields, lowest),
        positive(fields, "power", POWER_WATTS, Dimension.POWER),
        fields.optional("swr").map(this::swr).orElse(List.of(1.0, 2.0, 3.0)),
        positive(fields, "temperature-rise", ALLOWED_RISE, Dimension.TEMPERATURE),
        positive(fields, "flux-density", FLUX_LIMIT, Dimension.FLUX_DENSITY),
        fields.optional("limits").map(this::limits));
  }

  private WindingReader winding(Fields fields) {
    double ratio = evaluator.positive(fields.required("ratio", "4"), Dimension.NUMBER);
    return new WindingReader(evaluator, ratio, fields.optional("output").map(StageReader::output));
  }

  private double positive(Fields fields, String key, double otherwise, Dimension dimension) {
    return fields.optional(key).map(each -> evaluator.positive(each, dimension)).orElse(otherwise);
  }

  /** The lowest frequency, then both edges of every band, or the frequencies. */
  private List<TransformerSheet.Spot> spots(Fields fields, double lowest) {
    InstallationReader reader = new InstallationReader(evaluator);
    List<TransformerSheet.Spot> spots = new ArrayList<>();
    String kind = fields.only("frequencies", "bands");
    Item item = fields.required(kind, "");
    if (kind.equals("bands")) {
      for (Band band : reader.bands(item).bands()) {
        spots.add(new TransformerSheet.Spot(band.name(), band.lowHz()));
        spots.add(new TransformerSheet.Spot(band.name(), band.highHz()));
      }
    } else {
      reader.frequencies(item).forEach(f -> spots.add(new TransformerSheet.Spot("-", f)));
    }
    if (spots.stream().noneMatch(spot -> spot.frequencyHz() == lowest)) {
      spots.add(0, new TransformerSheet.Spot("lowest", lowest));
    }
    return spots;
  }

  private List<Double> swr(Item item) {
    List<Double> values = new ArrayList<>();
    for (Item each : item.items("a list such as [1, 2, 3]")) {
      double value = evaluator.value(each, Dimension.NUMBER);
      if (!(value >= 1)) {
        throw each.fault(each.name() + " is " + value + "; expected an SWR of at least 1");
      }
      values.add(value);
    }
    if (values.isEmpty()) {
      throw item.fault(item.name() + " is empty; expected a list such as [1, 2, 3]");
    }
    return values;
  }

  private TransformerSheet.Acceptance limits(Item item) {
    Fields fields = item.fields("loss", "amplitude", "phase", "return-loss", "from", "to");
    double phase =
        Math.toDegrees(evaluator.positive(fields.required("phase", "10 deg"), Dimension.ANGLE));
    Limits limits =
        new Limits(
            evaluator.positive(fields.required("loss", "1 dB"), Dimension.LEVEL),
            evaluator.positive(fields.required("amplitude", "1 dB"), Dimension.LEVEL),
            phase,
            evaluator.positive(fields.required("return-loss", "14 dB"), Dimension.LEVEL));
    double from = evaluator.positive(fields.required("from", "3.5 MHz"), Dimension.FREQUENCY);
    double to = evaluator.positive(fields.required("to", "30 MHz"), Dimension.FREQUENCY);
    if (!(to > from)) {
      throw fields.required("to", "30 MHz").fault("to is not above from; exchange them");
    }
    return new TransformerSheet.Acceptance(limits, new Limits.Range(from, to));
  }
}
