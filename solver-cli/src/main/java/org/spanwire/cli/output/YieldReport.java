package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.Design;
import org.spanwire.design.Parameter;
import org.spanwire.design.Requirement;
import org.spanwire.design.Spread;
import org.spanwire.result.Warning;
import org.spanwire.study.YieldResult;
import org.spanwire.unit.Quantity;

/**
 * The outcome of {@code spanwire yield}.
 *
 * @param design the design
 * @param version version of the program
 * @param tolerance wanted relative accuracy of impedances
 * @param seed what the sample was drawn with
 * @param accuracy wanted error of reflection coefficients
 * @param result the result
 * @param warnings named doubts
 */
public record YieldReport(
    Design design,
    String version,
    double tolerance,
    long seed,
    double accuracy,
    YieldResult result,
    List<Warning> warnings)
    implements Report {

  private static final double KILO = 1e-3;

  /** Takes a copy. */
  public YieldReport {
    warnings = List.copyOf(warnings);
  }

  /** A requirement in words. */
  public static String label(Requirement requirement) {
    String scope = RequirementText.scope(requirement);
    if (requirement instanceof Requirement.MaximumSwr swr) {
      return scope
          + ": SWR <= "
          + Numbers.significant(swr.maximum(), 4)
          + (swr.plane() == Requirement.Plane.FEEDPOINT ? " at the feedpoint" : "");
    }
    if (requirement instanceof Requirement.LowestVerdict verdict) {
      return scope + ": verdict " + word(verdict.lowest());
    }
    if (requirement instanceof Requirement.MaximumChokeHeat heat) {
      return scope + ": choke <= " + Numbers.significant(heat.maximumWatts(), 4) + " W";
    }
    if (requirement instanceof Requirement.MinimumGain gain) {
      return scope
          + ": gain >= "
          + Numbers.significant(gain.minimumDbi(), 4)
          + " dBi at "
          + Numbers.significant(gain.elevationDegrees(), 4)
          + " deg";
    }
    if (requirement instanceof Requirement.MinimumEfficiency efficiency) {
      return scope
          + ": efficiency >= "
          + Numbers.fixed(10 * Math.log10(efficiency.minimum()), 1)
          + " dB";
    }
    if (requirement instanceof Requirement.MinimumBandwidth width) {
      return scope
          + ": "
          + Numbers.significant(width.minimumHz() * KILO, 4)
          + " kHz "
          + within(width);
    }
    Requirement.MaximumExposureDistance distance =
        (Requirement.MaximumExposureDistance) requirement;
    return scope + ": keep away <= " + Numbers.significant(distance.maximumMetres(), 4) + " m";
  }

  private static String within(Requirement.MinimumBandwidth width) {
    return "within SWR "
        + Numbers.significant(width.swr(), 4)
        + (width.plane() == Requirement.Plane.FEEDPOINT ? " at the feedpoint" : "");
  }

  /** A requirement's label without its limit: what its values are, in which unit. */
  static String quantity(Requirement requirement) {
    return requirement instanceof Requirement.MinimumBandwidth width
        ? RequirementText.scope(requirement) + ": kHz " + within(width)
        : label(requirement).replaceAll(" [<>]= -?[0-9.]+", "");
  }

  /** From the unit of a result to the one of the label. */
  static double scale(Requirement requirement) {
    return requirement instanceof Requirement.MinimumBandwidth ? KILO : 1;
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  @Override
  public String text(Palette palette) {
    return new YieldText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "yield");
    json.writeStringField("design", design.title());
    json.writeStringField("version", version);
    json.writeNumberField("tolerance", tolerance);
    json.writeNumberField("samples", result.samples());
    json.writeNumberField("seed", seed);
    json.writeNumberField("solves", result.solves());
    json.writeNumberField("wanted_reflection_error", accuracy);
    json.writeNumberField("reflection_error", result.modelError());
    if (result.distanceError().isPresent()) {
      json.writeNumberField("distance_error_m", result.distanceError().getAsDouble());
    }
    json.writeArrayFieldStart("parameters");
    for (Parameter parameter : result.parameters()) {
      parameter(json, parameter);
    }
    json.writeEndArray();
    share(json, "all_met", result.all());
    json.writeArrayFieldStart("requirements");
    for (YieldResult.Outcome outcome : result.outcomes()) {
      outcome(json, outcome);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("envelopes");
    for (YieldResult.Envelope envelope : result.envelopes()) {
      json.writeStartObject();
      json.writeStringField("band", envelope.band());
      json.writeArrayFieldStart("points");
      for (YieldResult.Point point : envelope.points()) {
        json.writeStartObject();
        json.writeNumberField("frequency_hz", point.frequencyHz());
        percentiles(json, point.swr());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
    Json.warnings(json, warnings);
    json.writeEndObject();
  }

  private static void parameter(JsonGenerator json, Parameter parameter) throws IOException {
    boolean normal = parameter.spread().orElseThrow() instanceof Spread.Normal;
    json.writeStartObject();
    json.writeStringField("name", parameter.name());
    json.writeStringField("unit", parameter.value().dimension().symbol());
    json.writeNumberField("nominal", parameter.value().value());
    json.writeStringField("law", normal ? "normal" : "uniform");
    json.writeNumberField("spread", spread(parameter).value());
    json.writeEndObject();
  }

  /** Half-width or sigma. */
  static Quantity spread(Parameter parameter) {
    Spread spread = parameter.spread().orElseThrow();
    return spread instanceof Spread.Normal normal
        ? normal.sigma()
        : ((Spread.Uniform) spread).halfWidth();
  }

  private static void share(JsonGenerator json, String name, YieldResult.Share share)
      throws IOException {
    json.writeObjectFieldStart(name);
    json.writeNumberField("share", share.value());
    json.writeNumberField("low", share.low());
    json.writeNumberField("high", share.high());
    json.writeEndObject();
  }

  private static void percentiles(JsonGenerator json, YieldResult.Percentiles percentiles)
      throws IOException {
    json.writeNumberField("p10", percentiles.p10());
    json.writeNumberField("p50", percentiles.p50());
    json.writeNumberField("p90", percentiles.p90());
  }

  private static void outcome(JsonGenerator json, YieldResult.Outcome outcome) throws IOException {
    json.writeStartObject();
    json.writeStringField("requirement", label(outcome.requirement()));
    if (outcome.requirement().scope() instanceof Requirement.InBand in) {
      json.writeStringField("band", in.band().name());
    }
    share(json, "met", outcome.share());
    json.writeNumberField("undecided", outcome.undecided());
    json.writeNumberField("met_by_slopes", outcome.linearShare());
    json.writeNumberField("nominal", outcome.nominal());
    percentiles(json, outcome.percentiles());
    json.writeArrayFieldStart("influences");
    for (YieldResult.Influence influence : outcome.influences()) {
      json.writeStartObject();
      json.writeStringField("parameter", influence.parameter());
      json.writeNumberField("per_spread", influence.perSpread());
      json.writeNumberField("variance_share", influence.varianceShare());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** The requirements; envelopes are in text and JSON. */
  @Override
  public void csv(CSVPrinter csv) throws IOException {
    List<String> header =
        new ArrayList<>(
            List.of(
                "requirement",
                "share_met",
                "share_low",
                "share_high",
                "share_undecided",
                "share_by_slopes",
                "nominal",
                "p10",
                "p50",
                "p90"));
    for (Parameter parameter : result.parameters()) {
      header.add(parameter.name() + "_per_spread");
      header.add(parameter.name() + "_variance_share");
    }
    csv.printRecord(header);
    for (YieldResult.Outcome outcome : result.outcomes()) {
      List<Object> row =
          new ArrayList<>(
              List.of(
                  label(outcome.requirement()),
                  outcome.share().value(),
                  outcome.share().low(),
                  outcome.share().high(),
                  outcome.undecided(),
                  outcome.linearShare(),
                  outcome.nominal(),
                  outcome.percentiles().p10(),
                  outcome.percentiles().p50(),
                  outcome.percentiles().p90()));
      for (YieldResult.Influence influence : outcome.influences()) {
        row.add(influence.perSpread());
        row.add(influence.varianceShare());
      }
      csv.printRecord(row);
    }
  }
}
