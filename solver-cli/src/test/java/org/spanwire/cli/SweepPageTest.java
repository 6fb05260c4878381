package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.SAXException;

/** Holds the pages of {@code spanwire sweep --format html} to what they promise. */
class SweepPageTest {

  static final String[] MAP = {
    "--vary",
    "height=7m:11m:3",
    "--vary",
    "offset=30%:38%:5",
    "--of",
    "swr,gain",
    "--frequency",
    "7.1MHz,14.1MHz"
  };

  @TempDir private static Path directory;
  private static String design;
  private static String html;
  private static Document page;

  @BeforeAll
  static void writeTheMap() throws IOException {
    design = Files.writeString(directory.resolve("kit.yaml"), SmallDesign.YAML).toString();
    html = write(MAP);
    page = Jsoup.parse(html);
  }

  private static Run sweep(String... arguments) {
    List<String> line = new ArrayList<>(List.of("sweep", design, "--tolerance", "1%"));
    line.addAll(Arrays.asList(arguments));
    return Run.of(line.toArray(String[]::new));
  }

  private static String write(String... arguments) throws IOException {
    Path file = Files.createTempFile(directory, "sweep", ".html");
    List<String> line = new ArrayList<>(Arrays.asList(arguments));
    line.addAll(List.of("--format", "html", "--output", file.toString()));
    Run run = sweep(line.toArray(String[]::new));
    assertThat(run.code()).as(run.err()).isZero();
    return Files.readString(file);
  }

  @Test
  void isCorrectHtmlAndNeedsNothingFromElsewhere() throws IOException, SAXException {
    assertThat(HtmlFaults.of(html)).isEmpty();
    assertThat(page.select("[src], link, iframe, object, img, base")).isEmpty();
    assertThat(page.select("[href]").eachAttr("href"))
        .allSatisfy(href -> assertThat(page.getElementById(href.substring(1))).isNotNull());
    assertThat(html.replace("http://www.w3.org/2000/svg", ""))
        .doesNotContain("http://", "https://", "url(//", "@import");
    assertThat(page.selectFirst("h1").text()).isEqualTo(SmallDesign.TITLE);
    assertThat(page.select("[id]").eachAttr("id")).doesNotHaveDuplicates();
    assertThat(page.select("#cautions li")).hasSizeGreaterThan(5);
  }

  /** Two frequencies and both together; directions of the gain have no worst one. */
  @Test
  void aMapForEveryQuantityAndFrequency() {
    assertThat(page.select("#swr figure figcaption").eachText())
        .containsExactly("SWR, 7.1 MHz", "SWR, 14.1 MHz", "SWR, all frequencies");
    assertThat(page.select("#gain-dbi figure")).hasSize(3);
    assertThat(page.select("#gain-elevation-deg figure")).hasSize(2);
    for (Element figure : page.select("figure")) {
      assertThat(figure.select("svg").attr("role")).isEqualTo("img");
      assertThat(figure.attr("data-marks")).startsWith("[[").doesNotContain("NaN");
      // What the shades stand for is drawn with every map.
      assertThat(figure.select("svg text").eachText()).anyMatch(text -> text.contains(" to "));
    }
    assertThat(page.select("button[data-choose]").eachAttr("data-choose"))
        .containsExactly("7.1 MHz", "14.1 MHz");
  }

  @Test
  void theTableAndTheAnswersAreThoseOfTheCsv() {
    List<String[]> csv = new ArrayList<>();
    List<String> arguments = new ArrayList<>(Arrays.asList(MAP));
    arguments.addAll(List.of("--format", "csv"));
    sweep(arguments.toArray(String[]::new))
        .out()
        .lines()
        .skip(1)
        .map(l -> l.split(","))
        .forEach(csv::add);
    List<Element> rows = page.select("#rows tbody tr");
    assertThat(rows).hasSameSizeAs(csv).hasSize(30);
    for (int i = 0; i < rows.size(); i++) {
      double height = Double.parseDouble(csv.get(i)[0]);
      assertThat(Double.parseDouble(rows.get(i).child(0).text().replace(" m", "")))
          .isEqualTo(height);
      double swr = Double.parseDouble(csv.get(i)[3]);
      assertThat(Double.parseDouble(rows.get(i).child(3).text()))
          .isCloseTo(swr, within(1e-3 * swr));
    }
    // Rows come in pairs of both frequencies.
    int best =
        IntStream.range(0, 15)
            .boxed()
            .min(
                Comparator.comparingDouble(
                    k ->
                        Math.max(
                            Double.parseDouble(csv.get(2 * k)[3]),
                            Double.parseDouble(csv.get(2 * k + 1)[3]))))
            .orElseThrow();
    assertThat(answer("SWR"))
        .startsWith("smallest at its worst: ")
        .contains("height " + rows.get(2 * best).child(0).text())
        .contains("offset " + rows.get(2 * best).child(1).text());
  }

  private static String answer(String name) {
    return page.select("#answers dl > div").stream()
        .filter(pair -> pair.child(0).text().equals(name))
        .findFirst()
        .orElseThrow()
        .child(1)
        .text();
  }

  @Test
  void oneParameterGivesCurvesAndThreeGiveSlices() throws IOException, SAXException {
    String curves = write("--vary", "height=7m:11m:3", "--of", "swr", "--bands", "--points", "4");
    assertThat(HtmlFaults.of(curves)).isEmpty();
    assertThat(Jsoup.parse(curves).select("figure figcaption").eachText())
        .containsExactly("SWR, 40 m", "SWR, 20 m");
    String text = SmallDesign.YAML.replace("ratio: 4", "ratio: ratio");
    Path three =
        Files.writeString(
            directory.resolve("three.yaml"),
            text.replace("parameters:", "parameters:\n  ratio: 4"));
    Path file = directory.resolve("three.html");
    Run run =
        Run.of(
            "sweep",
            three.toString(),
            "--tolerance",
            "1%",
            "--vary",
            "ratio=4,9",
            "--vary",
            "height=8m,9m",
            "--vary",
            "offset=30%,36%",
            "--of",
            "swr",
            "--frequency",
            "7.1MHz",
            "--plane",
            "transmitter",
            "--format",
            "html",
            "--output",
            file.toString());
    assertThat(run.code()).as(run.err()).isZero();
    Document slices = Jsoup.parse(Files.readString(file));
    assertThat(slices.select("figure").eachAttr("data-band")).containsExactly("ratio 4", "ratio 9");
  }

  /** A design that cannot stand there is a gap in the map, with its reason. */
  @Test
  void whatCannotBeSolvedIsAGap() throws IOException, SAXException {
    String gap =
        write(
            "--vary",
            "height=0m,9m",
            "--vary",
            "offset=30%,36%",
            "--of",
            "swr",
            "--frequency",
            "7.1MHz");
    assertThat(HtmlFaults.of(gap)).isEmpty();
    Document read = Jsoup.parse(gap);
    assertThat(read.select("#answers").text()).contains("without result 2 of 4 rows");
    assertThat(read.select("figure").attr("data-marks")).contains("cannot be solved");
    assertThat(read.select("#rows th").eachText()).contains("why not");
  }

  @Test
  void whatMakesNoPageIsRefusedInOneLine() {
    String[][] lines = {
      {"leave out --sample", "--vary", "height=7m:9m", "--sample", "5"},
      {"rows are too many for a page", "--vary", "height=7m:9m:20002"},
      {"needs a CSV file", "--vary", "height=7m:9m:2", "--resume"},
    };
    for (String[] line : lines) {
      List<String> arguments = new ArrayList<>(Arrays.asList(line).subList(1, line.length));
      arguments.addAll(List.of("--of", "swr", "--frequency", "7.1MHz", "--format", "html"));
      Run run = sweep(arguments.toArray(String[]::new));
      assertThat(run.err()).hasLineCount(1).contains(line[0]);
      assertThat(run.code()).isEqualTo(2);
    }
    Run many =
        sweep(
            "--vary",
            "offset=30%:36%:90",
            "--of",
            "swr,gain,impedance,efficiency",
            "--frequency",
            "7MHz,7.1MHz,7.2MHz,14MHz,14.1MHz,14.2MHz",
            "--vary",
            "height=8m,9m",
            "--elevation",
            "5,10,15,20,25,30,40,50",
            "--format",
            "html");
    assertThat(many.err()).hasLineCount(1).contains("pictures are too many");
  }
}
