package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.result.Direction;

/** What a report shows is what the solver finds. */
class PortraitTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit
      parameters:
        offset: 34 %
        height: {value: 9 m, spread: 1 m, limits: [8 m, 11 m]}
        drop: {value: 1 m, spread: {sigma: 0.1 m}}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator:
          conductor: strand
          path: [[0, 0, height], [19 m, 0, height], [19 m, 0, height - drop]]
      feeds:
        main: {wire: radiator, at: offset, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 4}
        - line: {impedance: 50 ohm, length: 10 m, velocity-factor: 0.66, loss: {frequency: 10 MHz, per: 100 m, value: 4 dB}}
      power: 80 W
      bands: {plan: iaru-region-1, use: [40 m, 20 m]}
      """;

  private final Solver solver = new Solver(SolverOptions.defaults().withTolerance(1e-3));
  @TempDir private Path directory;
  private Design design;

  @BeforeEach
  void read() throws IOException {
    design = DesignReader.read(Files.writeString(directory.resolve("kit.yaml"), DESIGN));
  }

  @Test
  void curvesGoThroughSolvedValues() {
    BandCurves curves = new CurveStudy(design, true).run(solver, 2).get(0);
    assertThat(curves.frequenciesHz()).contains(7.0e6, 7.2e6).isSorted();
    assertThat(curves.extremes()).extracting(c -> c.change().orElseThrow().toString()).hasSize(4);
    assertThat(curves.warnings()).isEmpty();
    int at = 17;
    assertCurve(curves, curves.nominal(), design, at);
    assertCurve(curves, curves.extremes().get(0), design.with("height", "8 m"), at);
    // Two standard deviations.
    assertCurve(curves, curves.extremes().get(3), design.with("drop", "1.2 m"), at);
    double low = curves.nominal().swr().get(at);
    double high = low;
    for (BandCurves.Curve curve : curves.extremes()) {
      low = Math.min(low, curve.swr().get(at));
      high = Math.max(high, curve.swr().get(at));
    }
    assertThat(curves.lowestSwr().get(at)).isEqualTo(low);
    assertThat(curves.highestSwr().get(at)).isEqualTo(high);
  }

  private void assertCurve(BandCurves curves, BandCurves.Curve curve, Design changed, int at) {
    SolvedFeed feed =
        Installation.of(changed).solve(solver, curves.frequenciesHz().get(at)).feed("main");
    Complex missed = curve.feedpoint().get(at).subtract(feed.at(Plane.FEEDPOINT).reflection());
    assertThat(missed.abs()).isLessThan(curves.interpolationError() + 2e-3);
    Mismatch drawn =
        Mismatch.ofReflection(
            new Complex((curve.swr().get(at) - 1) / (curve.swr().get(at) + 1), 0), 50);
    assertThat(drawn.reflection().abs())
        .isCloseTo(
            feed.at(Plane.TRANSMITTER).reflection().abs(),
            within(curves.interpolationError() + 2e-3));
  }

  @Test
  void limitsGoBeforeSpreads() throws IOException {
    Path file = directory.resolve("wide.yaml");
    Files.writeString(file, DESIGN.replace("spread: 1 m", "spread: 5 m"));
    BandCurves curves = new CurveStudy(DesignReader.read(file), true).run(solver, 1).get(0);
    assertThat(curves.extremes().subList(0, 2))
        .extracting(c -> c.change().orElseThrow().value().toString())
        .containsExactly("8 m", "11 m");
  }

  @Test
  void aVariationThatCannotBeBuiltIsNamed() throws IOException {
    Path file = directory.resolve("low.yaml");
    Files.writeString(file, DESIGN.replace("spread: 1 m, limits: [8 m, 11 m]", "spread: 8.5 m"));
    BandCurves curves = new CurveStudy(DesignReader.read(file), true).run(solver, 1).get(0);
    assertThat(curves.warnings()).anyMatch(w -> w.message().contains("height = 500 mm"));
    assertThat(curves.extremes()).hasSize(3);
  }

  @Test
  void theMapHoldsTheWorstOfItsFrequencies() {
    WorstSwrMap map =
        WorstSwrMap.of(
            design,
            WorstSwrMap.axis(design.parameters().get("offset"), 1),
            WorstSwrMap.axis(design.parameters().get("height"), 1),
            2,
            solver,
            2);
    assertThat(map.across().values().toString()).isEqualTo("[0.204, 0.34, 0.476]");
    assertThat(map.up().values().toString()).isEqualTo("[8 m, 9 m, 11 m]");
    Installation other = Installation.of(design.with("offset", "47.6 %").with("height", "8 m"));
    double low = other.solve(solver, 14e6).feed("main").at(Plane.TRANSMITTER).swr();
    double high = other.solve(solver, 14.35e6).feed("main").at(Plane.TRANSMITTER).swr();
    // The map's meshes are common to many places: both are good to 0.1 % of the impedance.
    assertThat(map.worst(2, 0, 1).getAsDouble())
        .isCloseTo(Math.max(low, high), withinPercentage(0.3));
    assertThat(map.worst(2, 0).getAsDouble())
        .isEqualTo(Math.max(map.worst(2, 0, 0).getAsDouble(), map.worst(2, 0, 1).getAsDouble()));
  }

  @Test
  void whatCannotBeSolvedIsEmptyOnTheMap() throws IOException {
    Path file = directory.resolve("low.yaml");
    Files.writeString(file, DESIGN.replace("limits: [8 m, 11 m]", "limits: [0.5 m, 9 m]"));
    Design low = DesignReader.read(file);
    WorstSwrMap map =
        WorstSwrMap.of(
            low,
            WorstSwrMap.axis(low.parameters().get("offset"), 0),
            WorstSwrMap.axis(low.parameters().get("height"), 1),
            2,
            solver,
            1);
    assertThat(map.worst(0, 0, 0)).isEmpty();
    assertThat(map.worst(0, 0)).isEmpty();
    assertThat(map.worst(0, 1)).isPresent();
  }

  @Test
  void currentsAreThoseOfThePowerDelivered() {
    Installation installation = Installation.of(design);
    Operation operation = installation.solve(solver, 7.1e6);
    List<WireState> along = installation.along(operation, 10);
    assertThat(along).extracting(WireState::distance).contains(0.0, 19.0, 20.0).isSorted();
    assertThat(along.stream().filter(s -> s.distance() == 19).findFirst().orElseThrow().place().x())
        .isEqualTo(19);
    Solution solution = operation.solution();
    double delivered = operation.chain().orElseThrow().deliveredPower();
    assertThat(installation.deliveredWatts(operation)).isEqualTo(delivered);
    WireState middle = along.get(5);
    double scale = Math.sqrt(delivered / solution.acceptedPower());
    assertThat(middle.current().abs())
        .isEqualTo(solution.current("radiator", 10).multiply(scale).abs(), within(1e-12));
    assertThat(middle.charge().abs())
        .isEqualTo(solution.charge("radiator", 10).multiply(scale).abs(), within(1e-18));
    // Not that of the sharp rim of the model's tube: ten diameters inside.
    assertThat(along.get(0).charge().abs())
        .isEqualTo(solution.charge("radiator", 0.02).multiply(scale).abs(), within(1e-18));
  }

  @Test
  void patternsCutThroughTheGain() {
    Solution solution = Installation.of(design).solve(solver, 14.1e6).solution();
    PatternCut over = PatternCut.of(solution, PatternCut.Kind.ELEVATION, 20, 6);
    assertThat(over.samples())
        .extracting(PatternCut.Sample::angleDegrees)
        .containsExactly(0.0, 30.0, 60.0, 90.0, 120.0, 150.0, 180.0);
    assertThat(over.samples().get(1).gainDbi()).isEqualTo(solution.gainDbi(new Direction(30, 20)));
    assertThat(over.samples().get(5).gainDbi()).isEqualTo(solution.gainDbi(new Direction(30, 200)));
    PatternCut around = PatternCut.of(solution, PatternCut.Kind.AZIMUTH, 30, 4);
    assertThat(around.samples().get(1).gainDbi())
        .isEqualTo(solution.gainDbi(new Direction(30, 90)));
  }
}
