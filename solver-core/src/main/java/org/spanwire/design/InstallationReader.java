package org.spanwire.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** Reads the feed chain, the bands and the frequencies of interest. */
final class InstallationReader {

  private final Evaluator evaluator;

  InstallationReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  List<Stage> feedChain(Item item) {
    return item.items("a list of stages such as [transformer: {ratio: 4}]").stream()
        .map(this::stage)
        .toList();
  }

  private Stage stage(Item item) {
    Fields fields = item.fields("transformer", "choke", "line");
    String kind = fields.only("transformer", "choke", "line");
    Item stage = fields.required(kind, "{}");
    return switch (kind) {
      case "transformer" -> transformer(stage);
      case "choke" -> choke(stage);
      default -> line(stage);
    };
  }

  private Stage transformer(Item item) {
    Fields fields = item.fields("ratio", "touchstone", "output");
    double ratio = evaluator.positive(fields.required("ratio", "4"), Dimension.NUMBER);
    return new Stage.Transformer(
        ratio,
        fields.optional("touchstone").map(Item::path),
        fields
            .optional("output")
            .map(
                output ->
                    output.choice(
                        Map.of(
                            "balanced", Stage.Output.BALANCED,
                            "unbalanced", Stage.Output.UNBALANCED)))
            .orElse(Stage.Output.BALANCED));
  }

  private Stage choke(Item item) {
    Item impedance = item.fields("impedance").required("impedance", "3 kohm");
    return new Stage.Choke(new ChokeReader(evaluator).impedance(impedance));
  }

  private Stage line(Item item) {
    Fields fields = item.fields("impedance", "length", "velocity-factor", "loss");
    double impedance =
        evaluator.positive(fields.required("impedance", "50 ohm"), Dimension.RESISTANCE);
    double length = evaluator.positive(fields.required("length", "20 m"), Dimension.LENGTH);
    double velocityFactor =
        evaluator.positive(fields.required("velocity-factor", "0.66"), Dimension.NUMBER);
    Optional<Stage.Loss> loss = fields.optional("loss").map(this::loss);
    return item.checked(() -> new Stage.Line(impedance, length, velocityFactor, loss));
  }

  private Stage.Loss loss(Item item) {
    Fields fields = item.fields("frequency", "per", "value");
    return new Stage.Loss(
        evaluator.positive(fields.required("frequency", "10 MHz"), Dimension.FREQUENCY),
        evaluator.positive(fields.required("per", "100 m"), Dimension.LENGTH),
        evaluator.notNegative(fields.required("value", "2.2 dB"), Dimension.LEVEL));
  }

  /** The chosen plan, cut down to the chosen bands. */
  BandPlan bands(Item item) {
    Fields fields = item.fields("plan", "use");
    Item name = fields.required("plan", "iaru-region-1");
    BandPlan plan =
        BandPlan.find(name.text())
            .orElseThrow(
                () ->
                    name.fault(
                        "unknown band plan "
                            + Words.quote(name.text())
                            + "; "
                            + Words.remedy(
                                name.text(),
                                BandPlan.all().stream().map(BandPlan::name).toList())));
    Optional<Item> use = fields.optional("use").filter(u -> !u.isText() || !u.text().equals("all"));
    List<Band> chosen = use.map(u -> chosen(u, plan)).orElse(plan.bands());
    return new BandPlan(plan.name(), plan.date(), plan.source(), chosen);
  }

  private static List<Band> chosen(Item use, BandPlan plan) {
    List<Band> chosen = new ArrayList<>();
    for (Item item : use.items("all, or a list of bands such as [40 m, 20 m]")) {
      Band band = band(item, plan.bands(), "band plan " + plan.name());
      if (chosen.contains(band)) {
        throw item.fault("band " + band.name() + " is listed twice; remove one of them");
      }
      chosen.add(band);
    }
    if (chosen.isEmpty()) {
      throw use.fault(
          use.name() + " is empty; expected all, or a list of bands such as [40 m, 20 m]");
    }
    return chosen;
  }

  static Band band(Item item, List<Band> known, String where) {
    String name = item.text();
    return known.stream()
        .filter(band -> band.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                item.fault(
                    "unknown band "
                        + Words.quote(name)
                        + " in "
                        + where
                        + "; "
                        + Words.remedy(name, known.stream().map(Band::name).toList())));
  }

  CutRules cut(Item item) {
    Fields fields = item.fields("datum", "loop", "fold-back", "terminal", "stretch", "tolerance");
    return new CutRules(
        datum(fields.required("datum", "eye")),
        notNegative(fields, "loop", CutRules.PLAIN.loop(), Dimension.LENGTH),
        notNegative(fields, "fold-back", CutRules.PLAIN.foldBack(), Dimension.LENGTH),
        notNegative(fields, "terminal", CutRules.PLAIN.terminal(), Dimension.LENGTH),
        notNegative(fields, "stretch", CutRules.PLAIN.stretch(), Dimension.NUMBER),
        notNegative(fields, "tolerance", CutRules.PLAIN.tolerance(), Dimension.LENGTH));
  }

  private double notNegative(Fields fields, String key, double otherwise, Dimension dimension) {
    return fields
        .optional(key)
        .map(value -> evaluator.notNegative(value, dimension))
        .orElse(otherwise);
  }

  private static CutRules.Datum datum(Item item) {
    return switch (item.text()) {
      case "eye" -> CutRules.Datum.EYE;
      case "tip" -> CutRules.Datum.TIP;
      default -> throw item.unknown("datum", List.of("eye", "tip"));
    };
  }

  double reference(Item item) {
    return evaluator.positive(item, Dimension.RESISTANCE);
  }

  OptionalDouble power(Item item) {
    return OptionalDouble.of(evaluator.positive(item, Dimension.POWER));
  }

  List<Double> frequencies(Item item) {
    List<Double> frequencies = new ArrayList<>();
    for (Item each : item.items("a list of frequencies such as [7.1 MHz, 14.15 MHz]")) {
      frequencies.add(frequency(each));
    }
    return List.copyOf(frequencies);
  }

  double frequency(Item item) {
    double hertz = evaluator.valueOrBare(item, Dimension.FREQUENCY);
    if (!(hertz > 0)) {
      throw item.fault(
          item.name()
              + " is "
              + new Quantity(hertz, Dimension.FREQUENCY)
              + "; expected more than 0 such as 7.1 MHz");
    }
    return hertz;
  }
}
