package org.spanwire.cli.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.jsoup.nodes.DataNode;
import org.jsoup.nodes.Element;
import org.spanwire.cli.chart.SiteChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.Band;
import org.spanwire.study.SiteTable;

/**
 * What is expected for a choice of height, soil and line, and what was read. Scripts fill in what
 * depends on the choice.
 *
 * @param report what is reported
 */
record SiteSection(SiteReport report) implements Section {

  @Override
  public String id() {
    return "site";
  }

  @Override
  public String title() {
    return "Expected and read";
  }

  @Override
  public void write(Page page) {
    Element choice = page.block("choice").attr("hidden", true);
    select(choice, "height", "Height", report.heights(), report.nominal().height());
    select(choice, "ground", "Soil", report.grounds(), report.nominal().ground());
    select(choice, "line", "Feed line", report.lines(), report.nominal().line());
    page.paragraph(
        "Blue line: the design as it stands. Strip: from the lowest to the highest SWR of everything"
            + " in the table. The band is shaded; dashed lines are the limits of the verdicts, 2, 3"
            + " and 10.");
    page.paragraph("Orange line: as chosen. Diamonds: your readings.")
        .addClass("scripted")
        .attr("hidden", true);
    Element gallery = page.gallery();
    for (int band = 0; band < report.table().bands().size(); band++) {
      Element figure =
          page.plot(
              gallery,
              new SiteChart(report.table(), band, report.nominalPlace()),
              report.table().bands().get(band).name());
      figure.attr("data-index", Integer.toString(band));
    }
    readings(page.block("entry").attr("hidden", true));
    page.data("site-data", json());
  }

  private static void select(
      Element choice, String id, String label, List<String> options, int selected) {
    Element field = choice.appendElement("label").text(label + " ");
    Element select = field.appendElement("select").attr("id", "choose-" + id);
    for (int i = 0; i < options.size(); i++) {
      Element option =
          select.appendElement("option").attr("value", Integer.toString(i)).text(options.get(i));
      if (i == selected) {
        option.attr("selected", true);
      }
    }
  }

  private static void readings(Element entry) {
    entry.appendElement("h3").text("Your readings");
    Element frame =
        entry
            .appendElement("div")
            .addClass("wide")
            .attr("tabindex", "0")
            .attr("role", "region")
            .attr("aria-label", "Readings");
    Element table = frame.appendElement("table").attr("id", "readings");
    table
        .appendElement("caption")
        .appendElement("span")
        .text("SWR read, beside what is expected for the choice above");
    Element head = table.appendElement("thead").appendElement("tr");
    for (String column : List.of("frequency, MHz", "SWR read", "expected", "difference", "")) {
      Element cell = head.appendElement(column.isEmpty() ? "td" : "th").text(column);
      if (!column.isEmpty()) {
        cell.attr("scope", "col");
      }
    }
    table.appendElement("tbody");
    Element buttons = entry.appendElement("p");
    button(buttons, "add-reading", "Add a reading");
    button(buttons, "clear-readings", "Remove all");
    button(buttons, "best-choice", "Choose what explains them best");
    entry.appendElement("p").attr("id", "judgement").attr("role", "status");
    entry.appendElement("p").attr("id", "kept");
  }

  private static void button(Element parent, String id, String text) {
    parent.appendElement("button").attr("type", "button").attr("id", id).text(text);
    parent.appendText(" ");
  }

  /** What the script needs; no text of it can end the element that holds it. */
  private DataNode json() {
    StringWriter out = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.writeStartObject();
      json.writeStringField(
          "key", report.input().sha256() + String.join(",", report.input().settings()));
      names(json, "heights", report.heights());
      names(json, "grounds", report.grounds());
      names(json, "lines", report.lines());
      json.writeArrayFieldStart("bands");
      for (int i = 0; i < report.table().bands().size(); i++) {
        band(json, report.table().bands().get(i), report.table().frequenciesHz().get(i));
      }
      json.writeEndArray();
      json.writeArrayFieldStart("places");
      for (SiteTable.Place place : report.table().curves()) {
        place(json, place);
      }
      json.writeEndArray();
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new DataNode(out.toString().replace("<", "\\u003c"));
  }

  private static void names(JsonGenerator json, String field, List<String> names)
      throws IOException {
    json.writeArrayFieldStart(field);
    for (String name : names) {
      json.writeString(name);
    }
    json.writeEndArray();
  }

  private static void band(JsonGenerator json, Band band, List<Double> frequencies)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("name", band.name());
    json.writeNumberField("low", band.lowHz() / 1e6);
    json.writeNumberField("high", band.highHz() / 1e6);
    json.writeNumberField("from", frequencies.get(0) / 1e6);
    json.writeNumberField("to", frequencies.get(frequencies.size() - 1) / 1e6);
    json.writeEndObject();
  }

  /** Of each band the magnitudes of the reflection coefficient, in ten-thousandths. */
  private static void place(JsonGenerator json, SiteTable.Place place) throws IOException {
    if (place.reason().isPresent()) {
      json.writeNull();
      return;
    }
    json.writeStartArray();
    for (List<Double> swr : place.swr()) {
      json.writeStartArray();
      for (double each : swr) {
        double magnitude = Double.isInfinite(each) ? 1 : (each - 1) / (each + 1);
        json.writeRawValue(Numbers.fixed(1e4 * magnitude, 0));
      }
      json.writeEndArray();
    }
    json.writeEndArray();
  }
}
