package org.spanwire.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** Reads the requirements. */
final class RequirementReader {

  private static final String[] KINDS = {
    "swr", "gain", "efficiency", "choke-heat", "bandwidth", "verdict", "exposure-distance", "yield"
  };

  /** SWR within which a bandwidth is counted unless another is given. */
  private static final double USUAL_SWR = 2;

  private final Evaluator evaluator;
  private final InstallationReader installation;
  private final List<Band> bands;
  private final boolean feedLine;
  private final boolean spreads;

  /**
   * A reader.
   *
   * @param bands those of the design
   * @param feedLine whether the design has the route of its line, without which no choke's heat is
   *     known
   * @param spreads whether a parameter carries a spread, without which there is no yield
   */
  RequirementReader(Evaluator evaluator, List<Band> bands, boolean feedLine, boolean spreads) {
    this.evaluator = evaluator;
    this.installation = new InstallationReader(evaluator);
    this.bands = bands;
    this.feedLine = feedLine;
    this.spreads = spreads;
  }

  List<Requirement> read(Item item) {
    return item.items("a list such as [{band: 40 m, swr: {max: 2}}]").stream()
        .map(this::requirement)
        .toList();
  }

  private Requirement requirement(Item item) {
    List<String> keys = new ArrayList<>(List.of("band", "frequency"));
    keys.addAll(List.of(KINDS));
    Fields fields = item.fields(keys.toArray(new String[0]));
    String what = fields.only(KINDS);
    Item limit = fields.required(what, "");
    if (what.equals("yield")) {
      return yieldOf(fields, limit);
    }
    Requirement.Scope scope = scope(fields);
    return switch (what) {
      case "swr" -> swr(limit, scope);
      case "gain" -> gain(limit, scope);
      case "efficiency" -> new Requirement.MinimumEfficiency(scope, share(limit));
      case "choke-heat" -> chokeHeat(limit, scope);
      case "bandwidth" -> bandwidth(limit, wholeBand(limit, scope));
      case "verdict" -> verdict(limit, wholeBand(limit, scope));
      default -> exposureDistance(limit, wholeBand(limit, scope));
    };
  }

  private Requirement.Scope scope(Fields fields) {
    String where = fields.only("band", "frequency");
    Item place = fields.required(where, "");
    return where.equals("band")
        ? new Requirement.InBand(InstallationReader.band(place, bands, "the design's bands"))
        : new Requirement.AtFrequency(installation.frequency(place));
  }

  private Requirement yieldOf(Fields fields, Item limit) {
    for (String place : List.of("band", "frequency")) {
      fields
          .optional(place)
          .ifPresent(
              item -> {
                throw item.fault(
                    "a yield is that of the whole design, for all its other requirements; remove "
                        + place);
              });
    }
    if (!spreads) {
      throw limit.fault(
          limit.name() + " needs a spread; add one such as height: {value: 9 m, spread: 2 m}");
    }
    return new Requirement.MinimumYield(share(limit));
  }

  private Requirement exposureDistance(Item item, Requirement.InBand scope) {
    Item max = item.fields("max").required("max", "4 m");
    return new Requirement.MaximumExposureDistance(
        scope, evaluator.notNegative(max, Dimension.LENGTH));
  }

  private static Requirement.InBand wholeBand(Item item, Requirement.Scope scope) {
    if (scope instanceof Requirement.InBand band) {
      return band;
    }
    throw item.fault(item.name() + " is asked for at one frequency; name a band instead");
  }

  private Requirement swr(Item item, Requirement.Scope scope) {
    Fields fields = item.fields("max", "plane");
    double maximum = swrValue(fields.required("max", "2.0"));
    return new Requirement.MaximumSwr(scope, maximum, plane(fields));
  }

  private double swrValue(Item item) {
    double value = evaluator.value(item, Dimension.NUMBER);
    if (!(value >= 1)) {
      throw item.fault(
          item.name() + " is " + value + "; expected an SWR of at least 1 such as 2.0");
    }
    return value;
  }

  private static Requirement.Plane plane(Fields fields) {
    return fields
        .optional("plane")
        .map(RequirementReader::plane)
        .orElse(Requirement.Plane.TRANSMITTER);
  }

  private static Requirement.Plane plane(Item item) {
    return switch (item.text()) {
      case "feedpoint" -> Requirement.Plane.FEEDPOINT;
      case "transmitter" -> Requirement.Plane.TRANSMITTER;
      default -> throw item.unknown("plane", List.of("feedpoint", "transmitter"));
    };
  }

  private Requirement gain(Item item, Requirement.Scope scope) {
    Fields fields = item.fields("min", "elevation", "azimuth");
    double minimum = evaluator.value(fields.required("min", "5 dBi"), Dimension.GAIN);
    Item angle = fields.required("elevation", "30 deg");
    double elevation = degrees(angle);
    if (!(elevation >= 0 && elevation <= 90)) {
      throw angle.fault(
          angle.name() + " is " + elevation + " deg; expected 0 to 90 deg above the horizon");
    }
    OptionalDouble azimuth =
        fields
            .optional("azimuth")
            .map(a -> OptionalDouble.of(degrees(a)))
            .orElse(OptionalDouble.empty());
    return new Requirement.MinimumGain(scope, minimum, elevation, azimuth);
  }

  private double degrees(Item item) {
    return new Quantity(evaluator.value(item, Dimension.ANGLE), Dimension.ANGLE).degrees();
  }

  private double share(Item item) {
    Item min = item.fields("min").required("min", "50 %");
    double minimum = evaluator.positive(min, Dimension.NUMBER);
    if (minimum > 1) {
      throw min.fault(min.name() + " is " + 100 * minimum + " %; expected at most 100 %");
    }
    return minimum;
  }

  private Requirement chokeHeat(Item item, Requirement.Scope scope) {
    if (!feedLine) {
      throw item.fault(
          item.name()
              + " needs the line's route, without which no choke's heat is known; add feed-line:"
              + " {path: …, conductor: …}");
    }
    Item max = item.fields("max").required("max", "20 W");
    return new Requirement.MaximumChokeHeat(scope, evaluator.positive(max, Dimension.POWER));
  }

  private Requirement bandwidth(Item item, Requirement.InBand scope) {
    Fields fields = item.fields("min", "swr", "plane");
    Item min = fields.required("min", "100 kHz");
    double minimum = evaluator.positive(min, Dimension.FREQUENCY);
    double width = scope.band().highHz() - scope.band().lowHz();
    if (minimum > width) {
      throw min.fault(
          min.name()
              + " is "
              + new Quantity(minimum, Dimension.FREQUENCY)
              + ", more than band "
              + scope.band().name()
              + " has; expected at most "
              + new Quantity(width, Dimension.FREQUENCY));
    }
    Optional<Item> swr = fields.optional("swr");
    return new Requirement.MinimumBandwidth(
        scope, minimum, swr.map(this::swrValue).orElse(USUAL_SWR), plane(fields));
  }

  private static Requirement verdict(Item item, Requirement.InBand scope) {
    return new Requirement.LowestVerdict(
        scope,
        item.choice(
            Map.of(
                "direct", Requirement.Usability.DIRECT,
                "tunable", Requirement.Usability.TUNABLE,
                "wide-tuner", Requirement.Usability.WIDE_TUNER)));
  }
}
