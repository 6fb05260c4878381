package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.SAXException;

/** Holds the page of {@code spanwire report} to what it promises. */
class ReportPageTest {

  @TempDir private static Path directory;
  private static Path design;
  private static String html;
  private static Document page;

  @BeforeAll
  static void writeTheReport() throws IOException {
    design = Files.writeString(directory.resolve("kit.yaml"), SmallDesign.YAML);
    html = write("2");
    page = Jsoup.parse(html);
  }

  private static String write(String threads) throws IOException {
    Path file = directory.resolve("report-" + threads + ".html");
    Run run =
        Run.of(
            "report",
            design.toString(),
            "--tolerance",
            "1%",
            "--threads",
            threads,
            "-o",
            file.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).isEmpty();
    assertThat(run.code()).isZero();
    return Files.readString(file);
  }

  @Test
  void isCorrectHtml() throws IOException, SAXException {
    assertThat(HtmlFaults.of(html)).isEmpty();
  }

  @Test
  void needsNothingFromElsewhere() {
    assertThat(page.select("[src], link, iframe, object, img, base")).isEmpty();
    assertThat(page.select("a[href]")).allMatch(a -> a.attr("href").startsWith("#"));
    assertThat(page.select("[href]").eachAttr("href"))
        .allSatisfy(href -> assertThat(page.getElementById(href.substring(1))).isNotNull());
    String names =
        html.replace("http://www.w3.org/2000/svg", "").replace("http://www.w3.org/1999/xlink", "");
    assertThat(names).doesNotContain("http://", "https://", "url(//", "@import");
    assertThat(html.length()).isLessThan(2_000_000);
  }

  @Test
  void everyPictureSpeaks() {
    assertThat(page.select("figure")).hasSizeGreaterThanOrEqualTo(15);
    for (Element figure : page.select("figure")) {
      Element svg = figure.selectFirst("svg");
      assertThat(svg.attr("role")).isEqualTo("img");
      String[] labels = svg.attr("aria-labelledby").split(" ");
      assertThat(labels)
          .hasSize(2)
          .allSatisfy(id -> assertThat(page.getElementById(id).text()).isNotBlank());
      assertThat(figure.selectFirst("figcaption").text()).isNotBlank();
      assertThat(figure.attr("data-marks")).startsWith("[[").doesNotContain("NaN");
      assertThat(svg.outerHtml()).doesNotContain("NaN", "Infinity");
    }
    assertThat(page.select("table")).allMatch(table -> !table.select("caption").text().isBlank());
    assertThat(page.select("[id]").eachAttr("id")).doesNotHaveDuplicates();
  }

  @Test
  void agreesWithTheOtherCommands() {
    String bands = Run.of("bands", design.toString(), "--tolerance", "1%", "--format", "csv").out();
    for (Element row : page.selectFirst("#answers table").select("tbody tr")) {
      String line =
          bands.lines().filter(l -> l.startsWith(row.child(0).text())).findFirst().orElseThrow();
      assertThat(line).contains("," + row.child(2).text() + ",");
    }
    String cut = Run.of("cut", design.toString(), "--tolerance", "1%").out();
    for (Element row : page.selectFirst("#cut table").select("tbody tr")) {
      assertThat(cut).containsPattern(row.child(3).text() + " +" + row.child(4).text());
    }
  }

  @Test
  void bestMatchesFromBandToBandAreThoseOfTheResponse() throws IOException {
    Run run =
        Run.of(
            "response",
            design.toString(),
            "--tolerance",
            "1%",
            "--step",
            "5MHz",
            "--format",
            "json");
    JsonNode matches = new ObjectMapper().readTree(run.out()).get("best_matches");
    assertThat(matches).isNotEmpty();
    String text = page.selectFirst("#swr").text();
    for (JsonNode match : matches) {
      assertThat(text)
          .contains(
              String.format(
                  Locale.ROOT,
                  "%.2f at %.3f MHz",
                  match.get("value").asDouble(),
                  match.get("frequency_hz").asDouble() / 1e6));
    }
    assertThat(page.select("#swr figcaption").eachText()).contains("SWR at the transmitter");
  }

  @Test
  void answersWhatIsAskedFirst() {
    assertThat(page.select("#answers dt").eachText())
        .contains(
            "keep away, on the ground",
            "no tuner over all spreads",
            "no tuner at which height",
            "power",
            "cut",
            "trim");
    assertThat(page.selectFirst("#exposure").text())
        .contains("no certificate", "ICNIRP", "invalid");
    assertThat(page.select(".cautions li").eachText().toString())
        .contains("Power lines", "RF voltage", "RF exposure", "lightning", "nobody stand below");
    assertThat(page.selectFirst("#conditions").text())
        .contains("SHA-256", "Spanwire", "relative permittivity", "Galerkin");
  }

  @Test
  void textStaysText() {
    assertThat(page.selectFirst("h1").text()).isEqualTo(SmallDesign.TITLE);
    assertThat(page.select("script")).hasSize(1);
  }

  @Test
  void doesNotDependOnTheNumberOfThreads() throws IOException {
    assertThat(write("1")).isEqualTo(html);
  }

  @Test
  void aDesignWithoutMappedParametersSaysSo() throws IOException {
    Path plain =
        Files.writeString(
            directory.resolve("plain.yaml"),
            SmallDesign.YAML
                .replace("offset", "share")
                .replace("use: [40 m, 20 m]", "use: [20 m]"));
    Path file = directory.resolve("plain.html");
    Run run = Run.of("report", plain.toString(), "--tolerance", "1%", "-o", file.toString());
    assertThat(run.code()).isZero();
    assertThat(Jsoup.parse(Files.readString(file)).selectFirst("#map").text()).contains("--map");
  }

  @Test
  void badUsageIsOneLine() throws IOException {
    Path none =
        Files.writeString(
            directory.resolve("none.yaml"), SmallDesign.YAML.replaceAll("(?m)^bands:.*$", ""));
    String output = directory.resolve("x.html").toString();
    for (Run run :
        List.of(
            Run.of("report", none.toString(), "-o", output),
            Run.of("report", design.toString(), "-o", directory.resolve("no/x.html").toString()),
            Run.of("report", design.toString(), "-o", output, "--map", "height"),
            Run.of("report", design.toString()))) {
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).startsWith("spanwire: ").hasLineCount(1);
    }
    assertThat(Path.of(output)).doesNotExist();
  }
}
