package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.circuit.Networks.assertClose;
import static org.spanwire.circuit.Networks.complex;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.geometry.LumpedImpedance;

class FeedChainTest {

  private static final double F = 7.1e6;
  private static final FeedChain.Source SOURCE = new FeedChain.Source(100, 50);

  private static ChainState run(Complex load, FeedChain.Stage... stages) {
    return new FeedChain(SOURCE, List.of(stages)).at(F, load);
  }

  private static FeedChain.Stage stage(Network network) {
    return FeedChain.Stage.of("stage", network, 50);
  }

  /** Definition: a source of 100 W into SWR 3 gives up the mismatch loss of 1.249387 dB. */
  @Test
  void mismatchAtTheTransmitter() {
    ChainState state = run(complex(150, 0));
    assertThat(10 * Math.log10(100 / state.acceptedPower())).isCloseTo(1.249387, within(1e-6));
    assertThat(state.deliveredPower()).isEqualTo(state.acceptedPower());
    assertThat(state.reflectedPower()).isCloseTo(25, within(1e-12));
    assertThat(state.planes().get(0).mismatch().swr()).isCloseTo(3, within(1e-12));
  }

  /** Two ideal 4:1 transformers, the second turned round: 50 ohm to 50 ohm and nothing lost. */
  @Test
  void backToBackIdealTransformers() {
    ChainState state =
        run(
            complex(50, 0),
            FeedChain.Stage.of("up", Transformer.ideal(4, 50), 200),
            FeedChain.Stage.of("down", Transformer.ideal(0.25, 200), 50));
    assertThat(state.planes().get(0).mismatch().impedance()).isEqualTo(complex(50, 0));
    assertThat(state.deliveredPower()).isEqualTo(100);
    assertThat(state.planes().get(1).mismatch().impedance()).isEqualTo(complex(200, 0));
  }

  /** Matched losses add: 0.3 dB, 1:4, 0.5 dB. */
  @Test
  void matchedLossesAdd() {
    ChainState state =
        run(
            complex(200, 0),
            stage(new Attenuator(0.3, 50)),
            FeedChain.Stage.of("up", Transformer.ideal(4, 50), 200),
            FeedChain.Stage.of("hot", new Attenuator(0.5, 200), 200));
    assertThat(state.deliveredPower()).isCloseTo(100 * Math.pow(10, -0.08), within(1e-12));
    assertThat(state.losses().get(0).watts())
        .isCloseTo(100 * (1 - Math.pow(10, -0.03)), within(1e-12));
    assertThat(state.losses().get(1).watts()).isCloseTo(0, within(1e-12));
  }

  /**
   * Any chain of lossy parts: the losses, each counted from the waves of its stage, add up to what
   * does not arrive, and none is negative.
   */
  @Test
  void wattsAddUp() {
    SplittableRandom random = new SplittableRandom(8);
    for (int trial = 0; trial < 500; trial++) {
      List<FeedChain.Stage> stages = new ArrayList<>();
      for (int k = random.nextInt(1, 7); k > 0; k--) {
        stages.add(stage(anyNetwork(random)));
      }
      Complex load =
          trial % 10 == 0
              ? trial % 20 == 0 ? Complex.INF : Complex.ZERO
              : complex(Math.pow(10, random.nextDouble(-1, 4)), random.nextDouble(-2000, 2000));
      ChainState state = new FeedChain(SOURCE, stages).at(F, load);
      assertThat(state.closure()).isCloseTo(0, within(1e-9));
      state.losses().forEach(loss -> assertThat(loss.watts()).isGreaterThan(-1e-9));
      if (trial % 10 == 0) {
        assertThat(state.deliveredPower()).isCloseTo(0, within(1e-9));
      }
    }
  }

  private static Network anyNetwork(SplittableRandom random) {
    double size = Math.pow(10, random.nextDouble(-1, 3));
    return switch (random.nextInt(6)) {
      case 0 -> Transformer.ideal(random.nextDouble(0.1, 9), 50);
      case 1 -> new Attenuator(random.nextDouble(0, 3), 75);
      case 2 ->
          new TransmissionLine(
              random.nextDouble(25, 600),
              random.nextDouble(0, 60),
              0.7,
              new LineAttenuation(random.nextDouble(0, 2e-5), 1e-10));
      case 3 -> Ladder.of(Ladder.series(f -> complex(size / 10, size)));
      case 4 -> Ladder.of(Ladder.shunt(f -> complex(size, -size)));
      default -> {
        NPort any = Networks.randomPassive(random, 2, 0.9);
        yield f -> any;
      }
    };
  }

  /** The L network of closed form: 50 to 200 ohm takes X = √(50·150) in series, 200/√3 in shunt. */
  @Test
  void lNetworkMatches() {
    Ladder match =
        Ladder.of(
            Ladder.series(f -> complex(0, Math.sqrt(50 * 150))),
            Ladder.shunt(f -> complex(0, -200 / Math.sqrt(3))));
    ChainState state = run(complex(200, 0), FeedChain.Stage.of("L", match, 200));
    assertClose(state.planes().get(0).mismatch().impedance(), complex(50, 0), 1e-12);
    assertThat(state.deliveredPower()).isCloseTo(100, within(1e-11));
  }

  /** A pi and its T (star-delta, any circuit text) are one network. */
  @Test
  void piAndTeeAgree() {
    LumpedImpedance a = f -> complex(30, 10);
    LumpedImpedance b = f -> complex(5, -70);
    LumpedImpedance c = f -> complex(90, 40);
    Complex sum = a.at(F).add(b.at(F)).add(c.at(F));
    Complex first = a.at(F).multiply(b.at(F)).divide(sum);
    Complex last = b.at(F).multiply(c.at(F)).divide(sum);
    Complex middle = a.at(F).multiply(c.at(F)).divide(sum);
    assertClose(
        Ladder.pi(a, b, c).at(F).scattering(),
        Ladder.tee(f -> first, f -> middle, f -> last).at(F).scattering(),
        1e-12);
  }

  @Test
  void openAndShortInALadderAreExact() {
    Ladder cut = Ladder.of(Ladder.series(f -> Complex.INF), Ladder.shunt(f -> Complex.ZERO));
    ChainState state = run(complex(50, 0), stage(cut));
    assertThat(state.planes().get(0).mismatch().impedance()).isEqualTo(Complex.INF);
    assertThat(state.acceptedPower()).isZero();
    assertThat(state.deliveredPower()).isZero();
    Ladder bypass = Ladder.of(Ladder.series(f -> Complex.ZERO), Ladder.shunt(f -> Complex.INF));
    assertThat(run(complex(50, 0), stage(bypass)).deliveredPower()).isEqualTo(100);
  }

  @Test
  void tuner() {
    Tuner tuner = new Tuner(50, 3, 0.1, 0.5);
    FeedChain.Stage stage = FeedChain.Stage.of("tuner", tuner);
    ChainState matched = run(complex(50, 0), stage);
    assertThat(matched.deliveredPower()).isCloseTo(100 * Math.pow(10, -0.01), within(1e-9));
    ChainState edge = run(complex(30, 30), stage);
    double loss = tuner.lossDb(complex(30, 30));
    assertThat(loss).isBetween(0.1, 0.5);
    assertThat(edge.planes().get(0).mismatch().swr()).isCloseTo(1, within(1e-12));
    assertThat(edge.deliveredPower()).isCloseTo(100 * Math.pow(10, -loss / 10), within(1e-9));
    assertThat(edge.closure()).isCloseTo(0, within(1e-12));
    assertThat(tuner.lossDb(complex(16.7, 0))).isCloseTo(0.5, within(1e-3));
    ChainState outside = run(complex(10, 0), stage);
    assertThat(outside.planes().get(0).mismatch().swr()).isCloseTo(5, within(1e-12));
    assertThat(outside.losses().get(0).watts()).isCloseTo(0, within(1e-12));
    assertThatThrownBy(() -> new Tuner(50, 3, 0.5, 0.1)).hasMessageContaining("fall");
  }

  /** A 3-port file drives a floating load through its differential mode. */
  @Test
  void threePortTransformer() {
    double h = Math.sqrt(0.5);
    NPort splitter =
        NPort.ofScattering(
            new Complex[][] {
              {Complex.ZERO, complex(h, 0), complex(-h, 0)},
              {complex(h, 0), complex(0.5, 0), complex(0.5, 0)},
              {complex(-h, 0), complex(0.5, 0), complex(0.5, 0)}
            },
            complex(50, 0),
            complex(100, 0),
            complex(100, 0));
    ChainState state =
        run(complex(200, 0), FeedChain.Stage.of("balun", Transformer.floating(f -> splitter), 200));
    assertThat(state.deliveredPower()).isCloseTo(100, within(1e-10));
    assertThatThrownBy(() -> Transformer.floating(f -> NPort.load(Complex.ONE, 50)).at(F))
        .isInstanceOf(CircuitException.class);
  }
}
