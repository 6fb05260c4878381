package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.spanwire.design.FeedLine.Polarity;
import org.spanwire.study.LineLengthStudy.Avoid;
import org.spanwire.study.LineLengthStudy.Gap;
import org.spanwire.study.LineLengthStudy.Result;
import org.spanwire.study.LineLengthStudy.Row;

/**
 * Which lengths of the feed line to avoid.
 *
 * @param result of the study
 * @param limitWatts heat of the choke that a length is avoided for
 * @param powerWatts the transmitter's power
 */
public record LineLengths(Result result, double limitWatts, double powerWatts) {

  private List<Polarity> polarities() {
    return result.polarityIsIndifferent()
        ? List.of(Polarity.FIRST_POINT)
        : List.of(Polarity.values());
  }

  void text(StringBuilder out, Palette palette) {
    boolean indifferent = result.polarityIsIndifferent();
    for (Polarity polarity : polarities()) {
      out.append(
              palette.heading(
                  "Heat of the choke in W at "
                      + Numbers.significant(powerWatts, 6)
                      + " W by length of the feed line"
                      + (indifferent ? "" : "; hot terminal to the wire's " + point(polarity))))
          .append('\n');
      if (!result.rows().isEmpty()) {
        out.append(table(polarity).render());
        Paragraph.write(out, "avoid: ", 7, words(polarity));
        out.append('\n');
      }
    }
    if (!result.rows().isEmpty()) {
      Paragraph.write(out, "coolest: ", 9, coolest());
    }
    Paragraph.write(out, "", 0, method() + " Current: the largest along the line.");
    for (Gap gap : result.gaps()) {
      Paragraph.write(
          out, "", 0, Numbers.significant(gap.lengthMetres(), 4) + " m: " + gap.reason());
    }
    out.append('\n');
  }

  /** Which lengths to avoid and which keeps the choke coolest, in words. */
  public List<Conditions.Entry> advice() {
    List<Conditions.Entry> advice = new ArrayList<>();
    if (!result.rows().isEmpty()) {
      for (Polarity polarity : polarities()) {
        advice.add(
            new Conditions.Entry(
                "avoid"
                    + (result.polarityIsIndifferent()
                        ? ""
                        : ", hot terminal to the wire's " + point(polarity)),
                words(polarity)));
      }
      advice.add(new Conditions.Entry("coolest of those looked at", coolest()));
      advice.add(
          new Conditions.Entry(
              "looked at",
              result.lengths().stream()
                      .map(length -> Numbers.significant(length, 4))
                      .collect(Collectors.joining(", "))
                  + " m"));
    }
    result
        .gaps()
        .forEach(
            gap ->
                advice.add(
                    new Conditions.Entry(
                        Numbers.significant(gap.lengthMetres(), 4) + " m", gap.reason())));
    return advice;
  }

  /** Whether no length that was looked at keeps the choke below its limit. */
  public boolean allOverheat() {
    return !result.rows().isEmpty() && result.coolest().chokeWatts() > limitWatts;
  }

  private String coolest() {
    Row coolest = result.coolest();
    return Numbers.significant(coolest.lengthMetres(), 4)
        + " m ("
        + Numbers.fixed(coolest.chokeWatts(), 1)
        + " W on "
        + coolest.band()
        + ")"
        + (result.polarityIsIndifferent()
            ? ""
            : ", hot terminal to the wire's " + point(coolest.polarity()));
  }

  /** How lengths were looked at. */
  public String method() {
    return (result.polarityIsIndifferent()
            ? "Which arm the hot terminal goes to makes no difference. "
            : "")
        + "Looked at on both edges and in the middle of each band, a steady carrier into the line, the"
        + " route cut short or led on in the direction of its last leg.";
  }

  private static String point(Polarity polarity) {
    return polarity == Polarity.FIRST_POINT ? "first point" : "last point";
  }

  private Table table(Polarity polarity) {
    Table table = new Table().number("length", "m");
    result.rows().stream().map(Row::band).distinct().forEach(band -> table.number(band, ""));
    table.number("current", "mA").word("");
    for (double length : result.lengths()) {
      List<String> cells = new ArrayList<>();
      cells.add(Numbers.significant(length, 4));
      cells(cells, length, polarity);
      table.row(cells.toArray(new String[0]));
    }
    return table;
  }

  private void cells(List<String> cells, double length, Polarity polarity) {
    double largest = 0;
    for (Row row : result.rows()) {
      if (row.lengthMetres() == length && row.polarity() == polarity) {
        cells.add(Numbers.fixed(row.chokeWatts(), 1));
        largest = Math.max(largest, row.largestAmperes());
      }
    }
    cells.add(Numbers.fixed(1e3 * largest, 0));
    cells.add(result.hottest(length, polarity).chokeWatts() > limitWatts ? "avoid" : "");
  }

  private String words(Polarity polarity) {
    String limit = "choke above " + Numbers.significant(limitWatts, 4) + " W";
    List<Avoid> stretches = result.avoid(polarity, limitWatts);
    if (stretches.isEmpty()) {
      return "none, no " + limit;
    }
    return stretches.stream().map(LineLengths::stretch).collect(Collectors.joining(", "))
        + "; "
        + limit;
  }

  private static String stretch(Avoid avoid) {
    String from = Numbers.significant(avoid.fromMetres(), 4);
    String to = Numbers.significant(avoid.toMetres(), 4);
    return (from.equals(to) ? from : from + "-" + to)
        + " m ("
        + Numbers.fixed(avoid.worst().chokeWatts(), 1)
        + " W on "
        + avoid.worst().band()
        + ")";
  }

  void json(JsonGenerator json) throws IOException {
    json.writeObjectFieldStart("line_lengths");
    json.writeNumberField("choke_limit_w", limitWatts);
    json.writeArrayFieldStart("rows");
    for (Row row : result.rows()) {
      json.writeStartObject();
      json.writeNumberField("length_m", row.lengthMetres());
      json.writeStringField("polarity", word(row.polarity()));
      json.writeStringField("band", row.band());
      json.writeNumberField("frequency_hz", row.frequencyHz());
      json.writeNumberField("choke_heat_w", row.chokeWatts());
      json.writeNumberField("choke_voltage_v", row.chokeVolts());
      json.writeNumberField("largest_current_a", row.largestAmperes());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("avoid");
    for (Polarity polarity : Polarity.values()) {
      for (Avoid avoid : result.avoid(polarity, limitWatts)) {
        json.writeStartObject();
        json.writeStringField("polarity", word(polarity));
        json.writeNumberField("from_m", avoid.fromMetres());
        json.writeNumberField("to_m", avoid.toMetres());
        json.writeStringField("worst_band", avoid.worst().band());
        json.writeNumberField("worst_choke_heat_w", avoid.worst().chokeWatts());
        json.writeEndObject();
      }
    }
    json.writeEndArray();
    json.writeArrayFieldStart("not_modelled");
    for (Gap gap : result.gaps()) {
      json.writeStartObject();
      json.writeNumberField("length_m", gap.lengthMetres());
      json.writeStringField("reason", gap.reason());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static String word(Polarity polarity) {
    return polarity == Polarity.FIRST_POINT ? "first-point" : "last-point";
  }
}
