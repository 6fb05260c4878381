package org.spanwire.cli.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jsoup.nodes.DataNode;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.DocumentType;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;
import org.spanwire.cli.chart.Chart;
import org.spanwire.cli.chart.Mark;
import org.spanwire.cli.chart.SvgPicture;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.Verdict;

/**
 * The page under construction: a tree of elements, so that no text can break out of its place. Not
 * thread-safe.
 */
final class Page {

  /** Wider pictures, in their own units, take more room, and can be moved where there is none. */
  private static final int BROAD = 450;

  private final Document document = Document.createShell("");
  private final Element main;
  private Element current;
  private final List<String> scripts = new ArrayList<>(List.of("report.js"));
  private int pictures;

  /**
   * An empty page.
   *
   * @param kind what kind of page it is, as its reader calls it
   * @param title of what it is about
   * @param version version of the program
   */
  Page(String kind, String title, String version) {
    document.prependChild(new DocumentType("html", "", ""));
    document.outputSettings().prettyPrint(false).charset(StandardCharsets.UTF_8);
    document.selectFirst("html").attr("lang", "en");
    Element head = document.head();
    head.appendElement("meta").attr("charset", "utf-8");
    head.appendElement("meta")
        .attr("name", "viewport")
        .attr("content", "width=device-width, initial-scale=1");
    head.appendElement("meta").attr("name", "generator").attr("content", "Spanwire " + version);
    head.appendElement("title").text(title + ": " + kind.toLowerCase(Locale.ROOT));
    head.appendElement("style").appendChild(new DataNode(resource("report.css")));
    document.body().addClass(kind.toLowerCase(Locale.ROOT).replace(' ', '-'));
    Element header = document.body().appendElement("header");
    header.appendElement("p").addClass("kind").text(kind);
    header.appendElement("h1").text(title);
    main = document.body().appendElement("main");
    current = main;
  }

  private static String resource(String name) {
    try (InputStream in = Page.class.getResourceAsStream("/org/spanwire/cli/report/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Lets a reader with scripts choose among bands. */
  void bands(List<String> names) {
    choice("Bands to show", names);
  }

  /**
   * Lets a reader with scripts choose among pictures and rows.
   *
   * @param label what is chosen
   * @param names as they stand with the pictures; fewer than two leave no choice
   */
  void choice(String label, List<String> names) {
    Element choice =
        new Element("div")
            .addClass("bands")
            .attr("role", "group")
            .attr("aria-label", label)
            .attr("hidden", true);
    for (String name : names) {
      choice
          .appendElement("button")
          .attr("type", "button")
          .attr("aria-pressed", "true")
          .attr("data-choose", name)
          .text(name);
    }
    main.prependChild(choice);
  }

  /**
   * Writes sections with a table of contents before them. The cautions always come second: whoever
   * acts by the first section has them before his eyes, and no page can be had without.
   */
  void sections(List<Section> sections) {
    List<Section> all = new ArrayList<>(sections);
    all.add(1, new CautionSection());
    contents(all);
    all.forEach(this::section);
  }

  private void contents(List<Section> sections) {
    Element nav = new Element("nav").attr("aria-label", "Contents");
    Element list = nav.appendElement("ul");
    for (Section section : sections) {
      list.appendElement("li")
          .appendElement("a")
          .attr("href", "#" + section.id())
          .text(section.title());
    }
    main.before(nav);
  }

  private void section(Section section) {
    current = main.appendElement("section").attr("id", section.id());
    current.attr("aria-labelledby", section.id() + "-heading");
    current.appendElement("h2").attr("id", section.id() + "-heading").text(section.title());
    section.write(this);
  }

  Element paragraph(String text) {
    return current.appendElement("p").text(text);
  }

  void heading(String text) {
    current.appendElement("h3").text(text);
  }

  /** An empty list of a style. */
  Element list(String style) {
    return current.appendElement("ul").addClass(style);
  }

  void list(List<String> items, String style) {
    Element list = list(style);
    items.forEach(item -> list.appendElement("li").text(item));
  }

  /** What follows in this section shows once the reader asks for it. */
  void fold(String summary) {
    current = current.appendElement("details");
    current.appendElement("summary").text(summary);
  }

  /** A list of questions or names, each with its answer. */
  Element terms() {
    return current.appendElement("dl");
  }

  /** Adds an entry to {@link #terms}. */
  static void term(Element terms, String name, String value) {
    Element pair = terms.appendElement("div");
    pair.appendElement("dt").text(name);
    pair.appendElement("dd").text(value);
  }

  /** A place for pictures side by side. */
  Element gallery() {
    return current.appendElement("div").addClass("gallery");
  }

  /**
   * Adds a picture.
   *
   * @param band name of the band it belongs to, empty for none
   * @param caption what stands below it
   */
  void picture(Element gallery, Chart chart, String band, String caption) {
    figure(gallery, chart, band, caption, "data-marks");
  }

  /** Adds a plot that a script draws into: its marks are the corners. */
  Element plot(Element gallery, Chart chart, String band) {
    return figure(gallery, chart, band, "", "data-corners");
  }

  private Element figure(
      Element gallery, Chart chart, String band, String caption, String marksAs) {
    SvgPicture drawn = SvgPicture.of(chart, "p" + ++pictures);
    Element figure = gallery.appendElement("figure");
    if (!band.isEmpty()) {
      figure.attr("data-band", band);
    }
    figure.attr(marksAs, json(drawn.marks()));
    Element svg = org.jsoup.Jsoup.parse(drawn.text(), "", Parser.xmlParser()).selectFirst("svg");
    svg.removeAttr("width").removeAttr("height").removeAttr("xmlns:xlink");
    svg.select("defs").stream().filter(d -> d.childrenSize() == 0).forEach(Element::remove);
    boolean broad = chart.width() > BROAD;
    if (broad) {
      figure.addClass("broad");
    }
    svg.attr(
        "style",
        "max-width:"
            + chart.width() * 5 / 4
            + "px"
            + (broad ? ";min-width:" + chart.width() * 4 / 5 + "px" : ""));
    figure.appendChild(svg);
    figure.appendElement("p").addClass("readout").attr("role", "status");
    Element words = figure.appendElement("figcaption");
    words.appendElement("strong").text(chart.title());
    if (!caption.isEmpty()) {
      words.appendText(". " + caption);
    }
    return figure;
  }

  /** An empty block of a style. */
  Element block(String style) {
    return current.appendElement("div").addClass(style);
  }

  /** Data for a script. */
  void data(String id, DataNode json) {
    current
        .appendElement("script")
        .attr("type", "application/json")
        .attr("id", id)
        .appendChild(json);
  }

  /** Adds a script to that of every page. */
  void script(String name) {
    scripts.add(name);
  }

  private static String json(List<Mark> marks) {
    StringWriter out = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.writeStartArray();
      for (Mark mark : marks) {
        json.writeStartArray();
        json.writeRawValue(Numbers.fixed(mark.x(), 1));
        json.writeRawValue(Numbers.fixed(mark.y(), 1));
        json.writeString(mark.text());
        json.writeEndArray();
      }
      json.writeEndArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  /** Starts a table with a caption and columns, the first of which names the rows. */
  TableRows table(String caption, String... columns) {
    Element frame =
        current
            .appendElement("div")
            .addClass("wide")
            .attr("tabindex", "0")
            .attr("role", "region")
            .attr("aria-label", caption);
    Element table = frame.appendElement("table");
    table.appendElement("caption").appendElement("span").text(caption);
    Element row = table.appendElement("thead").appendElement("tr");
    for (String column : columns) {
      row.appendElement("th").attr("scope", "col").text(column);
    }
    return new TableRows(table.appendElement("tbody"));
  }

  /**
   * Rows of a table.
   *
   * @param body takes them
   */
  record TableRows(Element body) {

    /** Adds a row, its first cell being its heading. */
    Element row(String... cells) {
      Element row = body.appendElement("tr");
      for (int i = 0; i < cells.length; i++) {
        Element cell =
            i == 0 ? row.appendElement("th").attr("scope", "row") : row.appendElement("td");
        cell.text(cells[i]);
      }
      return row;
    }

    /** Lets the first cell of every row be words that may be wrapped. */
    void words() {
      body.parent().addClass("words");
    }

    /** Adds a row that belongs to a band. */
    Element bandRow(String... cells) {
      return row(cells).attr("data-band", cells[0]);
    }
  }

  /** Marks a cell as a verdict. */
  static void verdict(Element cell, Verdict verdict) {
    String word = cell.text();
    cell.text("").appendElement("span").addClass("verdict").addClass(verdict.label()).text(word);
  }

  /** The page as it is stored. */
  String html() {
    document
        .body()
        .appendElement("footer")
        .appendElement("p")
        .text(
            "A computed estimate, no certificate, no permit and no licence. Local codes and licensed"
                + " practice go before it.");
    for (String script : scripts) {
      document.body().appendElement("script").appendChild(new DataNode(resource(script)));
    }
    return document.outerHtml() + "\n";
  }
}
