package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
import org.openqa.selenium.interactions.Actions;

/** Opens the page of {@code spanwire report} in a {@link Browser}. */
class ReportBrowserTest {

  @TempDir private static Path directory;
  private static Path page;
  private static Browser browser;
  private static ChromeDriver driver;

  @BeforeAll
  static void writeTheReport() throws IOException {
    Browser.require();
    Path design = Files.writeString(directory.resolve("kit.yaml"), SmallDesign.YAML);
    page = directory.resolve("report.html");
    Run run = Run.of("report", design.toString(), "--tolerance", "1%", "-o", page.toString());
    assertThat(run.err()).isEmpty();
    browser = Browser.start(directory);
    driver = browser.driver();
  }

  @AfterAll
  static void quit() {
    if (browser != null) {
      browser.close();
    }
  }

  private static void open(int width, int height) {
    browser.open(page, width, height);
  }

  @ParameterizedTest
  @CsvSource({"1280, 900", "390, 844", "320, 640"})
  void fitsTheScreenWithoutErrors(int width, int height) {
    browser.fits(page, width, height);
    List<WebElement> pictures = driver.findElements(By.cssSelector("figure svg"));
    assertThat(pictures).hasSizeGreaterThanOrEqualTo(15);
    for (WebElement picture : pictures) {
      assertThat(picture.isDisplayed()).isTrue();
      assertThat(picture.getRect().width).isBetween(250, width);
      assertThat(picture.getRect().height).isGreaterThan(100);
    }
    // Letters of a picture stay readable on a phone.
    assertThat(browser.number(SMALLEST_LETTERS)).isGreaterThan(7.5);
  }

  private static final String SMALLEST_LETTERS =
      "Math.min(...[...document.querySelectorAll('figure svg text')]"
          + ".map(t => parseFloat(getComputedStyle(t).fontSize) * t.getScreenCTM().a))";

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void isAccessible(String scheme) throws IOException {
    open(1280, 900);
    browser.scheme(scheme);
    assertThat(browser.violations()).isEmpty();
  }

  @Test
  void saysEverythingWithoutScripts() {
    browser.withoutScripts(
        () -> {
          open(1280, 900);
          readWithoutScripts();
        });
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
    assertThat(browser.pagesPrinted()).isBetween(3, 12);
  }
}
