package org.spanwire.design;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** Reads the requirements. */
final class RequirementReader {

  private static final String[] KINDS = {
    "swr", "gain", "efficiency", "choke-heat", "bandwidth", "verdict"
  };

  /** SWR within which a bandwidth is counted unless another is given. */
  private static final double USUAL_SWR = 2;

  private final Evaluator evaluator;
  private final InstallationReader installation;
  private final List<Band> bands;
  private final boolean feedLine;

  /**
   * A reader.
   *
   * @param bands those of the design
   * @param feedLine whether the design has the route of its line, without which no choke's heat is
   *     known
   */
  RequirementReader(Evaluator evaluator, List<Band> bands, boolean feedLine) {
    this.evaluator = evaluator;
    this.installation = new InstallationReader(evaluator);
    this.bands = bands;
    this.feedLine = feedLine;
  }

  List<Requirement> read(Item item) {
    return item.items("a list such as [{band: 40 m, swr: {max: 2}}]").stream()
        .map(this::requirement)
        .toList();
  }

  private Requirement requirement(Item item) {
    Fields fields =
        item.fields(
            "band", "frequency", "swr", "gain", "efficiency", "choke-heat", "bandwidth", "verdict");
    String where = fields.only("band", "frequency");
    Item place = fields.required(where, "");
    Requirement.Scope scope =
        where.equals("band")
            ? new Requirement.InBand(InstallationReader.band(place, bands, "the design's bands"))
            : new Requirement.AtFrequency(installation.frequency(place));
    String what = fields.only(KINDS);
    Item limit = fields.required(what, "");
    return switch (what) {
      case "swr" -> swr(limit, scope);
      case "gain" -> gain(limit, scope);
      case "efficiency" -> efficiency(limit, scope);
      case "choke-heat" -> chokeHeat(limit, scope);
      case "bandwidth" -> bandwidth(limit, wholeBand(limit, scope));
      default -> verdict(limit, wholeBand(limit, scope));
    };
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

  private Requirement efficiency(Item item, Requirement.Scope scope) {
    Item min = item.fields("min").required("min", "50 %");
    double minimum = evaluator.positive(min, Dimension.NUMBER);
    if (minimum > 1) {
      throw min.fault(min.name() + " is " + 100 * minimum + " %; expected at most 100 %");
    }
    return new Requirement.MinimumEfficiency(scope, minimum);
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
