package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.CutRules;
import org.spanwire.design.Design;
import org.spanwire.practice.KitList;
import org.spanwire.practice.Leg;
import org.spanwire.practice.SpanState;
import org.spanwire.practice.Trim;
import org.spanwire.result.Warning;
import org.spanwire.study.TrimRow;

/**
 * The outcome of {@code spanwire cut}.
 *
 * @param design what is cut
 * @param version version of the program
 * @param rules how the wire is made up
 * @param legs what to cut
 * @param trim how the trimmed length is shared; empty if nothing can be trimmed
 * @param rows what trimming does in each band
 * @param spans how the wires hang, in still air and in weather; empty if the design does not say
 * @param kit what is packed
 * @param kitAlone whether text and CSV hold the kit list only
 * @param warnings named doubts
 */
public record CutReport(
    Design design,
    String version,
    CutRules rules,
    List<Leg> legs,
    Optional<Trim> trim,
    List<TrimRow> rows,
    List<SpanState> spans,
    KitList kit,
    boolean kitAlone,
    List<Warning> warnings)
    implements Report {

  /** Name of the warning that a wire is pulled too hard. */
  public static final String LOW_MARGIN = "low-breaking-margin";

  /** Name of the warning that it cannot be said how the wires hang. */
  public static final String NO_MECHANICS = "no-mechanics";

  /** Takes copies. */
  public CutReport {
    legs = List.copyOf(legs);
    rows = List.copyOf(rows);
    spans = List.copyOf(spans);
    warnings = List.copyOf(warnings);
  }

  /** How the wire is made up, for reading. */
  public List<Conditions.Entry> rulesInWords() {
    return List.of(
        new Conditions.Entry(
            "datum",
            rules.datum() == CutRules.Datum.EYE
                ? "the model ends at the bearing point of the eye; half the loop and the fold-back come on top"
                : "the model ends at the tip of the wire; loop and fold-back are part of its length"),
        new Conditions.Entry(
            "allowances",
            "loop "
                + millimetres(rules.loop())
                + ", fold-back "
                + millimetres(rules.foldBack())
                + ", terminal "
                + millimetres(rules.terminal())
                + ", stretch in service "
                + Numbers.significant(100 * rules.stretch(), 3)
                + " %"),
        new Conditions.Entry("tolerance", "+/- " + millimetres(rules.tolerance())),
        new Conditions.Entry(
            "made up", "from terminal to the eye's bearing point, laid out without tension"),
        new Conditions.Entry(
            "insulation", "is part of the model: apply no further shortening factor"));
  }

  private static String millimetres(double metres) {
    return Numbers.significant(1000 * metres, 4) + " mm";
  }

  /** The kit list in words. */
  public KitText kitText() {
    return new KitText(design, kit);
  }

  @Override
  public String text(Palette palette) {
    return new CutText(this, palette).render();
  }

  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "cut");
    json.writeStringField("design", design.title());
    json.writeStringField("version", version);
    json.writeObjectFieldStart("rules");
    json.writeStringField("datum", word(rules.datum()));
    json.writeNumberField("loop_m", rules.loop());
    json.writeNumberField("fold_back_m", rules.foldBack());
    json.writeNumberField("terminal_m", rules.terminal());
    json.writeNumberField("stretch", rules.stretch());
    json.writeNumberField("tolerance_m", rules.tolerance());
    json.writeEndObject();
    json.writeArrayFieldStart("legs");
    for (Leg leg : legs) {
      json.writeStartObject();
      json.writeStringField("wire", leg.wire());
      end(json, "from", leg.from());
      end(json, "to", leg.to());
      json.writeNumberField("model_length_m", leg.modelLength());
      json.writeNumberField("cut_length_m", leg.cutLength());
      json.writeNumberField("made_up_length_m", leg.madeUpLength());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeFieldName("trim");
    if (trim.isEmpty()) {
      json.writeNull();
    } else {
      trim(json, trim.get());
    }
    json.writeArrayFieldStart("mechanics");
    for (SpanState span : spans) {
      mechanics(json, span);
    }
    json.writeEndArray();
    kitText().json(json);
    Json.warnings(json, warnings);
    json.writeEndObject();
  }

  private static void mechanics(JsonGenerator json, SpanState span) throws IOException {
    json.writeStartObject();
    json.writeStringField("wire", span.wire());
    json.writeStringField("weather", span.name());
    json.writeNumberField("wind_m_per_s", span.weather().windSpeed());
    json.writeNumberField("ice_m", span.weather().iceThickness());
    json.writeNumberField("temperature_change_k", span.weather().temperatureChange());
    json.writeNumberField("sag_m", span.sag());
    json.writeNumberField("swing_m", span.swing());
    json.writeNumberField("lowest_m", span.lowest());
    json.writeNumberField("largest_tension_n", span.largestTension());
    json.writeNumberField("support_pull_n", span.supportPull());
    Json.number(json, "breaking_margin", span.breakingMargin());
    json.writeEndObject();
  }

  private static void end(JsonGenerator json, String name, Leg.End end) throws IOException {
    json.writeObjectFieldStart(name);
    json.writeStringField("kind", word(end.kind()));
    if (!end.name().isEmpty()) {
      json.writeStringField("name", end.name());
    }
    json.writeEndObject();
  }

  private void trim(JsonGenerator json, Trim shares) throws IOException {
    json.writeStartObject();
    json.writeStringField("wire", shares.wire());
    json.writeNumberField("first_share", shares.firstShare());
    json.writeNumberField("last_share", shares.lastShare());
    json.writeArrayFieldStart("bands");
    for (TrimRow row : rows) {
      json.writeStartObject();
      json.writeStringField("band", row.band());
      if (row.effect().isEmpty()) {
        json.writeNullField("best_match_hz");
        json.writeNullField("hz_per_m");
        Json.undefined(json);
      } else {
        json.writeNumberField("best_match_hz", row.effect().get().bestMatchHz());
        json.writeNumberField("hz_per_m", row.effect().get().hertzPerMetre());
      }
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** The legs, or the kit list if only that is asked for; all is in text and JSON. */
  @Override
  public void csv(CSVPrinter csv) throws IOException {
    if (kitAlone) {
      kitText().csv(csv);
      return;
    }
    csv.printRecord(
        "wire",
        "from",
        "from_name",
        "to",
        "to_name",
        "model_length_m",
        "cut_length_m",
        "made_up_length_m",
        "tolerance_m");
    for (Leg leg : legs) {
      csv.printRecord(
          leg.wire(),
          word(leg.from().kind()),
          leg.from().name(),
          word(leg.to().kind()),
          leg.to().name(),
          leg.modelLength(),
          leg.cutLength(),
          leg.madeUpLength(),
          rules.tolerance());
    }
  }
}
