package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** Opens the page of {@code spanwire sweep --format html} in a {@link Browser}. */
class SweepBrowserTest {

  @TempDir private static Path directory;
  private static Path page;
  private static Browser browser;

  @BeforeAll
  static void writeThePage() throws IOException {
    Browser.require();
    Path design = Files.writeString(directory.resolve("kit.yaml"), SmallDesign.YAML);
    page = directory.resolve("sweep.html");
    List<String> line = new ArrayList<>(List.of("sweep", design.toString(), "--tolerance", "1%"));
    line.addAll(Arrays.asList(SweepPageTest.MAP));
    line.addAll(List.of("--format", "html", "--output", page.toString()));
    Run run = Run.of(line.toArray(String[]::new));
    assertThat(run.code()).as(run.err()).isZero();
    browser = Browser.start(directory);
  }

  @AfterAll
  static void quit() {
    if (browser != null) {
      browser.close();
    }
  }

  @ParameterizedTest
  @CsvSource({"1280, 900", "390, 844", "320, 640"})
  void fitsTheScreenWithoutErrors(int width, int height) {
    browser.fits(page, width, height);
    assertThat(browser.driver().findElements(By.cssSelector("figure svg")))
        .hasSizeGreaterThan(6)
        .allMatch(WebElement::isDisplayed);
  }

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void isAccessible(String scheme) throws IOException {
    browser.open(page, 1280, 900);
    browser.scheme(scheme);
    assertThat(browser.violations()).isEmpty();
  }

  @Test
  void hidesFrequenciesAndReadsOutValues() {
    browser.open(page, 1280, 900);
    By other = By.cssSelector("figure[data-band='14.1 MHz']");
    browser.driver().findElement(By.cssSelector("button[data-choose='14.1 MHz']")).click();
    assertThat(browser.driver().findElements(other))
        .isNotEmpty()
        .noneMatch(WebElement::isDisplayed);
    WebElement figure = browser.driver().findElement(By.cssSelector("#swr figure"));
    WebElement svg = figure.findElement(By.tagName("svg"));
    new Actions(browser.driver()).scrollToElement(figure).moveToElement(svg).perform();
    assertThat(figure.findElement(By.className("readout")).getText())
        .contains("offset 34 %", "height ", ": SWR ");
  }

  @Test
  void isReadWithoutScripts() {
    browser.withoutScripts(
        () -> {
          browser.open(page, 1280, 900);
          assertThat(browser.driver().findElements(By.cssSelector("figure svg")))
              .allMatch(WebElement::isDisplayed);
          browser.driver().findElement(By.tagName("summary")).click();
          assertThat(browser.driver().findElement(By.cssSelector("#rows table")).isDisplayed())
              .isTrue();
        });
  }

  @Test
  void printsOnA4() {
    browser.open(page, 1280, 900);
    assertThat(browser.pagesPrinted()).isBetween(2, 8);
  }
}
