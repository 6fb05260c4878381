package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.NetworkData;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;

/** Readings made from solutions, with noise, at parameters that the fit does not know. */
class FitStudyTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit as measured
      parameters:
        height: {value: 9 m, limits: [6 m, 12 m]}
        factor: {value: 1, spread: 1 %}
        line: {value: 12 m, limits: [11 m, 13 m]}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [20.3 m * factor, 0, height]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm}
      ground: {soil: medium-dry}
      feed-chain:
        - transformer: {ratio: 4}
        - line: {impedance: 50 ohm, length: line, velocity-factor: 0.66}
      bands: {plan: iaru-region-1, use: [40 m, 20 m]}
      """;

  private static final Design KIT = DesignReader.read(DESIGN, "kit.yaml");
  private static final Solver EXACT = new Solver(SolverOptions.defaults().withTolerance(1e-4));

  /** Noise of 1 % of full scale in each part, from a fixed seed. */
  private static Measurement readings(Design truth, Plane plane, double noise) {
    Random random = new Random(20);
    Installation installation = Installation.of(truth);
    TreeMap<Double, NPort> samples = new TreeMap<>();
    for (double[] band : new double[][] {{6.9e6, 7.3e6}, {14.0e6, 14.4e6}}) {
      for (int i = 0; i < 11; i++) {
        double f = band[0] + (band[1] - band[0]) * i / 10;
        Complex impedance = installation.solve(EXACT, f).feed("main").at(plane).impedance();
        Complex reflection =
            Mismatch.of(impedance, 50)
                .reflection()
                .add(new Complex(noise * random.nextGaussian(), noise * random.nextGaussian()));
        samples.put(f, NPort.ofScattering(new Complex[][] {{reflection}}, 50));
      }
    }
    return Measurement.of(NetworkData.of(samples), plane);
  }

  private static List<ParameterSample.Range> ranges(String... names) {
    return List.of(names).stream().map(name -> FitStudy.range(KIT.parameters().get(name))).toList();
  }

  @Test
  void recoversHeightAndWireFactorThroughNoise() {
    Design truth = KIT.with(Map.of("height", "7.3 m", "factor", "0.991"));
    FitResult result =
        new FitStudy(KIT, ranges("height", "factor"), readings(truth, Plane.TRANSMITTER, 0.01))
            .run(new Solver(), 2);
    FitResult.Estimate height = result.estimates().get(0);
    FitResult.Estimate factor = result.estimates().get(1);
    assertThat(height.value().value()).isCloseTo(7.3, within(0.3));
    assertThat(factor.value().value()).isCloseTo(0.991, within(0.002));
    assertThat(height.standardError()).isBetween(0.005, 0.15);
    assertThat(Math.abs(height.value().value() - 7.3)).isLessThan(4 * height.standardError());
    assertThat(Math.abs(factor.value().value() - 0.991)).isLessThan(4 * factor.standardError());
    // The noise is 0.01 in each of two parts.
    assertThat(result.misfit()).isBetween(0.01, 0.02);
    assertThat(result.nominalMisfit()).isGreaterThan(5 * result.misfit());
    assertThat(Math.abs(result.correlations()[0][1])).isLessThan(0.95);
  }

  @Test
  void tellsHeightFromLength() {
    FitResult low =
        new FitStudy(
                KIT,
                ranges("height", "factor"),
                readings(KIT.with("height", "7.5 m"), Plane.FEEDPOINT, 0.01))
            .run(new Solver(), 2);
    assertThat(low.causes().get(0).parameter()).isEqualTo("height");
    assertThat(low.causes().get(0).value().value()).isCloseTo(7.5, within(0.3));
    assertThat(low.causes().get(0).enough()).isTrue();
    assertThat(low.causes().get(1).enough()).isFalse();
    assertThat(low.reading()).isPresent();

    FitResult shorter =
        new FitStudy(
                KIT,
                ranges("height", "factor"),
                readings(KIT.with("factor", "0.985"), Plane.FEEDPOINT, 0.01))
            .run(new Solver(), 2);
    assertThat(shorter.causes().get(0).parameter()).isEqualTo("factor");
    assertThat(shorter.causes().get(0).value().value()).isCloseTo(0.985, within(0.002));
    assertThat(shorter.causes().get(0).enough()).isTrue();
    assertThat(shorter.causes().get(1).enough()).isFalse();
  }

  /** The line turns the reflection coefficient; nothing of the antenna can. */
  @Test
  void tellsTheLineFromTheAntennaAndDoesNotDependOnThreads() {
    FitStudy study =
        new FitStudy(
            KIT,
            ranges("height", "line"),
            readings(KIT.with("line", "11.6 m"), Plane.TRANSMITTER, 0.01));
    FitResult result = study.run(new Solver(), 2);
    assertThat(result.causes().get(0).parameter()).isEqualTo("line");
    assertThat(result.estimates().get(1).value().value()).isCloseTo(11.6, within(0.03));
    assertThat(study.run(new Solver(), 1).estimates()).isEqualTo(result.estimates());
  }

  @Test
  void rangesComeFromLimitsSpreadsOrTheValue() {
    assertThat(FitStudy.range(KIT.parameters().get("height")).from().value()).isEqualTo(6);
    assertThat(FitStudy.range(KIT.parameters().get("factor")).to().value())
        .isCloseTo(1.03, within(1e-12));
    Design bare =
        DesignReader.read(DESIGN.replace("{value: 12 m, limits: [11 m, 13 m]}", "10 m"), "b.yaml");
    assertThat(FitStudy.range(bare.parameters().get("line")).to().value())
        .isCloseTo(12, within(1e-12));
  }

  @Test
  void readingsThatCannotTellAreRefused() {
    TreeMap<Double, NPort> one = new TreeMap<>();
    one.put(7e6, NPort.load(new Complex(50, 0), 50));
    Measurement few = Measurement.of(NetworkData.of(one), Plane.FEEDPOINT);
    assertThatThrownBy(() -> new FitStudy(KIT, ranges("height", "factor"), few))
        .hasMessageContaining("measure at more");
    assertThatThrownBy(() -> new FitStudy(KIT, List.of(), few))
        .hasMessageContaining("nothing to vary");
  }
}
