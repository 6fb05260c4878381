package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.xml.sax.SAXException;
import picocli.CommandLine;

/** Holds the pages for others than the designer to what they promise. */
class PageKindTest {

  private static final String DATASHEET = "--datasheet";
  private static final String INSTALL_SHEET = "--install-sheet";
  private static final String ON_SITE = "--on-site";

  @TempDir private static Path directory;
  private static Path design;
  private static final Map<String, Path> FILES = new LinkedHashMap<>();
  private static Browser browser;

  @BeforeAll
  static void writeThePages() throws IOException {
    design = Files.writeString(directory.resolve("kit.yaml"), SmallDesign.YAML);
    for (String kind : List.of(DATASHEET, INSTALL_SHEET, ON_SITE)) {
      FILES.put(kind, write(kind));
    }
  }

  private static Path write(String kind, String... more) {
    Path file = directory.resolve("page" + kind + more.length + ".html");
    List<String> arguments =
        new java.util.ArrayList<>(
            List.of("report", design.toString(), "--tolerance", "1%", kind, "-o", file.toString()));
    arguments.addAll(List.of(more));
    Run run = Run.of(arguments.toArray(new String[0]));
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).isEmpty();
    assertThat(run.code()).isZero();
    return file;
  }

  @AfterAll
  static void quit() {
    if (browser != null) {
      browser.close();
    }
  }

  private static Document page(String kind) throws IOException {
    return Jsoup.parse(Files.readString(FILES.get(kind)));
  }

  private static Browser browser() throws IOException {
    Browser.require();
    if (browser == null) {
      browser = Browser.start(directory);
    }
    return browser;
  }

  @ParameterizedTest
  @ValueSource(strings = {DATASHEET, INSTALL_SHEET, ON_SITE})
  void isCorrectAndNeedsNothingFromElsewhere(String kind) throws IOException, SAXException {
    String html = Files.readString(FILES.get(kind));
    assertThat(HtmlFaults.of(html)).isEmpty();
    assertThat(html.length()).isLessThan(2_000_000);
    Document page = page(kind);
    assertThat(page.select("[src], link, iframe, object, img, base")).isEmpty();
    assertThat(page.select("a[href]")).allMatch(a -> a.attr("href").startsWith("#"));
    assertThat(page.select("[id]").eachAttr("id")).doesNotHaveDuplicates();
    assertThat(page.select("table")).allMatch(table -> !table.select("caption").text().isBlank());
    assertThat(page.selectFirst("h1").text()).isEqualTo(SmallDesign.TITLE);
    assertThat(page.text() + page.select("script[type]").html()).doesNotContain("NaN", "Infinity");
    assertThat(page.selectFirst("#conditions").text()).contains("SHA-256", "Spanwire");
  }

  /** Whoever acts by a page has all cautions before him, and no option takes them away. */
  @ParameterizedTest
  @ValueSource(strings = {DATASHEET, INSTALL_SHEET, ON_SITE})
  void cautionsCannotBeSwitchedOff(String kind) throws IOException {
    List<String> dangers =
        List.of(
            "Power lines.",
            "Voltage at the ends and the feedpoint.",
            "Exposure of people.",
            "Heat of transformer and choke.",
            "Lightning and static.",
            "Falling loads.",
            "Local codes and licensed practice.");
    assertThat(
            page(kind).select("main > section").get(1).select(".cautions li > strong").eachText())
        .containsAll(dangers);
    List<String> options =
        new CommandLine(new Spanwire())
            .getSubcommands().get("report").getCommandSpec().options().stream()
                .filter(option -> option.arity().max() == 0)
                .map(CommandLine.Model.OptionSpec::longestName)
                .toList();
    // The flags there are: the kinds, and what every command has.
    assertThat(options)
        .containsExactlyInAnyOrder(DATASHEET, INSTALL_SHEET, ON_SITE, "--help", "--debug");
    Browser shown = browser();
    for (String medium : List.of("screen", "print")) {
      shown.open(FILES.get(kind), 390, 844);
      shown.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", medium));
      List<WebElement> items = shown.driver().findElements(By.cssSelector(".cautions li"));
      assertThat(items)
          .hasSizeGreaterThanOrEqualTo(dangers.size())
          .allMatch(WebElement::isDisplayed);
    }
    shown.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
  }

  @Test
  void theDatasheetAnswersABuyer() throws IOException {
    Document page = page(DATASHEET);
    assertThat(page.select("#facts dt").eachText())
        .contains(
            "no tuner, over all spreads",
            "no tuner at which height",
            "span along the ground",
            "hung at",
            "largest power, SSB speech",
            "keep away, on the ground");
    assertThat(page.selectFirst("#facts").text())
        .contains("20.2 m", "the design states no rating for");
    assertThat(page.select("#swr figure")).hasSize(2);
    String ratings = Run.of("bands", design.toString(), "--tolerance", "1%", "--ratings").out();
    for (Element row : page.selectFirst("#facts table").select("tbody tr")) {
      assertThat(ratings).containsPattern(row.child(0).text() + " .*" + row.child(5).text());
    }
  }

  @Test
  void theInstallSheetTellsWhatToDo() throws IOException {
    Document page = page(INSTALL_SHEET);
    assertThat(page.selectFirst("#hang").text()).contains("6.87 m from its first point", "9.00");
    assertThat(page.select("#cut table").first().text()).contains("6.8", "13.3");
    assertThat(page.select("#readings table")).hasSize(3);
    assertThat(page.selectFirst("#readings").text()).contains("height 8 m", "height 10 m");
    assertThat(page.selectFirst("#line").text()).contains("not known");
  }

  @Test
  void theInstallSheetTakesNoHeightIntoAccountThatTheDesignForbids() throws IOException {
    Path low =
        Files.writeString(
            directory.resolve("low.yaml"),
            SmallDesign.YAML.replace(
                "spread: 1 m, limits: [7 m, 11 m]", "spread: 3 m, limits: [8 m, 11 m]"));
    Path page = directory.resolve("low.html");
    Run run =
        Run.of("report", low.toString(), "--tolerance", "1%", INSTALL_SHEET, "-o", page.toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(Jsoup.parse(page.toFile()).selectFirst("#hang").text())
        .contains("9 m as designed, 8 m to 11 m taken into account");
  }

  /** A wire that sags is hung by its ends; one that is bent, at its bends. */
  @Test
  void theInstallSheetGivesPointsThatSomebodyTies() throws IOException {
    Path bent =
        Files.writeString(
            directory.resolve("bent.yaml"),
            SmallDesign.YAML
                .replace(
                    "radiator: {conductor: strand, path: [[0, 0, height], [20.2 m, 0, height]]}",
                    """
                radiator: {conductor: cord, path: [[0, 0, height], [20.2 m, 0, height]], hang: {sag: 0.4 m}}
                  guy: {conductor: strand, path: [[0, 9, 5], [3, 9, 7], [6, 9, 5]]}""")
                .replace(
                    "conductors:",
                    "conductors:\n  cord: {material: copper, diameter: 2 mm, mechanical: {mass-per-length: 28"
                        + " g/m}}"));
    Path page = directory.resolve("bent.html");
    Run run =
        Run.of(
            "report", bent.toString(), "--tolerance", "1%", INSTALL_SHEET, "-o", page.toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(Jsoup.parse(page.toFile()).select("#hang tbody tr").eachText())
        .containsExactly(
            "radiator first 0.00 0.00 9.00",
            "radiator last 20.20 0.00 9.00",
            "guy first 0.00 9.00 5.00",
            "guy bend 1 3.00 9.00 7.00",
            "guy last 6.00 9.00 5.00");
  }

  @Test
  void theTableOnSiteIsThatOfTheDesign() throws IOException {
    Document page = page(ON_SITE);
    assertThat(page.select("#table table")).hasSize(4);
    assertThat(page.select("#table tbody tr")).hasSize(4 * 3 * 5);
    Element row =
        page.selectFirst("#table table").select("tbody tr").stream()
            .filter(each -> each.text().startsWith("9 m 10 m "))
            .findFirst()
            .orElseThrow();
    // The first number after the band's edges: SWR at the lower edge.
    String line =
        Run.of("bands", design.toString(), "--tolerance", "1%")
            .out()
            .lines()
            .filter(each -> each.startsWith(" 40 m  7-7.2"))
            .findFirst()
            .orElseThrow();
    double expected = Double.parseDouble(line.strip().split(" +")[3]);
    assertThat(Double.parseDouble(row.child(2).text().split(" ")[0]))
        .isCloseTo(expected, withinPercentage(2));
  }

  @ParameterizedTest
  @ValueSource(strings = {DATASHEET, INSTALL_SHEET, ON_SITE})
  void fitsEveryScreenAndIsAccessible(String kind) throws IOException {
    Browser shown = browser();
    for (int width : List.of(1280, 390, 320)) {
      shown.fits(FILES.get(kind), width, 844);
    }
    for (String scheme : List.of("light", "dark")) {
      shown.open(FILES.get(kind), 1280, 900);
      shown.scheme(scheme);
      assertThat(shown.violations()).isEmpty();
    }
    shown.scheme("light");
  }

  @Test
  void theDatasheetPrintsOnTwoPages() throws IOException {
    browser().open(FILES.get(DATASHEET), 1280, 900);
    assertThat(browser().pagesPrinted()).isLessThanOrEqualTo(2);
  }

  @Test
  void onSiteReadingsStandBesideTheChoice() throws IOException {
    Browser shown = browser();
    shown.open(FILES.get(ON_SITE), 1280, 900);
    shown.driver().executeScript("localStorage.clear()");
    shown.open(FILES.get(ON_SITE), 1280, 900);
    WebElement caption = shown.driver().findElement(By.cssSelector("figure .readout"));
    choose(shown, "height", "7 m");
    String low = caption.getText();
    String curve = chosen(shown);
    choose(shown, "height", "11 m");
    assertThat(caption.getText()).startsWith("chosen: SWR").isNotEqualTo(low);
    assertThat(chosen(shown)).isNotEqualTo(curve);

    // What the table has at a height is as expected there, and points to it from elsewhere.
    double expected = expected(shown, 0, 7.1);
    type(shown, 0, "7.1", String.format(java.util.Locale.ROOT, "%.3f", expected));
    assertThat(row(shown, 0)).contains("as expected");
    type(shown, 1, "7.15", "60");
    assertThat(row(shown, 1)).contains("reads higher than any height, soil or line in the table");
    type(shown, 2, "9", "2");
    assertThat(row(shown, 2)).contains("outside the bands");
    assertThat(shown.driver().findElements(By.cssSelector(".read"))).hasSize(2);
    assertThat(shown.driver().findElement(By.id("judgement")).getText()).contains("Nothing in the");

    shown.driver().navigate().refresh();
    assertThat(row(shown, 0)).contains("as expected");
    assertThat(shown.driver().findElement(By.id("choose-height")).getAttribute("value"))
        .isEqualTo("4");
  }

  @Test
  void onSiteFindsTheChoiceThatExplainsAllReadings() throws IOException {
    Browser shown = browser();
    shown.open(FILES.get(ON_SITE), 390, 844);
    shown.driver().executeScript("localStorage.clear()");
    shown.open(FILES.get(ON_SITE), 390, 844);
    choose(shown, "height", "7 m");
    double[] frequencies = {7.0, 7.2, 14.0};
    for (int i = 0; i < frequencies.length; i++) {
      double swr = expected(shown, i == 2 ? 1 : 0, frequencies[i]);
      type(
          shown,
          i,
          Double.toString(frequencies[i]),
          String.format(java.util.Locale.ROOT, "%.3f", swr));
    }
    choose(shown, "height", "11 m");
    assertThat(shown.driver().findElement(By.id("judgement")).getText())
        .contains("fit best: height 7 m, soil permittivity 13, 5 mS/m, feed line 10 m");
    shown.driver().findElement(By.id("best-choice")).click();
    assertThat(shown.driver().findElement(By.id("choose-height")).getAttribute("value"))
        .isEqualTo("0");
    shown.driver().executeScript("localStorage.clear()");
  }

  @Test
  void withoutScriptsTheTableIsThere() throws IOException {
    Browser shown = browser();
    shown.withoutScripts(
        () -> {
          shown.open(FILES.get(ON_SITE), 1280, 900);
          assertThat(shown.driver().findElement(By.className("choice")).isDisplayed()).isFalse();
          assertThat(shown.driver().findElement(By.className("entry")).isDisplayed()).isFalse();
          assertThat(shown.driver().findElement(By.cssSelector("#table table")).isDisplayed())
              .isTrue();
        });
  }

  /** SWR of the chosen curve as it is drawn, at a frequency that the table has. */
  private static double expected(Browser shown, int band, double megahertz) {
    return shown.number(
        "(() => { const s = JSON.parse(document.getElementById('site-data').textContent);"
            + "const c = ['ground', 'line', 'height'].map(n => Number(document.getElementById('choose-' + n).value));"
            + "const p = s.places[(c[0] * s.lines.length + c[1]) * s.heights.length + c[2]]["
            + band
            + "]; const b = s.bands["
            + band
            + "]; const i = Math.round(("
            + megahertz
            + " - b.from) / (b.to - b.from) * (p.length - 1)); const g = p[i] / 1e4;"
            + " return (1 + g) / (1 - g); })()");
  }

  private static void choose(Browser shown, String what, String option) {
    shown
        .driver()
        .findElement(By.xpath("//select[@id='choose-" + what + "']/option[.='" + option + "']"))
        .click();
  }

  private static String chosen(Browser shown) {
    return shown.driver().findElement(By.cssSelector(".chosen")).getAttribute("points");
  }

  private static void type(Browser shown, int row, String megahertz, String swr) {
    List<WebElement> inputs =
        shown
            .driver()
            .findElements(By.cssSelector("#readings tbody tr"))
            .get(row)
            .findElements(By.tagName("input"));
    inputs.get(0).clear();
    inputs.get(0).sendKeys(megahertz);
    inputs.get(1).clear();
    inputs.get(1).sendKeys(swr);
  }

  private static String row(Browser shown, int row) {
    return shown.driver().findElements(By.cssSelector("#readings tbody tr")).get(row).getText();
  }

  @Test
  void badUsageIsOneLine() throws IOException {
    String output = directory.resolve("x.html").toString();
    Path earthless =
        Files.writeString(
            directory.resolve("free.yaml"),
            SmallDesign.YAML.replaceAll("(?m)^ground:.*$", "ground: free-space"));
    for (Run run :
        List.of(
            Run.of("report", design.toString(), DATASHEET, ON_SITE, "-o", output),
            Run.of("report", design.toString(), ON_SITE, "--soils", "mud", "-o", output),
            Run.of("report", design.toString(), ON_SITE, "--map", "offset,mast", "-o", output),
            Run.of("report", design.toString(), ON_SITE, "--heights", "tall", "-o", output),
            Run.of("report", earthless.toString(), ON_SITE, "-o", output))) {
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).startsWith("spanwire: ").hasLineCount(1);
    }
    assertThat(Path.of(output)).doesNotExist();
  }
}
