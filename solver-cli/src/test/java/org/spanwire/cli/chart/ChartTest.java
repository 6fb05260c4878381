package org.spanwire.cli.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;
import org.spanwire.design.Band;
import org.spanwire.geometry.Point;
import org.spanwire.study.BandCurves;
import org.spanwire.study.Ledger;
import org.spanwire.study.PatternCut;
import org.spanwire.study.WireState;
import org.spanwire.unit.Quantity;

/** Charts put values where their scales say. */
class ChartTest {

  private static List<Mark> marks(Chart chart) {
    SvgPicture picture = SvgPicture.of(chart, "t");
    Element svg = Jsoup.parse(picture.text(), "", Parser.xmlParser()).selectFirst("svg");
    assertThat(svg.getElementById("t-title").text()).isEqualTo(chart.title());
    assertThat(svg.getElementById("t-desc").text()).isEqualTo(chart.description());
    assertThat(picture.marks())
        .allMatch(m -> m.x() >= 0 && m.x() <= chart.width())
        .allMatch(m -> m.y() >= 0 && m.y() <= chart.height());
    return picture.marks();
  }

  @Test
  void theSmithChartHasMatchInItsCentreAndOpenAtItsRight() {
    SmithChart chart =
        new SmithChart(
            "Impedance",
            50,
            List.of(
                new SmithChart.Trace(
                    List.of(1e6, 2e6, 3e6, 4e6),
                    List.of(Complex.ZERO, Complex.ONE, Complex.I, new Complex(-1, 0)))));
    List<Mark> marks = marks(chart);
    Mark centre = marks.get(0);
    double radius = marks.get(1).x() - centre.x();
    assertThat(radius).isGreaterThan(100);
    assertThat(marks.get(1).y()).isCloseTo(centre.y(), within(1e-9));
    // +j is inductive: above, at the reference's reactance.
    assertThat(marks.get(2).y()).isCloseTo(centre.y() - radius, within(1e-9));
    assertThat(marks.get(3).x()).isCloseTo(centre.x() - radius, within(1e-9));
    assertThat(marks.get(0).text()).isEqualTo("1.0000 MHz: 50 + j0 ohm, SWR 1.00");
    assertThat(marks.get(1).text()).contains("open");
    assertThat(marks.get(2).text()).contains("0 + j50 ohm");
  }

  @Test
  void thePatternHasItsRimAtTheTopAndItsCentreThirtyDecibelsLower() {
    List<PatternCut.Sample> samples = new ArrayList<>();
    for (int angle = 0; angle <= 360; angle++) {
      samples.add(new PatternCut.Sample(angle, angle == 90 ? -25 : angle == 180 ? -10 : 5));
    }
    PatternCut cut = new PatternCut(PatternCut.Kind.AZIMUTH, 30, samples);
    List<Mark> marks = marks(new PatternChart("Azimuth", List.of(cut), 5));
    Map<String, Mark> byText = new LinkedHashMap<>();
    marks.forEach(mark -> byText.putIfAbsent(mark.text(), mark));
    Mark rim = byText.get("elevation 30°, azimuth 0 deg: 5.0 dBi");
    Mark centre = byText.get("elevation 30°, azimuth 90 deg: -25.0 dBi");
    Mark half = byText.get("elevation 30°, azimuth 180 deg: -10.0 dBi");
    Mark left = byText.get("elevation 30°, azimuth 270 deg: 5.0 dBi");
    double radius = rim.x() - centre.x();
    assertThat(half.x()).isCloseTo(centre.x() - radius / 2, within(1e-9));
    assertThat(left.y()).isCloseTo(centre.y() + radius, within(1e-9));
    assertThat(PatternChart.top(List.of(cut))).isEqualTo(5);
  }

  @Test
  void theSwrAxisIsThatOfTheReflection() {
    assertThat(SwrAxis.place(1)).isZero();
    assertThat(SwrAxis.place(3)).isEqualTo(0.5);
    assertThat(SwrAxis.place(Double.POSITIVE_INFINITY)).isEqualTo(1);
    List<Double> frequencies = List.of(6.9e6, 7.0e6, 7.1e6, 7.2e6, 7.3e6);
    BandCurves curves =
        new BandCurves(
            new Band("40 m", 7.0e6, 7.2e6),
            frequencies,
            curve(1, 3, 1, 3, Double.POSITIVE_INFINITY),
            List.of(curve(1, 2, 1, 5, Double.POSITIVE_INFINITY)),
            0,
            List.of());
    List<Mark> marks = marks(new SwrChart(curves));
    Map<String, Mark> byText = new LinkedHashMap<>();
    marks.forEach(mark -> byText.put(mark.text(), mark));
    Mark match = byText.get("6.9000 MHz: SWR 1.00, over the spreads 1.00 to 1.00");
    Mark three = byText.get("7.0000 MHz: SWR 3.00, over the spreads 2.00 to 3.00");
    assertThat(match.y()).isGreaterThan(three.y());
    assertThat(new SwrChart(curves).description())
        .contains("lower edge 3.00", "upper edge 3.00", "at worst 5.00");
  }

  private static BandCurves.Curve curve(double... swr) {
    List<Double> values = java.util.Arrays.stream(swr).boxed().toList();
    return new BandCurves.Curve(
        Optional.empty(), values.stream().map(s -> Complex.ZERO).toList(), values);
  }

  @Test
  void theAntennaIsDrawnToScale() {
    // 20 m along y and 5 m up: drawn turned, so that its length runs across.
    List<WireState> states = new ArrayList<>();
    for (int i = 0; i <= 20; i++) {
      states.add(state("wire", i, new Point(3, i, 10)));
    }
    for (int i = 0; i <= 5; i++) {
      states.add(state("tail", i, new Point(3, 20, 10 - i)));
    }
    WireChart side =
        new WireChart("Side view", WireChart.View.SIDE, states, new Point(3, 8, 10), true);
    List<Mark> marks = marks(side);
    Mark first = marks.get(0);
    Mark last = marks.get(5);
    assertThat(last.text()).startsWith("wire, 20.00 m: ");
    double perMetre = (last.x() - first.x()) / 20;
    assertThat(perMetre).isPositive();
    Mark low =
        marks.stream().filter(m -> m.text().startsWith("tail, 4.00 m")).findFirst().orElseThrow();
    assertThat(low.y() - last.y()).isCloseTo(4 * perMetre, within(1e-6));
    assertThat(low.x()).isCloseTo(last.x(), within(1e-6));
  }

  private static WireState state(String wire, double at, Point place) {
    return new WireState(wire, at, place, new Complex(1 + at, 0), new Complex(1e-9, 0));
  }

  @Test
  void theMapReadsOutItsCells() {
    MapChart chart =
        new MapChart(
            "Worst SWR",
            new MapChart.Axis("offset", List.of(Quantity.parse("30 %"), Quantity.parse("35 %")), 0),
            new MapChart.Axis(
                "height", List.of(Quantity.parse("8 m"), Quantity.parse("10.5 m")), 1),
            List.of(
                List.of(OptionalDouble.of(1.4), OptionalDouble.of(12)),
                List.of(OptionalDouble.empty(), OptionalDouble.of(2.5))),
            MapScale.swr());
    List<Mark> marks = marks(chart);
    assertThat(marks.stream().map(Mark::text))
        .containsExactly(
            "offset 30 %, height 8 m: SWR 1.40",
            "offset 35 %, height 8 m: SWR 12.0",
            "offset 30 %, height 10.5 m: cannot be solved",
            "offset 35 %, height 10.5 m: SWR 2.50");
    assertThat(marks.get(1).x()).isGreaterThan(marks.get(0).x());
    assertThat(marks.get(2).y()).isLessThan(marks.get(0).y());
    assertThat(chart.description()).contains("Smallest: 1.40 at offset 30 %, height 8 m");
  }

  @Test
  void theBarsOfTheLedgerAddUp() {
    Ledger ledger =
        new Ledger(
            200,
            List.of(
                new Ledger.Entry(Ledger.MISMATCH, 20),
                new Ledger.Entry("line", 30),
                new Ledger.Entry("line", 10),
                new Ledger.Entry("fittings", 0),
                new Ledger.Entry("soil", 40),
                new Ledger.Entry("sky", 100)));
    List<Mark> marks = marks(new LedgerChart(Map.of("40 m", ledger)));
    assertThat(marks.stream().map(Mark::text))
        .containsExactly(
            "40 m, mismatch: 10.0 %",
            "40 m, line: 20.0 %", "40 m, soil: 20.0 %", "40 m, sky: 50.0 %");
    double perPercent = (marks.get(3).x() - marks.get(0).x()) / 70;
    assertThat(marks.get(1).x() - marks.get(0).x()).isCloseTo(15 * perPercent, within(1e-6));
  }
}
