package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.SAXException;

/** {@code spanwire report} with several designs: one comparison, and a page for each. */
class RangeRunTest {

  /** Hangs, carries no transformer, and states no spread. */
  private static final String LOOPLESS =
      """
      format: spanwire-design/1
      title: Dipole & line
      conductors:
        strand: {material: copper, diameter: 2 mm, mechanical: {breaking-strength: 900 N}}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 9], [10, 0, 9]], hang: {tension: 100 N}}
      feeds:
        main: {wire: radiator, at: 50 %, gap: 40 mm}
      ground: {permittivity: 13, conductivity: 5 mS/m}
      bands: {plan: iaru-region-1, use: [20 m]}
      """;

  @TempDir private static Path directory;
  private static Path kit;
  private static Path dipole;
  private static Path comparison;
  private static Document page;

  @BeforeAll
  static void compare() throws IOException {
    kit = Files.writeString(directory.resolve("kit.yaml"), SmallDesign.YAML);
    dipole = Files.writeString(directory.resolve("dipole.yaml"), LOOPLESS);
    comparison = directory.resolve("range.html");
    Run run = report(comparison.toString(), kit, dipole);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    page = Jsoup.parse(Files.readString(comparison));
  }

  private static Run report(String output, Path... designs) {
    return Run.of(
        Stream.of(
                Stream.of("report"),
                Stream.of(designs).map(Path::toString),
                Stream.of("--tolerance", "1%", "-o", output))
            .flatMap(part -> part)
            .toArray(String[]::new));
  }

  private static List<String> row(String section, int table, int row) {
    return page.select("#" + section + " table")
        .get(table)
        .select("tbody tr")
        .get(row)
        .children()
        .eachText();
  }

  @Test
  void isCorrectHtmlAndSmall() throws IOException, SAXException {
    String html = Files.readString(comparison);
    assertThat(HtmlFaults.of(html)).isEmpty();
    assertThat(html.length()).isLessThan(100_000);
    assertThat(page.select("#cautions li")).isNotEmpty();
  }

  @Test
  void leadsToThePageOfEachDesign() throws IOException {
    for (Element link : page.select("tbody th a")) {
      Document own = Jsoup.parse(Files.readString(directory.resolve(link.attr("href"))));
      assertThat(own.selectFirst("h1").text()).isEqualTo(link.text());
    }
    assertThat(page.select("tbody th a").eachAttr("href"))
        .containsOnly("range-kit.html", "range-dipole.html");
  }

  /** What stands in the comparison is what stands on the page of the design. */
  @Test
  void saysWhatThePagesSay() throws IOException {
    Document own = Jsoup.parse(Files.readString(directory.resolve("range-kit.html")));
    List<Element> bands = own.selectFirst("#answers table").select("tbody tr");
    for (int i = 0; i < bands.size(); i++) {
      List<String> cells = bands.get(i).children().eachText();
      assertThat(row("answers", 0, 0).get(i + 1)).isEqualTo(cells.get(2) + " " + cells.get(3));
      assertThat(row("answers", 1, 0).get(i + 1)).isEqualTo(cells.get(5));
    }
    assertThat(own.selectFirst("#answers").text()).contains(row("power-and-people", 0, 0).get(1));
    String cut = Run.of("cut", kit.toString(), "--tolerance", "1%").out();
    assertThat(cut).contains("of which " + row("size-and-weight", 0, 0).get(4).substring(10));
  }

  @Test
  void whatADesignLacksIsADashWithItsReason() {
    assertThat(row("answers", 0, 1).get(1)).as("40 m").isEqualTo("–");
    assertThat(row("answers", 1, 1).get(2)).as("spreads").isEqualTo("–");
    assertThat(row("size-and-weight", 0, 0)).contains("–");
    assertThat(row("size-and-weight", 0, 1)).contains("100 N in still air").doesNotContain("–");
    assertThat(page.select("#size-and-weight li").eachText())
        .anyMatch(why -> why.contains("pull at a support: its wires are drawn straight"));
    assertThat(page.select("#power-and-people li").eachText())
        .contains("Dipole & line, gets hottest: it has no transformer and no choke.");
    assertThat(page.select("#answers p").eachText().toString()).contains("states no spread");
  }

  @Test
  void aDirectoryTakesAnIndex() throws IOException {
    Path range = Files.createDirectory(directory.resolve("range"));
    Path other = Files.writeString(directory.resolve("other.yml"), LOOPLESS);
    assertThat(report(range.toString(), dipole, other).code()).isZero();
    try (Stream<Path> files = Files.list(range)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrder("index.html", "dipole.html", "other.html");
    }
  }

  /** Nothing is written where one of the designs is faulty, or a page would fall on another. */
  @Test
  void writesAllPagesOrNone() throws IOException {
    Path empty = Files.createDirectory(directory.resolve("empty"));
    Path faulty =
        Files.writeString(directory.resolve("faulty.yaml"), LOOPLESS.replace("100 N", "100 kg"));
    Path folder = Files.createDirectories(directory.resolve("folder"));
    Path namesake = Files.copy(dipole, folder.resolve("dipole.yaml"));
    Path index = Files.copy(dipole, folder.resolve("index.yaml"));
    for (Path second : List.of(faulty, namesake, index)) {
      Run run = report(empty.toString(), dipole, second);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).startsWith("spanwire: ").hasLineCount(1);
      assertThat(empty).isEmptyDirectory();
    }
  }

  @Test
  void isAccessibleAndFitsAPhone() throws IOException {
    Browser.require();
    try (Browser browser = Browser.start(directory)) {
      browser.fits(comparison, 390, 844);
      for (String scheme : List.of("light", "dark")) {
        browser.open(comparison, 1280, 900);
        browser.scheme(scheme);
        assertThat(browser.violations()).isEmpty();
      }
      assertThat(browser.pagesPrinted()).isBetween(1, 4);
    }
  }
}
