package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.DesignReader;

/** Every kind of stage, as a design names it, does what circuit theory says of it. */
class ChainStagesTest {

  private static final double F = 14.1e6;

  private static final String DIPOLE =
      """
      format: spanwire-design/1
      title: Short dipole of the test
      conductors:
        strand: {material: copper, diameter: 2 mm}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 9], [9, 0, 9]]}
      feeds:
        main: {wire: radiator, at: 40 %%, gap: 40 mm}
      ground: free-space
      %sfeed-chain:
      %s""";

  private static final String RING =
      "core: {outer: 61 mm, inner: 35.55 mm, height: 12.7 mm, count: 2, material:"
          + " generic-nickel-zinc}";

  private static Operation solve(String route, String... stages) {
    StringBuilder chain = new StringBuilder();
    for (String stage : stages) {
      chain.append("  - ").append(stage).append('\n');
    }
    Solver solver = new Solver(SolverOptions.defaults().withTolerance(1e-2));
    String design = DIPOLE.formatted(route, chain);
    return Installation.of(DesignReader.read(design, "kit.yaml")).solve(solver, F);
  }

  private static Operation floating(String... stages) {
    return solve("", stages);
  }

  private static ChainState chain(Operation operation) {
    ChainState state = operation.chain().orElseThrow();
    assertThat(state.closure()).isCloseTo(0, within(1e-12));
    return state;
  }

  private static Mismatch transmitter(Operation operation) {
    return operation.feeds().get(0).at(Plane.TRANSMITTER);
  }

  @Test
  void anAttenuatorAddsTwiceItsLossToTheReturnLoss() {
    double without = transmitter(floating("transformer: {ratio: 1}")).returnLossDb();
    Operation with = floating("attenuator: {loss: 3 dB}");
    assertThat(transmitter(with).returnLossDb()).isCloseTo(without + 6, within(1e-9));
    assertThat(chain(with).losses().get(0).watts()).isGreaterThan(50);
  }

  /**
   * A quarter wave shorted is open at its other end, an eighth wave is +jZ0; in series or across.
   */
  @Test
  void stubs() {
    double quarter = 299_792_458 / F / 4;
    Complex z = transmitter(floating("transformer: {ratio: 1}")).impedance();
    String stub = "stub: {impedance: 50 ohm, velocity-factor: 1, end: %s, length: %s m%s}";
    Complex open = transmitter(floating(stub.formatted("shorted", quarter, ""))).impedance();
    assertThat(open.subtract(z).abs()).isLessThan(1e-9 * z.abs());
    Complex series =
        transmitter(floating(stub.formatted("shorted", quarter / 2, ", connection: series")))
            .impedance();
    assertThat(series.subtract(z).subtract(new Complex(0, 50)).abs()).isLessThan(1e-9 * z.abs());
    Complex across = transmitter(floating(stub.formatted("open", quarter / 2, ""))).impedance();
    Complex expected = z.reciprocal().add(new Complex(0, -50).reciprocal()).reciprocal();
    assertThat(across.subtract(expected).abs()).isLessThan(1e-9 * z.abs());
  }

  /**
   * An L network by the closed form (Pozar, section 5.1): from the feedpoint a reactance in series,
   * then a susceptance across the transmitter. The other way round it would not match.
   */
  @Test
  void anLNetworkMatches() {
    Complex z = transmitter(floating("transformer: {ratio: 4}")).impedance();
    double r = z.getReal();
    assertThat(r).isLessThan(50);
    double w = 2 * Math.PI * F;
    double inductance = (Math.sqrt(r * (50 - r)) - z.getImaginary()) / w;
    double capacitance = Math.sqrt((50 - r) / r) / 50 / w;
    assertThat(inductance).isPositive();
    String network = "matching: [series: {l: %s H}, shunt: {c: %s F}]";
    Operation matched =
        floating(
            "transformer: {ratio: 4}",
            network.formatted(decimal(inductance), decimal(capacitance)));
    assertThat(transmitter(matched).swr()).isCloseTo(1, within(1e-6));
    assertThat(chain(matched).deliveredPower()).isCloseTo(100, within(1e-4));
    Operation reversed =
        floating(
            "transformer: {ratio: 4}",
            "matching: [shunt: {c: %s F}, series: {l: %s H}]"
                .formatted(decimal(capacitance), decimal(inductance)));
    assertThat(transmitter(reversed).swr()).isGreaterThan(1.5);
  }

  private static String decimal(double value) {
    return new java.math.BigDecimal(value).toPlainString();
  }

  /**
   * A tuner beside the transmitter leaves the SWR that is judged as it is, before any tuner, lets
   * all power in and loses its share; out of its range it does nothing.
   */
  @Test
  void aTunerBesideTheTransmitter() {
    String line = "line: {impedance: 50 ohm, length: 9 m, velocity-factor: 0.7}";
    Operation bare = floating(line);
    double swr = transmitter(bare).swr();
    assertThat(swr).isBetween(2.0, 30.0);
    Operation tuned = floating(line, "tuner: {swr: 30, loss: 0.3 dB, limit-loss: 1.3 dB}");
    assertThat(transmitter(tuned).swr()).isCloseTo(swr, within(1e-9));
    double loss = 0.3 + Math.log(swr) / Math.log(30);
    assertThat(chain(tuned).acceptedPower()).isCloseTo(100, within(1e-9));
    assertThat(chain(tuned).deliveredPower())
        .isCloseTo(100 * Math.pow(10, -loss / 10), within(1e-9));
    Operation beyond = floating(line, "tuner: {swr: 1.5, loss: 0.3 dB}");
    assertThat(transmitter(beyond).swr()).isCloseTo(swr, within(1e-9));
    assertThat(chain(beyond).deliveredPower())
        .isCloseTo(chain(bare).deliveredPower(), within(1e-9));
  }

  /** Behind the line a tuner is part of what the transmitter sees: matched but for the line. */
  @Test
  void aTunerAtTheFeedpointMatchesTheLine() {
    Operation remote =
        floating(
            "tuner: {swr: 20, loss: 0.3 dB}",
            "line: {impedance: 50 ohm, length: 9 m, velocity-factor: 0.7}");
    assertThat(transmitter(remote).swr()).isCloseTo(1, within(1e-9));
  }

  /** Matched, a line of 100 m loses what its table, its parts or its figure say. */
  @Test
  void lossOfALineByFigurePartsOrTable() {
    String line =
        "line: {impedance: 50 ohm, length: 100 m, velocity-factor: 0.66, loss: {per: 100 m, %s}}";
    String match = "attenuator: {loss: 60 dB}";
    double root = Math.sqrt(F / 10e6);
    double linear = F / 10e6;
    for (String loss :
        new String[] {
          "frequency: 10 MHz, value: 2 dB",
          "frequency: 10 MHz, conductor: 1.5 dB, dielectric: 0.5 dB",
          "table: [[2.5 MHz, 0.875 dB], [10 MHz, 2 dB], [40 MHz, 5 dB]]"
        }) {
      double expected = loss.contains("value") ? 2 * root : 1.5 * root + 0.5 * linear;
      ChainState state = chain(floating(match, line.formatted(loss)));
      double share = state.losses().get(0).watts() / state.acceptedPower();
      assertThat(-10 * Math.log10(1 - share)).as(loss).isCloseTo(expected, within(1e-3));
    }
  }

  private static String wound(String connection, int turns, String line) {
    return "transformer: {ratio: 4, wound: {connection: %s, turns: %d, %s, line: {impedance: 100 ohm, %s}}}"
        .formatted(connection, turns, RING, line);
  }

  /**
   * A good wound transformer is nearly the ideal one, and its loss is that of its core and line.
   */
  @Test
  void aWoundTransformerIsNearlyIdealAndHasItsLoss() {
    Complex ideal = transmitter(floating("transformer: {ratio: 4}")).impedance();
    for (String connection : new String[] {"equal-delay", "autotransformer"}) {
      Operation wound = floating(wound(connection, 10, "velocity-factor: 1"));
      Complex z = transmitter(wound).impedance();
      assertThat(z.subtract(ideal).abs()).as(connection).isLessThan(0.6 * ideal.abs());
      double watts = chain(wound).losses().get(0).watts();
      assertThat(watts).as(connection).isBetween(0.05, 5.0);
      double lossy =
          chain(
                  floating(
                      wound(
                          connection,
                          10,
                          "velocity-factor: 1, loss: {frequency: 10 MHz, per: 1 m, value: 0.1 dB}")))
              .losses()
              .get(0)
              .watts();
      assertThat(lossy).as(connection).isGreaterThan(watts + 0.5);
    }
  }

  /** The three currents at the node sum to nothing, whatever stands there; so do the watts. */
  @Test
  void kirchhoffAtTheNodeOfEveryKindOfTransformer() {
    String route = "feed-line: {conductor: jacket, path: [[3.6, 0, 1]]}\n";
    String line = "line: {impedance: 50 ohm, length: 8 m, velocity-factor: 0.66}";
    String ring = ", " + RING + ", turns: 9, line: {impedance: 100 ohm, velocity-factor: 0.8}}}";
    for (String transformer :
        new String[] {
          "attenuator: {loss: 0 dB}",
          "transformer: {ratio: 4}",
          "transformer: {ratio: 4, output: unbalanced}",
          "transformer: {ratio: 1, wound: {connection: equal-delay" + ring,
          "transformer: {ratio: 4, wound: {connection: equal-delay" + ring,
          "transformer: {ratio: 4, wound: {connection: autotransformer" + ring,
          "transformer: {ratio: 4, output: unbalanced, wound: {connection: autotransformer" + ring
        }) {
      for (String polarity : new String[] {"first-point", "last-point"}) {
        Operation operation =
            solve(
                route.replace("conductor", "polarity: " + polarity + ", conductor"),
                transformer,
                "choke: {impedance: 1 kohm}",
                line);
        assertThat(operation.commonMode().orElseThrow().kirchhoff())
            .as(transformer + ", " + polarity)
            .isLessThan(1e-9);
        assertThat(operation.commonMode().orElseThrow().current().abs()).isGreaterThan(1e-4);
        assertThat(operation.ledger(operation.solution().powerBudget()).orElseThrow().closure())
            .as(transformer + ", " + polarity)
            .isCloseTo(0, within(1e-3));
      }
    }
  }

  /** With the line's outside: the tuner in the chain takes nothing from the books. */
  @Test
  void allStagesTogetherCloseTheLedger() {
    String route = "feed-line: {conductor: jacket, path: [[3.6, 0, 1]]}\n";
    String line =
        "line: {impedance: 50 ohm, length: 8 m, velocity-factor: 0.66,"
            + " loss: {frequency: 10 MHz, per: 100 m, value: 4 dB}}";
    Operation operation =
        solve(
            route,
            wound("equal-delay", 10, "velocity-factor: 1"),
            "choke: {impedance: {r: 500 ohm, x: 300 ohm}}",
            line,
            "attenuator: {loss: 0.5 dB}",
            "stub: {impedance: 50 ohm, length: 1 m, velocity-factor: 0.66, end: open}",
            "matching: [series: {l: 100 nH, r: 0.2 ohm}]",
            "tuner: {swr: 30, loss: 0.2 dB, limit-loss: 1 dB}");
    Ledger ledger = operation.ledger(operation.solution().powerBudget()).orElseThrow();
    assertThat(ledger.entries())
        .extracting(Ledger.Entry::part)
        .startsWith(
            "mismatch", "tuner", "matching", "stub", "attenuator", "line", "transformer", "choke");
    assertThat(ledger.closure()).isCloseTo(0, within(1e-3));
    assertThat(ledger.watts("mismatch")).isCloseTo(0, within(1e-6));
    assertThat(ledger.watts("matching")).isPositive();
    assertThat(ledger.watts("transformer")).isPositive();
    assertThat(ledger.watts("choke")).isPositive();
    assertThat(operation.commonMode().orElseThrow().kirchhoff()).isLessThan(1e-9);
  }
}
