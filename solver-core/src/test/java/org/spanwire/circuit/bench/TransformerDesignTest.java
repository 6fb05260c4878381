package org.spanwire.circuit.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.FeedChain;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.PermeabilityTable;
import org.spanwire.circuit.ToroidCore;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.Winding;
import org.spanwire.circuit.WoundTransformer;

class TransformerDesignTest {

  private static final ToroidCore CORE =
      new ToroidCore(0.061, 0.03555, 0.0127, 1, PermeabilityTable.genericNickelZinc());
  private static final WoundTransformer.Connection PAIR = new WoundTransformer.EqualDelay(2);

  private static TransformerDesign design(WoundTransformer.Connection connection, double farads) {
    TransmissionLine line =
        new TransmissionLine(100, 8 * CORE.turnLength(), 1, LineAttenuation.NONE);
    return new TransformerDesign(new Winding(connection, CORE, 8, line, 0, farads), 50);
  }

  @Test
  void fewestTurnsForTheLowFrequencyLimit() {
    int turns = TransformerDesign.turns(CORE, 3.5e6, 1000);
    assertThat(CORE.winding(turns, 0).at(3.5e6).abs()).isGreaterThanOrEqualTo(1000 * (1 - 1e-11));
    assertThat(CORE.winding(turns - 1, 0).at(3.5e6).abs()).isLessThan(1000);
    double exact = CORE.winding(7, 0).at(3.5e6).abs();
    assertThat(TransformerDesign.turns(CORE, 3.5e6, exact)).isEqualTo(7);
    assertThatThrownBy(() -> TransformerDesign.turns(CORE, 1e4, 1e6))
        .hasMessageContaining("larger cores");
  }

  /** The aid's loss is that of the wound transformer with short lines. */
  @Test
  void lossAgreesWithTheNetwork() {
    WoundTransformer.Connection[] connections = {
      PAIR, new WoundTransformer.EqualDelay(3), new WoundTransformer.Autotransformer(true),
    };
    for (WoundTransformer.Connection connection : connections) {
      TransformerDesign design = design(connection, 2e-12);
      for (double f : new double[] {1.8e6, 7e6, 29e6}) {
        double load = 50.0 * connection.ratio();
        WoundTransformer wound =
            new WoundTransformer(
                connection,
                new TransmissionLine(100, 0, 1, LineAttenuation.NONE),
                CORE.winding(8, 2e-12),
                0);
        ChainState state =
            new FeedChain(
                    new FeedChain.Source(1, 50),
                    List.of(FeedChain.Stage.of("unit", wound.floating(), load)))
                .at(f, new Complex(load, 0));
        double share = state.losses().get(0).watts() / state.acceptedPower();
        assertThat(design.coreShare(f)).isCloseTo(share, within(1e-12));
        // A load of SWR 3, resistive and high, has three times the voltage squared per watt.
        ChainState high =
            new FeedChain(
                    new FeedChain.Source(1, 50),
                    List.of(FeedChain.Stage.of("unit", wound.floating(), load)))
                .at(f, new Complex(3 * load, 0));
        assertThat(design.worstCoreShare(f, 3))
            .isCloseTo(high.losses().get(0).watts() / high.acceptedPower(), within(1e-12));
      }
    }
  }

  @Test
  void temperatureRiseAndSafePower() {
    TransformerDesign design = design(PAIR, 0);
    double f = 3.6e6;
    double watts = 100 * design.coreShare(f) / 2;
    double rise = design.temperatureRise(f, 100, 1);
    // By hand: one of two equal cores, 10 W/(m² K), surface of the ring.
    double surface =
        Math.PI * (0.061 + 0.03555) * 0.0127 + Math.PI / 2 * (0.061 * 0.061 - 0.03555 * 0.03555);
    assertThat(rise).isCloseTo(watts / (10 * surface), within(1e-9));
    double safe = design.safeAveragePower(f, 40, 2);
    assertThat(design.temperatureRise(f, safe, 2)).isCloseTo(40, within(1e-9));
    assertThat(design.safePower(f, 40, 1, 2, OperatingMode.SSB))
        .isEqualTo(new TransformerDesign.PowerLimit(safe / 0.2, TransformerDesign.Cause.HEAT));
    TransformerDesign choke = design(new WoundTransformer.EqualDelay(1), 0);
    assertThat(choke.safeAveragePower(f, 40, 2)).isEqualTo(Double.POSITIVE_INFINITY);
  }

  /** Loss of line and core together, by the unit in a chain. */
  @Test
  void lossOfTheWholeUnit() {
    LineAttenuation lossy = LineAttenuation.ofConductor(10e6, 0.2);
    TransmissionLine line = new TransmissionLine(100, 8 * CORE.turnLength(), 0.8, lossy);
    TransformerDesign design =
        new TransformerDesign(new Winding(PAIR, CORE, 8, line, 20e-9, 2e-12), 50);
    ChainState state =
        new FeedChain(
                new FeedChain.Source(1, 50),
                List.of(FeedChain.Stage.of("unit", design.winding().transformer().floating(), 200)))
            .at(14e6, new Complex(200, 0));
    double share = state.losses().get(0).watts() / state.acceptedPower();
    assertThat(design.lossDb(14e6)).isCloseTo(-10 * Math.log10(1 - share), within(1e-11));
    assertThat(design.inputSwr(14e6))
        .isCloseTo(state.planes().get(0).mismatch().swr(), within(1e-10));
    assertThat(design.lossDb(14e6)).isGreaterThan(line.matchedLossDb(14e6));
    assertThat(design.hottestShare(14e6, 1))
        .isCloseTo(
            design.coreShare(14e6) / 2 + (1 - Math.pow(10, -line.matchedLossDb(14e6) / 10)) / 2,
            within(1e-12));
  }

  /**
   * Faraday by hand: 100 W into 50 ohm is 70.7 V, half of it along each of two windings of eight
   * turns on 161.6 mm².
   */
  @Test
  void fluxAndWhatLimits() {
    TransformerDesign design = design(PAIR, 0);
    double section = 0.0127 * (0.061 - 0.03555) / 2;
    double volts = Math.sqrt(100 * 50) / 2;
    double flux = Math.sqrt(2) * volts / (2 * Math.PI * 1e5 * 8 * section);
    assertThat(design.fluxDensity(1e5, 100, 1)).isCloseTo(flux, within(1e-12));
    assertThat(design.fluxDensity(1e5, 100, 4)).isCloseTo(2 * flux, within(1e-12));
    assertThat(design.fluxLimitedPower(1e5, flux, 1)).isCloseTo(100, within(1e-9));
    TransformerDesign.PowerLimit low = design.safePower(1e5, 1e6, flux, 1, OperatingMode.CARRIER);
    assertThat(low.cause()).isEqualTo(TransformerDesign.Cause.FLUX);
    assertThat(low.peakWatts()).isCloseTo(100, within(1e-9));
  }

  /** Readings made from a known run, with noise, give back resistance and time constant. */
  @Test
  void heatRun() {
    SplittableRandom random = new SplittableRandom(4);
    TreeMap<Double, Double> readings = new TreeMap<>();
    for (double t = 0; t <= 1200; t += 60) {
      readings.put(t, 22 + 48 * (1 - Math.exp(-t / 380)) + random.nextDouble(-0.2, 0.2));
    }
    HeatRun run = HeatRun.fitted(readings);
    assertThat(run.start()).isCloseTo(22, within(0.5));
    assertThat(run.timeConstant()).isCloseTo(380, within(15.0));
    assertThat(run.thermalResistance(12)).isCloseTo(4, within(0.1));
    assertThat(run.residual()).isLessThan(0.2);

    double steady = run.safePeakPower(100, 24, OperatingMode.CARRIER, Double.POSITIVE_INFINITY, 0);
    assertThat(steady).isCloseTo(100 * 24 / run.rise(), within(1e-9));
    assertThat(run.safePeakPower(100, 24, OperatingMode.SSB, 60, 0))
        .isCloseTo(5 * steady, within(1e-6));
    // The periodic peak, by running the turns one after another.
    double power = run.safePeakPower(100, 24, OperatingMode.DATA, 120, 60);
    double temperature = 0;
    for (int turn = 0; turn < 200; turn++) {
      double end = run.rise() * power / 100;
      temperature = end + (temperature - end) * Math.exp(-120 / run.timeConstant());
      if (turn < 199) {
        temperature *= Math.exp(-60 / run.timeConstant());
      }
    }
    assertThat(temperature).isCloseTo(24, within(1e-9));
  }

  /** SWR that drifts settles with the same law; a straight line does not settle. */
  @Test
  void driftOfSwrAndRunsTooShort() {
    TreeMap<Double, Double> swr = new TreeMap<>();
    TreeMap<Double, Double> straight = new TreeMap<>();
    for (double t = 0; t <= 300; t += 20) {
      swr.put(t, 1.3 + 0.9 * (1 - Math.exp(-t / 90)));
      straight.put(t, 20 + 0.1 * t);
    }
    assertThat(HeatRun.fitted(swr).timeConstant()).isCloseTo(90, within(1e-3));
    assertThatThrownBy(() -> HeatRun.fitted(straight)).hasMessageContaining("run longer");
    HeatRun cooling = new HeatRun(70, -40, 300, 0);
    assertThatThrownBy(() -> cooling.thermalResistance(10)).hasMessageContaining("must rise");
    assertThatThrownBy(() -> cooling.safePeakPower(100, 30, OperatingMode.CW, 60, 60))
        .hasMessageContaining("must rise");
    straight.tailMap(50.0).clear();
    assertThatThrownBy(() -> HeatRun.fitted(straight)).hasMessageContaining("at least four");
  }
}
