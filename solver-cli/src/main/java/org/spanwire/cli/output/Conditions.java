package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.spanwire.Antenna;
import org.spanwire.design.Design;
import org.spanwire.design.FeedLine;
import org.spanwire.design.Stage;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.medium.SoilTable;
import org.spanwire.medium.Soils;
import org.spanwire.study.Installation;

/**
 * What a result holds for.
 *
 * @param design the design
 * @param version version of the program
 * @param tolerance wanted relative accuracy of impedances
 * @param largestRelativeError largest estimated relative error of the impedances found
 * @param gapsMetres gap widths that were used, by feed
 */
public record Conditions(
    Design design,
    String version,
    double tolerance,
    double largestRelativeError,
    Map<String, Double> gapsMetres) {

  private static final int LABEL_WIDTH = 14;

  /** Cautions that belong beside every result that somebody may put up. */
  public static final List<String> CAUTIONS =
      List.of(
          "Keep wires, ropes and masts well clear of power lines, in every direction they could"
              + " fall or break.",
          "Wire ends and the feedpoint carry dangerous RF voltage while transmitting: keep them"
              + " out of reach.",
          "Check RF exposure, lightning protection and grounding against local codes; have"
              + " licensed people do licensed work.");

  String feedpointReference() {
    return Numbers.significant(design.feedpointReferenceOhm(), 6) + " ohm";
  }

  String transmitterReference() {
    return Numbers.significant(design.referenceOhm(), 6) + " ohm";
  }

  /** Reference at the input of the transformer nearest to the feedpoint. */
  String transformerReference() {
    return transformers().stream()
        .findFirst()
        .map(
            first ->
                Numbers.significant(design.feedpointReferenceOhm() / first.ratio(), 6) + " ohm")
        .orElse("");
  }

  private List<Stage.Transformer> transformers() {
    return design.feedChain().stream()
        .filter(Stage.Transformer.class::isInstance)
        .map(Stage.Transformer.class::cast)
        .toList();
  }

  boolean hasIdealTransformer() {
    return transformers().stream().anyMatch(Stage.Transformer::isIdeal);
  }

  private double ratio() {
    return design.feedpointReferenceOhm() / design.referenceOhm();
  }

  private Antenna antenna() {
    return design.antenna();
  }

  private double lowest() {
    return antenna().wires().stream()
        .flatMap(wire -> wire.path().stream())
        .mapToDouble(Point::z)
        .min()
        .orElseThrow();
  }

  private double highest() {
    return antenna().wires().stream()
        .flatMap(wire -> wire.path().stream())
        .mapToDouble(Point::z)
        .max()
        .orElseThrow();
  }

  private String heights() {
    return lowest() == highest() ? metres(lowest()) : metres(lowest()) + " to " + metres(highest());
  }

  /**
   * One of the conditions.
   *
   * @param name what it is about
   * @param value what holds
   */
  public record Entry(String name, String value) {}

  /** All conditions for reading, in order. */
  public List<Entry> entries() {
    List<Entry> entries = new ArrayList<>();
    entries.add(new Entry("ground", ground(antenna().ground())));
    if (!(antenna().ground() instanceof FreeSpace)) {
      entries.add(new Entry("height", "wires " + heights() + " above ground"));
    }
    for (Feed feed : antenna().feeds()) {
      entries.add(
          new Entry(
              "feed " + feed.name(),
              metres(distance(feed))
                  + " along wire "
                  + feed.wire()
                  + ", gap "
                  + Numbers.significant(gapsMetres.get(feed.name()) * 1e3, 4)
                  + " mm"));
    }
    entries.add(new Entry("transformer", transformer()));
    for (Stage stage : design.feedChain()) {
      StageText.of(stage).ifPresent(words -> entries.add(new Entry(stage.kind(), words)));
    }
    design.feedLine().ifPresent(route -> entries.add(new Entry("feed line", route(route))));
    entries.add(new Entry("power", power()));
    entries.add(
        new Entry(
            "accuracy",
            "impedances wanted to "
                + percent(tolerance)
                + ", largest estimated error "
                + percent(largestRelativeError)));
    return entries;
  }

  void text(StringBuilder out, Palette palette) {
    out.append(palette.heading("Conditions")).append('\n');
    entries().forEach(entry -> line(out, entry.name(), entry.value()));
  }

  private String transformer() {
    if (transformers().isEmpty()) {
      return "none; SWR against " + transmitterReference();
    }
    String kinds =
        transformers().stream()
            .map(StageText::make)
            .distinct()
            .collect(Collectors.joining(" and "));
    return kinds
        + ", impedance ratio "
        + Numbers.significant(ratio(), 6)
        + ":1; SWR against "
        + feedpointReference()
        + " at the feedpoint, "
        + transmitterReference()
        + " at the transmitter";
  }

  private String power() {
    return Numbers.significant(powerWatts(), 6)
        + " W available from the transmitter"
        + (design.powerWatts().isEmpty() ? ", assumed: the design states no power" : "");
  }

  private double powerWatts() {
    return design.powerWatts().orElse(Installation.ASSUMED_POWER);
  }

  private String route(FeedLine route) {
    boolean last = route.polarity() == FeedLine.Polarity.LAST_POINT;
    return "outside modelled as a conductor from the feedpoint, "
        + (route.earthed() ? "earthed" : "free")
        + " at its far end; hot terminal to the arm towards the wire's "
        + (last ? "last" : "first")
        + " point";
  }

  static void line(StringBuilder out, String name, String value) {
    String label = "  " + name + " ".repeat(Math.max(1, LABEL_WIDTH - name.length()));
    Paragraph.write(out, label, label.length(), value);
  }

  private double distance(Feed feed) {
    Wire wire = antenna().wire(feed.wire()).orElseThrow();
    return feed.at().distanceAlong(wire.length());
  }

  static String metres(double value) {
    return Numbers.significant(value, 5) + " m";
  }

  static String percent(double ratio) {
    return Numbers.significant(100 * ratio, 2) + " %";
  }

  private static String ground(Ground ground) {
    if (ground instanceof Soil soil) {
      if (soil.table().isPresent()) {
        return table(soil, soil.table().get());
      }
      String name = Soils.find(soil.name()).isPresent() ? " " + soil.name() + ":" : " of";
      return "soil"
          + name
          + " relative permittivity "
          + Numbers.significant(soil.relativePermittivity(), 6)
          + ", conductivity "
          + Numbers.significant(soil.conductivity(), 6)
          + " S/m ("
          + soil.source()
          + ")";
    }
    return ground instanceof FreeSpace ? "none: free space" : "perfectly conducting";
  }

  private static String table(Soil soil, SoilTable table) {
    SoilTable.Row first = table.at(table.lowestHz());
    SoilTable.Row last = table.at(table.highestHz());
    return String.format(
        Locale.ROOT,
        "soil of table %s, %s MHz to %s MHz: relative permittivity %s to %s, conductivity %s S/m to"
            + " %s S/m (%s)",
        soil.name(),
        Numbers.significant(1e-6 * table.lowestHz(), 6),
        Numbers.significant(1e-6 * table.highestHz(), 6),
        Numbers.significant(first.relativePermittivity(), 6),
        Numbers.significant(last.relativePermittivity(), 6),
        Numbers.significant(first.conductivity(), 6),
        Numbers.significant(last.conductivity(), 6),
        soil.source());
  }

  private static void json(SoilTable table, JsonGenerator json) throws IOException {
    json.writeArrayFieldStart("table");
    for (SoilTable.Row row : table.rows()) {
      json.writeStartObject();
      json.writeNumberField("frequency_hz", row.frequencyHz());
      json.writeNumberField("relative_permittivity", row.relativePermittivity());
      json.writeNumberField("conductivity_s_per_m", row.conductivity());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  void json(JsonGenerator json) throws IOException {
    json.writeObjectFieldStart("conditions");
    json.writeObjectFieldStart("ground");
    if (antenna().ground() instanceof Soil soil) {
      json.writeStringField("kind", "soil");
      json.writeStringField("name", soil.name());
      json.writeNumberField("relative_permittivity", soil.relativePermittivity());
      json.writeNumberField("conductivity_s_per_m", soil.conductivity());
      json.writeStringField("source", soil.source());
      if (soil.table().isPresent()) {
        json(soil.table().get(), json);
      }
    } else {
      json.writeStringField(
          "kind", antenna().ground() instanceof FreeSpace ? "free-space" : "perfect");
    }
    json.writeEndObject();
    json.writeNumberField("lowest_m", lowest());
    json.writeNumberField("highest_m", highest());
    json.writeArrayFieldStart("feeds");
    for (Feed feed : antenna().feeds()) {
      json.writeStartObject();
      json.writeStringField("name", feed.name());
      json.writeStringField("wire", feed.wire());
      json.writeNumberField("distance_m", distance(feed));
      json.writeNumberField("gap_m", gapsMetres.get(feed.name()));
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeNumberField("transformer_ratio", ratio());
    json.writeNumberField("power_w", powerWatts());
    json.writeBooleanField("power_assumed", design.powerWatts().isEmpty());
    json.writeNumberField("tolerance", tolerance);
    Json.number(json, "largest_relative_error", largestRelativeError);
    json.writeEndObject();
  }

  /** Opens the object of a command's result with what all of them have in common. */
  void jsonHead(JsonGenerator json, String command) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", command);
    json.writeStringField("design", design.title());
    json.writeStringField("version", version);
    json(json);
  }

  static void cautions(StringBuilder out, Palette palette) {
    out.append(palette.heading("Cautions")).append('\n');
    CAUTIONS.forEach(caution -> Paragraph.write(out, "  - ", 4, caution));
  }
}
