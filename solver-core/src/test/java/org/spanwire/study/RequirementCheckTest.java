package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.design.Requirement;
import org.spanwire.result.PowerBudget;
import org.spanwire.study.CheckedRequirement.Outcome;
import org.spanwire.study.CheckedRequirement.Quantity;

/** Requirements against dense sampling, tighter solutions and the bounds of passive networks. */
class RequirementCheckTest {

  /** A dipole whose reactance runs from capacitive to inductive over the band. */
  private static final String DIPOLE =
      """
      format: spanwire-design/1
      title: Hut dipole
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 9], [20.2, 0, 9]]}
      feeds:
        main: {wire: radiator, at: 50 %, gap: 30 mm}
      ground: perfect
      feed-chain:
        - line:
            impedance: 50 ohm
            length: 18 m
            velocity-factor: 0.66
            loss: {frequency: 10 MHz, per: 100 m, value: 4.5 dB}
      bands: {plan: iaru-region-1, use: [40 m]}
      requirements:
      """;

  private static final Solver COARSE = new Solver(new SolverOptions(1e-3));
  private static final Solver FINE = new Solver(new SolverOptions(1e-5));

  private static Design design(String... requirements) {
    return DesignReader.read(
        DIPOLE + "  - {" + String.join("}\n  - {", requirements) + "}\n", "dipole.yaml");
  }

  private static List<CheckedRequirement> check(Solver solver, String... requirements) {
    return new RequirementCheck(design(requirements)).run(solver, 2);
  }

  private static CheckedRequirement one(Solver solver, String requirement) {
    return check(solver, requirement).get(0);
  }

  private static final String[] ALL = {
    "band: 40 m, swr: {max: 3}",
    "band: 40 m, swr: {max: 3, plane: feedpoint}",
    "band: 40 m, gain: {min: 2 dBi, elevation: 60 deg}",
    "band: 40 m, gain: {min: -10 dBi, elevation: 20 deg, azimuth: 45 deg}",
    "band: 40 m, efficiency: {min: 10 %}",
    "band: 40 m, bandwidth: {min: 50 kHz, swr: 1.5}",
    "band: 40 m, verdict: wide-tuner",
    "frequency: 7.1 MHz, swr: {max: 3}",
    "frequency: 7.1 MHz, gain: {min: 2 dBi, elevation: 60 deg}"
  };

  @Test
  void theStatedErrorReachesTheTighterSolution() {
    List<CheckedRequirement> coarse = check(COARSE, ALL);
    List<CheckedRequirement> fine = check(FINE, ALL);
    for (int i = 0; i < ALL.length; i++) {
      CheckedRequirement rough = coarse.get(i);
      assertThat(rough.outcome()).as(ALL[i]).isEqualTo(Outcome.MET);
      assertThat(fine.get(i).found()).as(ALL[i]).isBetween(rough.low(), rough.high());
      assertThat(rough.high() - rough.low())
          .as("width of the guard band, %s", ALL[i])
          .isGreaterThan(0)
          .isLessThan(0.05 * Math.abs(rough.found()));
    }
  }

  @Test
  void theWorstOfABandIsThatOfDenseSampling() {
    Installation installation = Installation.of(design(ALL));
    double[] swr = new double[41];
    double[] gain = new double[41];
    for (int i = 0; i <= 40; i++) {
      Operation operation = installation.solve(COARSE, 7e6 + i * 5e3);
      swr[i] = operation.feed("main").at(Plane.TRANSMITTER).swr();
      gain[i] = operation.solution().gainAtElevation(60).gainDbi();
    }
    List<CheckedRequirement> checked = check(COARSE, ALL);
    assertThat(checked.get(0).found())
        .isCloseTo(
            IntStream.range(0, 41).mapToDouble(i -> swr[i]).max().orElseThrow(), within(1e-3));
    assertThat(checked.get(2).found())
        .isCloseTo(
            IntStream.range(0, 41).mapToDouble(i -> gain[i]).min().orElseThrow(), within(2e-3));
    long inside = IntStream.range(0, 41).filter(i -> swr[i] <= 1.5).count();
    assertThat(checked.get(5).found()).isBetween((inside - 1) * 5e3, (inside + 1) * 5e3);
  }

  @Test
  void marginsCountFromTheLimitToTheValue() {
    double swr = one(COARSE, ALL[0]).found();
    double gain = one(COARSE, ALL[2]).found();
    assertThat(one(COARSE, ALL[0]).margin()).isEqualTo(3 - swr);
    assertThat(one(COARSE, ALL[2]).margin()).isEqualTo(gain - 2);
    CheckedRequirement failed = one(COARSE, "band: 40 m, swr: {max: 1.2}");
    assertThat(failed.outcome()).isEqualTo(Outcome.FAILED);
    assertThat(failed.passed()).isFalse();
    assertThat(failed.margin()).isNegative().isEqualTo(1.2 - failed.found());
  }

  @Test
  void aLimitWithinTheErrorIsSolvedForAgain() {
    CheckedRequirement coarse = one(COARSE, ALL[0]);
    CheckedRequirement tight = one(COARSE.withTolerance(1e-4), ALL[0]);
    assertThat(tight.high()).isLessThan(coarse.high());
    // Within the error of the first look, beyond that of the second.
    CheckedRequirement again = one(COARSE, swr(0.5 * (tight.high() + coarse.high())));
    assertThat(again.tolerance()).isEqualTo(1e-4);
    assertThat(again.outcome()).isEqualTo(Outcome.MET);
    CheckedRequirement below = one(COARSE, swr(0.5 * (tight.low() + coarse.low())));
    assertThat(below.tolerance()).isEqualTo(1e-4);
    assertThat(below.outcome()).isEqualTo(Outcome.FAILED);
  }

  @Test
  void aLimitAtTheValueItselfIsUndecidedAndDoesNotPass() {
    double exact = one(new Solver(new SolverOptions(1e-4)), ALL[0]).found();
    CheckedRequirement undecided = one(COARSE, swr(exact));
    assertThat(undecided.outcome()).isEqualTo(Outcome.UNDECIDED);
    assertThat(undecided.passed()).isFalse();
    assertThat(undecided.tolerance()).isEqualTo(1e-4);
    assertThat(undecided.cause()).startsWith("the limit lies within the numerical error; ");
  }

  private static String swr(double maximum) {
    return String.format(Locale.ROOT, "band: 40 m, swr: {max: %.17g}", maximum);
  }

  @Test
  void causesNameTheNearest() {
    assertThat(one(COARSE, "frequency: 6.5 MHz, swr: {max: 1.2}").cause())
        .contains("mostly capacitive reactance", "6.5000 MHz", "against 50");
    assertThat(one(COARSE, "frequency: 7.7 MHz, swr: {max: 1.2}").cause())
        .contains("mostly inductive reactance");
    assertThat(one(COARSE, "frequency: 14.3 MHz, swr: {max: 1.2}").cause())
        .contains("resistance too high");
    assertThat(one(COARSE, "band: 40 m, gain: {min: 9 dBi, elevation: 10 deg}").cause())
        .contains("the pattern peaks with", "% of the power accepted is radiated");
    assertThat(one(COARSE, "frequency: 7.1 MHz, efficiency: {min: 99 %}").cause())
        .contains("the largest loss, ", " % of the power accepted, is in conductors at 7.1000 MHz");
    assertThat(one(COARSE, "band: 40 m, bandwidth: {min: 200 kHz, swr: 1.01}").cause())
        .contains("its best match in the band");
    assertThat(one(COARSE, ALL[0]).cause()).isEmpty();
  }

  @Test
  void causesGiveTheFiguresOfTheSolution() {
    Operation operation = Installation.of(design(ALL)).solve(COARSE, 6.5e6);
    Complex z = operation.feed("main").impedance();
    assertThat(one(COARSE, "frequency: 6.5 MHz, swr: {max: 1.2}").cause())
        .isEqualTo(
            String.format(
                Locale.ROOT,
                "the feedpoint shows %.4g - j%.4g ohm against 50.00 ohm at 6.5000 MHz: mostly"
                    + " capacitive reactance",
                z.getReal(),
                -z.getImaginary()));
    Solution solution = operation.solution();
    assertThat(one(COARSE, "frequency: 6.5 MHz, gain: {min: 9 dBi, elevation: 10 deg}").cause())
        .isEqualTo(
            String.format(
                Locale.ROOT,
                "the pattern peaks with %.2f dBi at %.1f deg elevation at 6.5000 MHz; %.1f %% of the"
                    + " power accepted is radiated",
                solution.peakGain().gainDbi(),
                solution.peakGain().elevationDegrees().orElseThrow(),
                100 * solution.radiationEfficiency()));
    PowerBudget budget = solution.powerBudgetWithSoil();
    assertThat(one(COARSE, "frequency: 6.5 MHz, efficiency: {min: 99.9 %}").cause())
        .isEqualTo(
            String.format(
                Locale.ROOT,
                "the largest loss, %.1f %% of the power accepted, is in conductors at 6.5000 MHz",
                100 * budget.conductorLoss() / budget.accepted()));
  }

  /** The inductive end of a band is its upper one; a longer wire is inductive all over it. */
  @Test
  void causesNameTheEdgeOfTheBand() {
    assertThat(causeOf("20.8", "band: 40 m, swr: {max: 1.1}"))
        .contains(" + j", " at 7.2000 MHz, the upper edge: mostly inductive");
    assertThat(causeOf("20.4", "band: 40 m, swr: {max: 1.1}"))
        .contains(" + j", " at 7.2000 MHz, the upper edge: mostly inductive");
    assertThat(causeOf("19.4", "band: 40 m, swr: {max: 1.1}"))
        .contains(" - j", " at 7.0000 MHz, the lower edge: mostly capacitive");
    assertThat(causeOf("20.4", "frequency: 7.2 MHz, swr: {max: 1.1}"))
        .contains(" at 7.2000 MHz: mostly inductive");
  }

  private static String causeOf(String span, String requirement) {
    Design design =
        DesignReader.read(
            DIPOLE.replace("[20.2, 0, 9]", "[" + span + ", 0, 9]") + "  - {" + requirement + "}\n",
            "dipole.yaml");
    return new RequirementCheck(design).run(COARSE, 1).get(0).cause();
  }

  @Test
  void aFeedpointWithoutCurrentIsOpen() {
    Installation installation = Installation.of(design(ALL));
    Operation solved = installation.solve(COARSE, 7.1e6);
    SolvedFeed open =
        new SolvedFeed(
            "main",
            Complex.INF,
            0,
            0.03,
            List.of(new PlaneMismatch(Plane.FEEDPOINT, Mismatch.of(Complex.INF, 50))));
    Operation operation =
        new Operation(solved.solution(), List.of(open), Optional.empty(), Optional.empty());
    Requirement swr =
        design("frequency: 7.1 MHz, swr: {max: 3, plane: feedpoint}").requirements().get(0);
    Gauge gauge = Gauge.of(swr, "main");
    assertThat(gauge.error().apply(operation)).isZero();
    double magnitude = gauge.reading().apply(operation).abs();
    assertThat(gauge.value(magnitude, 0)).isEqualTo(Double.POSITIVE_INFINITY);
    Finding finding = new Finding(gauge, operation, gauge.value(magnitude, 0), 1, 2);
    assertThat(new Cause(installation, swr, finding).text(Outcome.FAILED))
        .isEqualTo("the feedpoint is open at 7.1000 MHz");
  }

  @Test
  void chokeHeatIsThatOfTheFeedLine() {
    String route =
        DIPOLE
            .replace("at: 50 %", "at: 36 %")
            .replace("feed-chain:\n", "feed-chain:\n  - choke: {impedance: 1 kohm}\n")
            .replace(
                "bands:",
                "feed-line: {conductor: strand, path: [[7.272, 0, 1], [7.272, 10, 1]]}\nbands:");
    Design design =
        DesignReader.read(
            route + "  - {frequency: 7.1 MHz, choke-heat: {max: 1 W}}\n", "route.yaml");
    CheckedRequirement checked = new RequirementCheck(design).run(COARSE, 1).get(0);
    Operation operation = Installation.of(design).solve(COARSE, 7.1e6);
    assertThat(checked.found()).isEqualTo(operation.commonMode().orElseThrow().topWatts());
    assertThat(checked.quantity()).isEqualTo(Quantity.CHOKE_HEAT);
    assertThat(checked.outcome()).isEqualTo(Outcome.FAILED);
    assertThat(checked.cause()).contains("A of common-mode current through 1000 ohm");
    double fine = new RequirementCheck(design).run(FINE, 1).get(0).found();
    assertThat(fine).isBetween(checked.low(), checked.high());
  }

  /** Any order of threads gives the same bits. */
  @Test
  void doesNotDependOnTheNumberOfThreads() {
    RequirementCheck check = new RequirementCheck(design(ALL));
    assertThat(check.run(COARSE, 4)).isEqualTo(check.run(COARSE, 1));
  }

  @Test
  void edgesOfTheGuardBandDecide() {
    assertThat(CheckedRequirement.judge(Quantity.SWR_TRANSMITTER, 2, 1.9, 2))
        .isEqualTo(Outcome.MET);
    assertThat(CheckedRequirement.judge(Quantity.SWR_TRANSMITTER, 2, 2, 2.1))
        .isEqualTo(Outcome.UNDECIDED);
    assertThat(CheckedRequirement.judge(Quantity.SWR_TRANSMITTER, 2, 2.01, 2.1))
        .isEqualTo(Outcome.FAILED);
    assertThat(CheckedRequirement.judge(Quantity.GAIN, 5, 5, 5.1)).isEqualTo(Outcome.MET);
    assertThat(CheckedRequirement.judge(Quantity.GAIN, 5, 4.9, 5)).isEqualTo(Outcome.UNDECIDED);
    assertThat(CheckedRequirement.judge(Quantity.GAIN, 5, 4.8, 4.9)).isEqualTo(Outcome.FAILED);
  }

  /** The Schwarz–Pick bound: a line of loss between feedpoint and plane shrinks distances. */
  @Test
  void anErrorOfTheImpedanceMovesTheReflectionAtMostSoFar() {
    Complex z = new Complex(31, -140);
    double error = 0.02;
    Mismatch seen = Mismatch.of(z, 50);
    SolvedFeed feed =
        new SolvedFeed("main", z, error, 0.03, List.of(new PlaneMismatch(Plane.FEEDPOINT, seen)));
    Gauge gauge =
        Gauge.of(
            new Requirement.MaximumSwr(
                new Requirement.AtFrequency(7e6), 2, Requirement.Plane.FEEDPOINT),
            "main");
    double bound =
        gauge.error().apply(new Operation(null, List.of(feed), Optional.empty(), Optional.empty()));
    double largest = 0;
    for (int i = 0; i < 360; i++) {
      Complex by = new Complex(0, Math.toRadians(i)).exp().multiply(error);
      largest =
          Math.max(
              largest, Mismatch.of(z.add(by), 50).reflection().subtract(seen.reflection()).abs());
    }
    assertThat(bound).isCloseTo(largest, within(0.01 * largest));
  }
}
