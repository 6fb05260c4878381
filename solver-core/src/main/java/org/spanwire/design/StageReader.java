package org.spanwire.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanwire.unit.Dimension;

/** Reads the stages of the feed chain. */
final class StageReader {

  private static final String[] KINDS = {
    "transformer", "choke", "line", "stub", "attenuator", "matching", "tuner"
  };

  private final Evaluator evaluator;
  private final LineReader lines;

  StageReader(Evaluator evaluator) {
    this.evaluator = evaluator;
    lines = new LineReader(evaluator);
  }

  List<Stage> chain(Item item) {
    return item.items("a list of stages such as [transformer: {ratio: 4}]").stream()
        .map(this::stage)
        .toList();
  }

  private Stage stage(Item item) {
    Fields fields = item.fields(KINDS);
    String kind = fields.only(KINDS);
    Item stage = fields.required(kind, "{}");
    return switch (kind) {
      case "transformer" -> transformer(stage);
      case "choke" -> choke(stage);
      case "line" -> line(stage);
      case "stub" -> stub(stage);
      case "attenuator" -> attenuator(stage);
      case "matching" -> matching(stage);
      default -> tuner(stage);
    };
  }

  private Stage transformer(Item item) {
    Fields fields = item.fields("ratio", "touchstone", "wound", "output");
    double ratio = evaluator.positive(fields.required("ratio", "4"), Dimension.NUMBER);
    Optional<Stage.Output> output = fields.optional("output").map(StageReader::output);
    WindingReader winding = new WindingReader(evaluator, ratio, output);
    return item.checked(
        () ->
            new Stage.Transformer(
                ratio,
                fields.optional("touchstone").map(Item::path),
                fields.optional("wound").map(winding::read),
                output.orElse(Stage.Output.BALANCED)));
  }

  static Stage.Output output(Item item) {
    return item.choice(
        Map.of("balanced", Stage.Output.BALANCED, "unbalanced", Stage.Output.UNBALANCED));
  }

  private Stage choke(Item item) {
    Item impedance = item.fields("impedance").required("impedance", "3 kohm");
    return new Stage.Choke(new ChokeReader(evaluator).impedance(impedance));
  }

  private Stage line(Item item) {
    Fields fields = item.fields(LineReader.KEYS);
    return item.checked(() -> new Stage.Line(lines.line(item, fields)));
  }

  private Stage stub(Item item) {
    Fields fields =
        item.fields("impedance", "length", "velocity-factor", "loss", "end", "connection");
    boolean shorted =
        fields.required("end", "shorted").choice(Map.of("open", false, "shorted", true));
    boolean inSeries =
        fields
            .optional("connection")
            .map(word -> word.choice(Map.of("shunt", false, "series", true)))
            .orElse(false);
    return item.checked(() -> new Stage.Stub(lines.line(item, fields), shorted, inSeries));
  }

  private Stage attenuator(Item item) {
    Fields fields = item.fields("loss");
    return new Stage.Attenuator(
        evaluator.notNegative(fields.required("loss", "3 dB"), Dimension.LEVEL));
  }

  private Stage matching(Item item) {
    List<Stage.Part> parts = new ArrayList<>();
    for (Item each : item.items("a list such as [shunt: {c: 120 pF}, series: {l: 1.2 uH}]")) {
      Fields fields = each.fields("series", "shunt");
      String place = fields.only("series", "shunt");
      Item part = fields.required(place, "{l: 1.2 uH}");
      parts.add(new LumpedReader(evaluator).part(part, place.equals("series")));
    }
    return item.checked(() -> new Stage.Matching(parts));
  }

  private Stage tuner(Item item) {
    Fields fields = item.fields("swr", "loss", "limit-loss");
    double swr = evaluator.positive(fields.required("swr", "10"), Dimension.NUMBER);
    double loss = fields.optional("loss").map(this::level).orElse(0.0);
    double limit = fields.optional("limit-loss").map(this::level).orElse(loss);
    return item.checked(() -> new Stage.Tuner(swr, loss, limit));
  }

  private double level(Item item) {
    return evaluator.notNegative(item, Dimension.LEVEL);
  }
}
