package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.design.PartRating;
import org.spanwire.study.BandRating;

/**
 * What the parts bear, band by band, as a part of another output.
 *
 * @param bands the bands in the order of the plan; not empty
 * @param powerWatts power of the transmitter that the loads are for
 * @param rated names of the parts that the design rates
 */
public record RatingTables(List<BandRating> bands, double powerWatts, Set<String> rated) {

  private static final List<OperatingMode> MODES =
      List.of(OperatingMode.SSB, OperatingMode.CW, OperatingMode.CARRIER);

  private static final String WIRE = "wire ";

  void text(StringBuilder out, Palette palette) {
    out.append(
            palette.heading(
                "What the parts bear while a steady carrier of "
                    + Numbers.significant(powerWatts, 6)
                    + " W is sent, as through a tuner"))
        .append('\n')
        .append(loads().render())
        .append('\n');
    out.append(palette.heading("Largest peak envelope power, and the part that sets it"))
        .append('\n')
        .append(limits().render());
    Paragraph.write(out, "", 0, key());
    out.append('\n');
  }

  /** What the limits count, and which parts set none. */
  public String key() {
    List<String> unrated = unrated();
    return "Heat counts by average power, "
        + modes()
        + " of the peak; voltage and corona by its peak. Dry, clean wire in still air of 40 °C, 70 °C at"
        + " the wire"
        + (unrated.isEmpty()
            ? "."
            : "; the design states no rating for "
                + String.join(", ", unrated)
                + ", which set no limit here: add them under ratings.");
  }

  private static String modes() {
    return String.join(
        ", ",
        MODES.stream().map(mode -> mode.label() + " " + Conditions.percent(mode.duty())).toList());
  }

  private List<String> parts() {
    List<String> parts = new ArrayList<>();
    for (BandRating band : bands) {
      band.loads().stream()
          .map(BandRating.Load::part)
          .filter(part -> !part.startsWith(WIRE) && !parts.contains(part))
          .forEach(parts::add);
    }
    return parts;
  }

  private List<String> unrated() {
    return parts().stream()
        .filter(part -> !rated.contains(part.replaceAll(" [0-9]+$", "")) && !rated.contains(part))
        .toList();
  }

  private Table loads() {
    Table table =
        new Table().word("band").number("wires", "V peak").number("", "A rms").number("", "W/m");
    partColumns().forEach(column -> table.number(column.get(0), column.get(1)));
    bands.forEach(band -> table.row(row(band).toArray(new String[0])));
    return table;
  }

  /** Part and unit of each column after those of the wires. */
  private List<List<String>> partColumns() {
    List<List<String>> columns = new ArrayList<>();
    for (String part : parts()) {
      if (has(part, BandRating.Load::volts)) {
        columns.add(List.of(part, "V peak"));
      }
      if (has(part, BandRating.Load::amperes)) {
        columns.add(List.of(part, "A rms"));
      }
      if (has(part, BandRating.Load::watts)) {
        columns.add(List.of(part, "W"));
      }
    }
    return columns;
  }

  /** Headings of {@link #loadRows}. */
  public List<String> loadColumns() {
    List<String> columns =
        new ArrayList<>(List.of("band", "wires, V peak", "wires, A rms", "wires, W/m"));
    partColumns().forEach(column -> columns.add(String.join(", ", column)));
    return columns;
  }

  /** Loads of the parts while a steady carrier is sent, a row for each band. */
  public List<List<String>> loadRows() {
    return bands.stream().map(this::row).toList();
  }

  private boolean has(String part, Function<BandRating.Load, OptionalDouble> quantity) {
    return bands.stream()
        .flatMap(band -> band.loads().stream())
        .anyMatch(load -> load.part().equals(part) && quantity.apply(load).isPresent());
  }

  private List<String> row(BandRating band) {
    List<String> row = new ArrayList<>();
    row.add(band.band());
    row.add(Numbers.fixed(wires(band, BandRating.Load::peakVolts), 0));
    row.add(Numbers.fixed(wires(band, BandRating.Load::amperes), 2));
    row.add(Numbers.fixed(wires(band, BandRating.Load::wattsPerMetre), 2));
    for (String part : parts()) {
      Optional<BandRating.Load> load =
          band.loads().stream().filter(each -> each.part().equals(part)).findFirst();
      if (has(part, BandRating.Load::volts)) {
        row.add(load.map(l -> Numbers.fixed(l.peakVolts(), 0)).orElse("-"));
      }
      if (has(part, BandRating.Load::amperes)) {
        row.add(load.map(l -> Numbers.fixed(l.amperes(), 2)).orElse("-"));
      }
      if (has(part, BandRating.Load::watts)) {
        row.add(load.map(l -> Numbers.heat(part, l.watts().orElse(0), 1)).orElse("-"));
      }
    }
    return row;
  }

  private static double wires(BandRating band, Function<BandRating.Load, OptionalDouble> quantity) {
    return band.loads().stream()
        .filter(load -> load.part().startsWith(WIRE))
        .map(quantity)
        .mapToDouble(OptionalDouble::getAsDouble)
        .max()
        .orElseThrow();
  }

  private Table limits() {
    Table table = new Table().word("band");
    MODES.forEach(mode -> table.number(mode.label(), "W").word("set by"));
    limitRows().forEach(row -> table.row(row.toArray(new String[0])));
    return table;
  }

  /** Headings of {@link #limitRows}. */
  public List<String> limitColumns() {
    List<String> columns = new ArrayList<>(List.of("band"));
    MODES.forEach(mode -> columns.addAll(List.of(mode.label() + ", W", "set by")));
    return columns;
  }

  /** The largest peak envelope power in every mode and what sets it, a row for each band. */
  public List<List<String>> limitRows() {
    List<List<String>> rows = new ArrayList<>();
    for (BandRating band : bands) {
      List<String> row = new ArrayList<>();
      row.add(band.band());
      for (OperatingMode mode : MODES) {
        BandRating.Limit limit = band.lowest(mode);
        row.add(Numbers.significant(Math.floor(limit.envelopeWatts(mode)), 3));
        row.add(setBy(limit));
      }
      rows.add(row);
    }
    return rows;
  }

  /** Part and cause of a limit. */
  public static String setBy(BandRating.Limit limit) {
    return shortName(limit.part()) + " " + limit.cause().label();
  }

  /** Without the arm of a wire that the feed line divides. */
  private static String shortName(String part) {
    int arm = part.indexOf(", arm");
    return arm < 0 ? part : part.substring(0, arm);
  }

  void json(JsonGenerator json) throws IOException {
    json.writeArrayFieldStart("ratings");
    for (BandRating band : bands) {
      json.writeStartObject();
      json.writeStringField("band", band.band());
      json.writeArrayFieldStart("loads");
      for (BandRating.Load load : band.loads()) {
        json.writeStartObject();
        json.writeStringField("part", load.part());
        Json.number(json, "volts_rms", load.volts());
        Json.number(json, "volts_peak", load.peakVolts());
        Json.number(json, "amperes_rms", load.amperes());
        Json.number(json, "heat_w", load.watts());
        Json.number(json, "heat_w_per_m", load.wattsPerMetre());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeArrayFieldStart("limits");
      for (BandRating.Limit limit : band.limits()) {
        json.writeStartObject();
        json.writeStringField("part", limit.part());
        json.writeStringField("cause", limit.cause().label());
        json.writeNumberField("power_w", limit.watts());
        json.writeNumberField("frequency_hz", limit.frequencyHz());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeArrayFieldStart("largest_power");
      for (OperatingMode mode : OperatingMode.values()) {
        BandRating.Limit limit = band.lowest(mode);
        json.writeStartObject();
        json.writeStringField("mode", mode.word());
        json.writeNumberField("envelope_w", limit.envelopeWatts(mode));
        json.writeStringField("part", limit.part());
        json.writeStringField("cause", limit.cause().label());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  static List<String> csvHeader() {
    List<String> header = new ArrayList<>(List.of("ends_peak_v", "feedpoint_peak_v"));
    for (OperatingMode mode : MODES) {
      header.add("largest_" + mode.word() + "_w");
      header.add("largest_" + mode.word() + "_set_by");
    }
    return header;
  }

  List<Object> csvCells(int band) {
    BandRating rating = bands.get(band);
    List<Object> cells = new ArrayList<>();
    cells.add(peak(rating, PartRating.ENDS));
    cells.add(peak(rating, PartRating.FEEDPOINT));
    for (OperatingMode mode : MODES) {
      BandRating.Limit limit = rating.lowest(mode);
      cells.add(limit.envelopeWatts(mode));
      cells.add(limit.part() + " " + limit.cause().label());
    }
    return cells;
  }

  private static Object peak(BandRating rating, String part) {
    OptionalDouble peak =
        rating.loads().stream()
            .filter(load -> load.part().equals(part))
            .map(BandRating.Load::peakVolts)
            .findFirst()
            .orElse(OptionalDouble.empty());
    return peak.isPresent() ? peak.getAsDouble() : "";
  }
}
