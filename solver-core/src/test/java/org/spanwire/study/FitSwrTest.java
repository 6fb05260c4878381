package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.design.MeasuredSwr;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** What SWR alone tells, read within the bands and with 1 % of noise, at unknown parameters. */
class FitSwrTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit as read
      parameters:
        height: {value: 9 m, limits: [6 m, 12 m]}
        factor: {value: 1, limits: [0.97, 1.03]}
        stray: {value: 0 pF, limits: [0 pF, 80 pF]}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [20.3 m * factor, 0, height]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm, capacitance: stray}
      ground: {soil: medium-dry}
      feed-chain:
        - transformer: {ratio: 4}
        - line: {impedance: 50 ohm, length: 12 m, velocity-factor: 0.66}
      bands: {plan: iaru-region-1, use: [40 m, 20 m, 10 m]}
      """;

  private static final Design KIT = DesignReader.read(DESIGN, "kit.yaml");
  private static final Solver EXACT = new Solver(SolverOptions.defaults().withTolerance(1e-4));
  private static final double[] ONE_BAND = {7.0, 7.1, 7.2};
  private static final double[] TWO_BANDS = {7.0, 7.1, 7.2, 14.0, 14.175, 14.35};

  /** With noise of 1 % from a fixed seed. */
  private static MeasuredSwr readings(
      Design truth,
      double error,
      MeasuredSwr.Plane plane,
      Optional<TransmissionLine> line,
      double... megahertz) {
    Random random = new Random(2);
    Installation installation = Installation.of(truth);
    List<MeasuredSwr.Reading> readings = new ArrayList<>();
    for (double each : megahertz) {
      double f = each * 1e6;
      Complex there =
          installation.solve(EXACT, f).feed("main").at(Plane.valueOf(plane.name())).impedance();
      Complex seen = line.map(l -> l.stub(there).at(f)).orElse(there);
      double swr = Mismatch.of(seen, 50).swr() * (1 + 0.01 * random.nextGaussian());
      readings.add(new MeasuredSwr.Reading(f, Math.max(1, swr), error));
    }
    return new MeasuredSwr("hut", plane, 50, line, readings);
  }

  private static Measurement atTransmitter(Design truth, double error, double... megahertz) {
    return Measurement.of(
        readings(truth, error, MeasuredSwr.Plane.TRANSMITTER, Optional.empty(), megahertz));
  }

  private static FitResult fit(Measurement measurement, String... names) {
    List<ParameterSample.Range> ranges =
        List.of(names).stream().map(name -> FitStudy.range(KIT.parameters().get(name))).toList();
    return new FitStudy(KIT, ranges, measurement).run(new Solver(), 2);
  }

  /** Six readings on two bands do what impedances do, and better than 0.3 m and 0.2 %. */
  @Test
  void recoversHeightAndWireFactor() {
    Design truth = KIT.with(Map.of("height", "7.3 m", "factor", "0.991"));
    FitResult result = fit(atTransmitter(truth, 0.01, TWO_BANDS), "height", "factor");
    FitResult.Estimate height = result.estimates().get(0);
    FitResult.Estimate factor = result.estimates().get(1);
    assertThat(height.value().value()).isCloseTo(7.3, within(0.1));
    assertThat(factor.value().value()).isCloseTo(0.991, within(0.0005));
    assertThat(Math.abs(height.value().value() - 7.3)).isLessThan(3 * height.standardError());
    assertThat(Math.abs(factor.value().value() - 0.991)).isLessThan(3 * factor.standardError());
    assertThat(height.standardError()).isBetween(0.03, 0.15);
    assertThat(height.differs()).isTrue();
    assertThat(height.change().kind()).isEqualTo(PhysicalChange.Kind.HEIGHT);
    assertThat(height.change().by()).isCloseTo(-1.7, within(0.3));
    assertThat(factor.change().kind()).isEqualTo(PhysicalChange.Kind.LENGTH);
    assertThat(result.overErrors().orElseThrow()).isBetween(0.2, 2.0);
    assertThat(result.asDesigned()).isFalse();
    assertThat(result.causes()).noneMatch(FitResult.Cause::enough);
    assertThat(result.others()).isEmpty();
  }

  @Test
  void tellsHeightFromLengthOnTwoBandsAndSaysThatItCannotOnOne() {
    Design low = KIT.with("height", "7.5 m");
    FitResult two = fit(atTransmitter(low, 0.01, TWO_BANDS), "height", "factor");
    assertThat(two.causes().get(0).parameter()).isEqualTo("height");
    assertThat(two.causes().get(0).value().value()).isCloseTo(7.5, within(0.3));
    assertThat(two.causes().stream().map(FitResult.Cause::enough)).containsExactly(true, false);
    FitResult shorter =
        fit(atTransmitter(KIT.with("factor", "0.985"), 0.01, TWO_BANDS), "height", "factor");
    assertThat(shorter.causes().get(0).parameter()).isEqualTo("factor");
    assertThat(shorter.causes().get(0).value().value()).isCloseTo(0.985, within(0.002));
    assertThat(shorter.causes().stream().map(FitResult.Cause::enough)).containsExactly(true, false);

    FitResult one = fit(atTransmitter(low, 0.05, ONE_BAND), "height", "factor");
    assertThat(one.causes()).allMatch(FitResult.Cause::enough);
    FitResult.Reading reading = one.reading().orElseThrow();
    assertThat(reading.alternatives()).isTrue();
    assertThat(reading.parts()).isTrue();
    assertThat(reading.first().settings().get(0).parameter()).isEqualTo("height");
    assertThat(reading.second().settings().get(0).parameter()).isEqualTo("factor");
    // The reading that is named does part them: of the two values it is the true one that is found.
    double there =
        Installation.of(low)
            .solve(EXACT, reading.frequencyHz())
            .feed("main")
            .at(Plane.TRANSMITTER)
            .swr();
    assertThat(Math.abs(there - reading.firstSwr()))
        .isLessThan(0.2 * Math.abs(there - reading.secondSwr()));
  }

  @Test
  void findsStrayCapacitance() {
    FitResult result =
        fit(atTransmitter(KIT.with("stray", "30 pF"), 0.01, TWO_BANDS), "factor", "stray");
    FitResult.Cause first = result.causes().get(0);
    assertThat(first.parameter()).isEqualTo("stray");
    assertThat(first.value().value()).isCloseTo(30e-12, within(3e-12));
    assertThat(first.change().kind()).isEqualTo(PhysicalChange.Kind.FEED_CAPACITANCE);
    assertThat(first.enough()).isTrue();
    assertThat(result.causes().get(1).enough()).isFalse();
  }

  /** A lossy line of the reader's own makes SWR small; it is taken out again. */
  @Test
  void readsThroughALineOfItsOwn() {
    TransmissionLine line =
        new TransmissionLine(50, 25, 0.66, LineAttenuation.ofConductor(10e6, 0.08));
    Design low = KIT.with("height", "7.5 m");
    MeasuredSwr through =
        readings(low, 0.01, MeasuredSwr.Plane.TRANSFORMER_INPUT, Optional.of(line), TWO_BANDS);
    FitResult result = fit(Measurement.of(through), "height");
    assertThat(result.estimates().get(0).value().value()).isCloseTo(7.5, within(0.3));
    assertThat(result.overErrors().orElseThrow()).isLessThan(1.5);
    MeasuredSwr forgotten =
        new MeasuredSwr("hut", through.plane(), 50, Optional.empty(), through.readings());
    assertThat(fit(Measurement.of(forgotten), "height").overErrors().orElseThrow())
        .isGreaterThan(5);
  }

  @Test
  void aDesignThatIsRightIsLeftAlone() {
    FitResult result = fit(atTransmitter(KIT, 0.01, TWO_BANDS), "height");
    assertThat(result.asDesigned()).isTrue();
    assertThat(result.estimates().get(0).differs()).isFalse();
  }

  /** Neither the design nor any of its parameters turns a match into an open end within a band. */
  @Test
  void readingsThatNothingExplainsHaveNoCause() {
    List<MeasuredSwr.Reading> readings = new ArrayList<>();
    for (int i = 0; i < TWO_BANDS.length; i++) {
      readings.add(new MeasuredSwr.Reading(TWO_BANDS[i] * 1e6, i % 2 == 0 ? 1.02 : 500, 0.05));
    }
    FitResult result =
        fit(
            Measurement.of(
                new MeasuredSwr(
                    "torn", MeasuredSwr.Plane.TRANSMITTER, 50, Optional.empty(), readings)),
            "height",
            "factor");
    assertThat(result.overErrors().orElseThrow()).isGreaterThan(10);
    assertThat(result.fits()).isFalse();
    assertThat(result.asDesigned()).isFalse();
    assertThat(result.causes()).noneMatch(FitResult.Cause::enough);
    assertThat(result.others()).isEmpty();
  }

  /** No height below the ground, however little the readings tell. */
  @Test
  void intervalsEndWhereTheRangesDo() {
    FitResult.Estimate height = fit(atTransmitter(KIT, 0.5, ONE_BAND), "height").estimates().get(0);
    assertThat(2 * height.standardError()).isGreaterThan(3);
    assertThat(height.low()).isEqualTo(6);
    assertThat(height.high()).isEqualTo(12);
    assertThat(height.differs()).isFalse();
    FitResult.Estimate near =
        fit(atTransmitter(KIT.with("height", "6.2 m"), 0.05, TWO_BANDS), "height")
            .estimates()
            .get(0);
    assertThat(near.low()).isEqualTo(6);
    assertThat(near.high())
        .isCloseTo(near.value().value() + 1.96 * near.standardError(), within(1e-3));
    assertThat(near.differs()).isTrue();
  }

  @Test
  void rangesThatDoNotHoldTheDesignAreRefused() {
    Measurement readings = atTransmitter(KIT, 0.01, ONE_BAND);
    Quantity nine = new Quantity(9, Dimension.LENGTH);
    for (double[] ends : new double[][] {{6, 8}, {12, 9.5}, {9, 9}}) {
      List<ParameterSample.Range> vary =
          List.of(
              new ParameterSample.Range(
                  "height",
                  new Quantity(ends[0], Dimension.LENGTH),
                  new Quantity(ends[1], Dimension.LENGTH)));
      assertThatThrownBy(() -> new FitStudy(KIT, vary, readings))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("height is " + nine + " in the design");
    }
    List<ParameterSample.Range> unknown = List.of(new ParameterSample.Range("hight", nine, nine));
    assertThatThrownBy(() -> new FitStudy(KIT, unknown, readings))
        .hasMessageContaining("no parameter hight");
  }

  /** An axis has no direction of its own; what is told of its ends must not hang on chance. */
  @Test
  void theReadingIsTheSameInWhateverOrderParametersAreNamed() {
    Measurement readings =
        atTransmitter(KIT.with(Map.of("height", "7.3 m", "factor", "0.991")), 0.02, TWO_BANDS);
    FitResult.Reading one = fit(readings, "height", "factor").reading().orElseThrow();
    FitResult.Reading other = fit(readings, "factor", "height").reading().orElseThrow();
    assertThat(one.alternatives()).isFalse();
    assertThat(other.frequencyHz()).isEqualTo(one.frequencyHz());
    assertThat(height(one.first())).isGreaterThan(height(one.second()) + 0.1);
    assertThat(height(other.first())).isCloseTo(height(one.first()), within(0.05));
    assertThat(height(other.second())).isCloseTo(height(one.second()), within(0.05));
  }

  private static double height(FitResult.Candidate candidate) {
    return candidate.settings().stream()
        .filter(each -> each.parameter().equals("height"))
        .findFirst()
        .orElseThrow()
        .value()
        .value();
  }

  /** The same noise read as worse readings widens the errors and nothing else. */
  @Test
  void errorsStatedAreErrorsFound() {
    Design low = KIT.with("height", "7.5 m");
    double fine =
        fit(atTransmitter(low, 0.02, TWO_BANDS), "height").estimates().get(0).standardError();
    double coarse =
        fit(atTransmitter(low, 0.04, TWO_BANDS), "height").estimates().get(0).standardError();
    assertThat(coarse / fine).isCloseTo(2, within(0.2));
  }
}
