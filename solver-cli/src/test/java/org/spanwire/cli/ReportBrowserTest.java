package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/**
 * Opens the page of {@code spanwire report} in the browser that is installed, Chromium with its
 * driver. Without them the test is skipped, unless {@code SPANWIRE_BROWSER_TESTS=required}.
 */
class ReportBrowserTest {

  private static final List<File> BROWSERS =
      List.of(new File("/usr/bin/chromium"), new File("/usr/bin/chromium-browser"));
  private static final List<File> DRIVERS =
      List.of(
          new File("/usr/bin/chromedriver"), new File("/usr/lib/chromium-browser/chromedriver"));

  @TempDir private static Path directory;
  private static String address;
  private static ChromeDriver driver;

  /**
   * Quietened: it would rather have a version of the browser's protocol that is not needed here.
   */
  private static final Logger SELENIUM = Logger.getLogger("org.openqa.selenium");

  @BeforeAll
  static void writeTheReport() throws IOException {
    boolean installed =
        BROWSERS.stream().anyMatch(File::canExecute) && DRIVERS.stream().anyMatch(File::canExecute);
    if (!"required".equals(System.getenv("SPANWIRE_BROWSER_TESTS"))) {
      assumeTrue(installed, "Chromium and its driver are not installed");
    }
    assertThat(installed).as("Chromium and its driver must be installed").isTrue();
    Path design = Files.writeString(directory.resolve("kit.yaml"), SmallDesign.YAML);
    Path file = directory.resolve("report.html");
    Run run = Run.of("report", design.toString(), "--tolerance", "1%", "-o", file.toString());
    assertThat(run.err()).isEmpty();
    address = file.toUri().toString();
    startBrowser();
  }

  private static void startBrowser() throws IOException {
    SELENIUM.setLevel(Level.SEVERE);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(BROWSERS.stream().filter(File::canExecute).findFirst().orElseThrow());
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--user-data-dir=" + Files.createTempDirectory(directory, "profile"));
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    // With the driver named, nothing looks for one to download.
    driver =
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(
                    DRIVERS.stream().filter(File::canExecute).findFirst().orElseThrow())
                .usingAnyFreePort()
                .build(),
            options);
  }

  @AfterAll
  static void quit() {
    if (driver != null) {
      driver.quit();
    }
  }

  /** Opens the page afresh; a window cannot be as narrow as a phone, the metrics of a page can. */
  private static void open(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
    driver.manage().logs().get(LogType.BROWSER);
    driver.get(address);
  }

  @ParameterizedTest
  @CsvSource({"1280, 900", "390, 844", "320, 640"})
  void fitsTheScreenWithoutErrors(int width, int height) {
    open(width, height);
    assertThat(driver.manage().logs().get(LogType.BROWSER).getAll()).isEmpty();
    assertThat(number("innerWidth")).isEqualTo(width);
    assertThat(number("document.documentElement.scrollWidth"))
        .isEqualTo(number("document.documentElement.clientWidth"));
    List<WebElement> pictures = driver.findElements(By.cssSelector("figure svg"));
    assertThat(pictures).hasSizeGreaterThanOrEqualTo(15);
    for (WebElement picture : pictures) {
      assertThat(picture.isDisplayed()).isTrue();
      assertThat(picture.getRect().width).isBetween(250, width);
      assertThat(picture.getRect().height).isGreaterThan(100);
    }
    // Letters of a picture stay readable on a phone.
    assertThat(number(SMALLEST_LETTERS)).isGreaterThan(7.5);
  }

  private static final String SMALLEST_LETTERS =
      "Math.min(...[...document.querySelectorAll('figure svg text')]"
          + ".map(t => parseFloat(getComputedStyle(t).fontSize) * t.getScreenCTM().a))";

  private static double number(String script) {
    return ((Number) driver.executeScript("return " + script)).doubleValue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  @SuppressWarnings("unchecked")
  void isAccessible(String scheme) throws IOException {
    open(1280, 900);
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    driver.executeScript(resource("/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js"));
    List<Map<String, Object>> violations =
        (List<Map<String, Object>>)
            driver.executeAsyncScript(
                "const done = arguments[0];"
                    + "axe.run().then(r => done(r.violations.map(v =>"
                    + " ({id: v.id, nodes: v.nodes.map(n => n.html.slice(0, 200) + n.failureSummary)}))));");
    assertThat(violations).isEmpty();
  }

  private static String resource(String name) throws IOException {
    try (InputStream in = ReportBrowserTest.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void saysEverythingWithoutScripts() {
    driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
    try {
      open(1280, 900);
      readWithoutScripts();
    } finally {
      driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", false));
    }
  }

  private static void readWithoutScripts() {
    assertThat(driver.findElements(By.cssSelector("figure svg")))
        .allMatch(WebElement::isDisplayed)
        .hasSizeGreaterThanOrEqualTo(15);
    assertThat(driver.findElement(By.cssSelector(".bands")).isDisplayed()).isFalse();
    assertThat(driver.findElement(By.id("answers")).getText()).contains("no tuner", "cut", "trim");
  }

  @Test
  void showsTheBandsThatAreChosen() {
    open(1280, 900);
    By other = By.cssSelector("figure[data-band='20 m']");
    assertThat(driver.findElements(other)).isNotEmpty().allMatch(WebElement::isDisplayed);
    driver.findElement(By.cssSelector("button[data-choose='20 m']")).click();
    assertThat(driver.findElements(other)).noneMatch(WebElement::isDisplayed);
    assertThat(driver.findElements(By.cssSelector("figure[data-band='40 m']")))
        .isNotEmpty()
        .allMatch(WebElement::isDisplayed);
    driver.findElement(By.cssSelector("button[data-choose='40 m']")).click();
    assertThat(driver.findElements(other)).allMatch(WebElement::isDisplayed);
  }

  @Test
  void readsOutValuesUnderThePointerAndByKeys() {
    open(1280, 900);
    for (WebElement figure : driver.findElements(By.cssSelector("figure"))) {
      WebElement svg = figure.findElement(By.tagName("svg"));
      WebElement readout = figure.findElement(By.className("readout"));
      new Actions(driver).scrollToElement(figure).moveToElement(svg).perform();
      assertThat(readout.getText()).isNotBlank();
    }
    WebElement first = driver.findElement(By.cssSelector("#swr figure"));
    WebElement svg = first.findElement(By.tagName("svg"));
    driver.executeScript("arguments[0].focus()", svg);
    svg.sendKeys(Keys.ARROW_RIGHT);
    String low = first.findElement(By.className("readout")).getText();
    svg.sendKeys(Keys.ARROW_RIGHT);
    assertThat(first.findElement(By.className("readout")).getText())
        .contains("MHz: SWR")
        .isNotEqualTo(low);
  }

  @Test
  void printsOnA4() {
    open(1280, 900);
    String pdf =
        (String)
            driver
                .executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true))
                .get("data");
    byte[] bytes = Base64.getDecoder().decode(pdf);
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    // Pages are A4, 595 by 842 points; nothing ran off to the side onto pages of its own.
    assertThat(text).containsPattern("/MediaBox \\[0 0 59[45](\\.\\d+)? 84[12](\\.\\d+)?\\]");
    assertThat(text.split("/Type /Page\\b").length - 1).isBetween(3, 12);
  }
}
