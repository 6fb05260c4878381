package org.spanwire.design;

import java.util.ArrayList;
import java.util.Collections;
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
    return new StageReader(evaluator).chain(item);
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

  /** Weather by name, in the order of the file. */
  Map<String, Weather> weather(Item item) {
    Names names = item.names("weather");
    if (names.all().isEmpty()) {
      throw item.fault(item.name() + " is empty; add one such as storm: {wind: 30 m/s}");
    }
    return Collections.unmodifiableMap(names.map((name, each) -> oneWeather(each)));
  }

  private Weather oneWeather(Item item) {
    Fields fields = item.fields("wind", "ice", "temperature-change");
    return item.checked(
        () ->
            new Weather(
                notNegative(fields, "wind", 0, Dimension.SPEED),
                notNegative(fields, "ice", 0, Dimension.LENGTH),
                fields
                    .optional("temperature-change")
                    .map(change -> evaluator.value(change, Dimension.TEMPERATURE_CHANGE))
                    .orElse(0.0)));
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
    if (hertz < DesignReader.LEAST_BARE_HERTZ && evaluator.isBareNumber(item)) {
      throw item.fault(
          item.name() + " is " + item.text() + " without a unit; expected one such as 7.1 MHz");
    }
    return hertz;
  }
}
