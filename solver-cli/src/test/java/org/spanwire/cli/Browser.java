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
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/**
 * The browser that is installed, Chromium with its driver. Without them a test is skipped, unless
 * {@code SPANWIRE_BROWSER_TESTS=required}.
 */
final class Browser implements AutoCloseable {

  private static final int PRINT_ATTEMPTS = 5;

  private static final List<File> BROWSERS =
      List.of(new File("/usr/bin/chromium"), new File("/usr/bin/chromium-browser"));
  private static final List<File> DRIVERS =
      List.of(
          new File("/usr/bin/chromedriver"), new File("/usr/lib/chromium-browser/chromedriver"));

  /**
   * Quietened: it would rather have a version of the browser's protocol that is not needed here.
   */
  private static final Logger SELENIUM = Logger.getLogger("org.openqa.selenium");

  private final ChromeDriver driver;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Skips the test, or fails it, where there is no browser. */
  static void require() {
    boolean installed =
        BROWSERS.stream().anyMatch(File::canExecute) && DRIVERS.stream().anyMatch(File::canExecute);
    if (!"required".equals(System.getenv("SPANWIRE_BROWSER_TESTS"))) {
      assumeTrue(installed, "Chromium and its driver are not installed");
    }
    assertThat(installed).as("Chromium and its driver must be installed").isTrue();
  }

  /**
   * Starts it.
   *
   * @param directory takes its profile
   */
  static Browser start(Path directory) throws IOException {
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
    return new Browser(
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(
                    DRIVERS.stream().filter(File::canExecute).findFirst().orElseThrow())
                .usingAnyFreePort()
                .build(),
            options));
  }

  ChromeDriver driver() {
    return driver;
  }

  /** Opens a page afresh; a window cannot be as narrow as a phone, the metrics of a page can. */
  void open(Path page, int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
    driver.manage().logs().get(LogType.BROWSER);
    driver.get(page.toUri().toString());
  }

  /** Opens a page and holds it to the screen: no error, nothing wider than it. */
  void fits(Path page, int width, int height) {
    open(page, width, height);
    assertThat(driver.manage().logs().get(LogType.BROWSER).getAll()).isEmpty();
    assertThat(number("innerWidth")).isEqualTo(width);
    assertThat(number("document.documentElement.scrollWidth"))
        .isEqualTo(number("document.documentElement.clientWidth"));
  }

  double number(String script) {
    return ((Number) driver.executeScript("return " + script)).doubleValue();
  }

  /** Shows the page as in a "light" or "dark" room. */
  void scheme(String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /** What axe finds wrong with the page that is open. */
  @SuppressWarnings("unchecked")
  List<Map<String, Object>> violations() throws IOException {
    driver.executeScript(resource("/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js"));
    return (List<Map<String, Object>>)
        driver.executeAsyncScript(
            "const done = arguments[0];"
                + "axe.run().then(r => done(r.violations.map(v =>"
                + " ({id: v.id, nodes: v.nodes.map(n => n.html.slice(0, 200) + n.failureSummary)}))));");
  }

  private static String resource(String name) throws IOException {
    try (InputStream in = Browser.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** Runs with scripts switched off. */
  void withoutScripts(Runnable work) {
    driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
    try {
      work.run();
    } finally {
      driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", false));
    }
  }

  /** Number of pages of A4 that the page that is open prints on. */
  int pagesPrinted() {
    String pdf = printed(PRINT_ATTEMPTS);
    String text = new String(Base64.getDecoder().decode(pdf), StandardCharsets.ISO_8859_1);
    // Pages are A4, 595 by 842 points; nothing ran off to the side onto pages of its own.
    assertThat(text).containsPattern("/MediaBox \\[0 0 59[45](\\.\\d+)? 84[12](\\.\\d+)?\\]");
    return text.split("/Type /Page\\b").length - 1;
  }

  /** A busy browser now and then refuses to print a page that it has just opened. */
  private String printed(int attempts) {
    try {
      return (String)
          driver
              .executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true))
              .get("data");
    } catch (WebDriverException e) {
      if (attempts == 1 || !e.getMessage().contains("Printing failed")) {
        throw e;
      }
      return printed(attempts - 1);
    }
  }

  @Override
  public void close() {
    driver.quit();
  }
}
