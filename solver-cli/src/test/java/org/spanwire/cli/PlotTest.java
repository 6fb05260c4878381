package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures beside results. */
class PlotTest {

  @TempDir private Path directory;
  private Path design;

  @BeforeEach
  void write() throws IOException {
    design =
        Files.writeString(
            directory.resolve("kit.yaml"),
            SmallDesign.YAML.replaceAll("(?m)^ground:.*$", "ground: perfect"));
  }

  /** What a run draws; its other output must not change. */
  private Document svg(String... arguments) throws IOException {
    Path file = directory.resolve("plot.svg");
    Run plain = Run.of(arguments);
    List<String> more = new ArrayList<>(List.of(arguments));
    more.addAll(List.of("--plot", file.toString()));
    Run run = Run.of(more.toArray(String[]::new));
    assertThat(run.code()).isZero();
    assertThat(run.out()).isEqualTo(plain.out());
    Document svg = Jsoup.parse(Files.readString(file), "", Parser.xmlParser());
    assertThat(svg.selectFirst("svg").attr("xmlns")).isEqualTo("http://www.w3.org/2000/svg");
    assertThat(svg.outerHtml()).doesNotContain("NaN", "Infinity");
    return svg;
  }

  private String kit() {
    return design.toString();
  }

  @Test
  void solveDrawsPatternsAndImpedance() throws IOException {
    Document svg =
        svg("solve", kit(), "--frequency", "7.1MHz", "--tolerance", "1%", "--format", "csv");
    assertThat(svg.select("text").eachText())
        .contains("Elevation, 7.1 MHz", "Azimuth, 7.1 MHz", "Impedance, 7.1 MHz", "elevation 30°");
  }

  @Test
  void bandsDrawsSwrAndImpedance() throws IOException {
    Document svg = svg("bands", kit(), "--tolerance", "1%", "--format", "csv");
    assertThat(svg.select("text").eachText())
        .contains("SWR, 40 m", "Impedance, 40 m", "SWR, 20 m", "frequency, MHz", "1.5");
  }

  @Test
  void fitDrawsReadingsDesignAndEstimates() throws IOException {
    Document svg =
        svg(
            "fit",
            kit(),
            "--swr",
            "7MHz=2,7.1MHz=1.8,14.1MHz=4",
            "--vary",
            "height",
            "--format",
            "csv");
    assertThat(svg.select("text").eachText())
        .contains("SWR, reading by reading", "as read", "as designed", "with the estimates");
  }

  @Test
  void responseDrawsSwrAndGain() throws IOException {
    Document svg =
        svg(
            "response",
            kit(),
            "--range",
            "6MHz:15MHz",
            "--elevation",
            "30",
            "--azimuth",
            "0,90",
            "--tolerance",
            "1%",
            "--format",
            "csv");
    assertThat(svg.select("text").eachText())
        .contains("SWR at the transmitter", "frequency, MHz", "10", "Gain")
        .contains("elevation 30 deg, azimuth 90 deg");
  }

  @Test
  void aSweepOfOneParameterDrawsLines() throws IOException {
    Document svg =
        svg(
            "sweep",
            kit(),
            "--vary",
            "height=7m:11m:3",
            "--of",
            "swr,gain",
            "--frequency",
            "7.1MHz,14.1MHz",
            "--tolerance",
            "1%",
            "--format",
            "csv");
    assertThat(svg.select("text").eachText())
        .contains("SWR", "gain, dBi", "gain elevation, deg", "height, m", "14.1 MHz");
  }

  @Test
  void aSweepOfTwoParametersDrawsAMap() throws IOException {
    String[] sweep = {
      "sweep",
      kit(),
      "--vary",
      "height=7m:11m:3",
      "--vary",
      "offset=20%,30%",
      "--of",
      "swr",
      "--frequency",
      "7.1MHz,7.2MHz",
      "--tolerance",
      "1%",
      "--format",
      "csv"
    };
    Document svg = svg(sweep);
    double worst =
        Run.of(sweep)
            .out()
            .lines()
            .skip(1)
            .limit(2)
            .mapToDouble(line -> Double.parseDouble(line.split(",")[3]))
            .max()
            .orElseThrow();
    assertThat(svg.select("text").eachText())
        .contains("offset, %", "11", String.format(java.util.Locale.ROOT, "%.2f", worst));
  }

  @Test
  void theBenchDrawsLossAndBalance() throws IOException {
    StringBuilder unit = new StringBuilder("# MHz S RI R 50\n");
    for (int megahertz = 5; megahertz <= 25; megahertz += 10) {
      unit.append(megahertz)
          .append(" 0 0  0.6 0  -0.6 0\n0.6 0  0.3 0  0.3 0\n-0.6 0  0.3 0  0.3 0\n");
    }
    Path file = Files.writeString(directory.resolve("unit-07.s3p"), unit);
    Document svg = svg("balun", "bench", file.toString());
    assertThat(svg.select("text").eachText())
        .contains("loss, dB", "return loss, dB", "phase imbalance, deg", "frequency, MHz");
  }

  @Test
  void aPngHasTheSameInIt() throws IOException {
    Path file = directory.resolve("plot.png");
    Run run =
        Run.of(
            "solve",
            kit(),
            "--frequency",
            "7.1MHz",
            "--tolerance",
            "1%",
            "--plot",
            file.toString());
    assertThat(run.code()).isZero();
    BufferedImage image = ImageIO.read(file.toFile());
    assertThat(image.getWidth()).isGreaterThan(1500);
    int blue = 0;
    for (int x = 0; x < image.getWidth(); x += 2) {
      for (int y = 0; y < image.getHeight(); y += 2) {
        blue += image.getRGB(x, y) == 0xff0072b2 ? 1 : 0;
      }
    }
    assertThat(blue).isGreaterThan(200);
  }

  @Test
  void whatCannotBeDrawnIsRefusedBeforeTheWork() {
    String file = directory.resolve("plot.svg").toString();
    for (Run run :
        List.of(
            Run.of("solve", kit(), "--plot", directory.resolve("plot.gif").toString()),
            Run.of("bands", kit(), "--plot", directory.resolve("no/plot.svg").toString()),
            Run.of(
                "sweep",
                kit(),
                "--vary",
                "height=7m:9m",
                "--vary",
                "offset=20%:30%",
                "--sample",
                "4",
                "--of",
                "swr",
                "--frequency",
                "7MHz",
                "--plot",
                file),
            Run.of(
                "sweep",
                kit(),
                "--vary",
                "height=7m,9m",
                "--vary",
                "offset=20%,30%",
                "--of",
                "gain",
                "--frequency",
                "7MHz",
                "--plot",
                file))) {
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).startsWith("spanwire: ").hasLineCount(1).contains("plot");
      assertThat(run.out()).isEmpty();
    }
  }
}
