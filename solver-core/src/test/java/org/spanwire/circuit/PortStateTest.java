package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.circuit.Networks.assertClose;
import static org.spanwire.circuit.Networks.complex;

import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PortStateTest {

  private static final double F = 7.1e6;

  /** Two terminals of an offset-fed antenna against the outside of its feed line, invented. */
  private static final NPort ANTENNA =
      NPort.ofImpedance(
          new Complex[][] {
            {complex(180, -400), complex(60, -350)}, {complex(60, -350), complex(90, -300)},
          },
          complex(100, 0));

  /** Power in at port 1 less the loss of the network is what the load takes; both ends agree. */
  @Test
  void obeysKirchhoffAndKeepsPower() {
    SplittableRandom random = new SplittableRandom(9);
    for (int trial = 0; trial < 100; trial++) {
      NPort network =
          Networks.randomPassive(random, 3, 0.9).renormalized(Networks.randomReferences(random, 3));
      NPort load = Networks.randomPassive(random, 2, 0.8);
      Complex source = complex(50, random.nextDouble(-50, 50));
      PortState state = PortState.driven(network, complex(10, 0), source, load);
      Complex[][] z = network.impedance();
      Complex[][] zl = load.impedance();
      for (int i = 0; i < 3; i++) {
        Complex drop = Complex.ZERO;
        Complex taken = Complex.ZERO;
        for (int j = 0; j < 3; j++) {
          drop = drop.add(z[i][j].multiply(state.currents().get(j)));
          if (i > 0 && j > 0) {
            taken = taken.subtract(zl[i - 1][j - 1].multiply(state.currents().get(j)));
          }
        }
        assertClose(state.voltages().get(i), drop, 1e-9);
        if (i > 0) {
          assertClose(state.voltages().get(i), taken, 1e-9);
        }
      }
      assertClose(
          state.voltages().get(0).add(source.multiply(state.currents().get(0))),
          complex(10, 0),
          1e-9);
      assertThat(state.power(1)).isGreaterThan(-state.power(2) - state.power(3));
    }
  }

  /** An ideal 1:1 choke balun forces equal and opposite currents to 1e-9, any antenna. */
  @Test
  void idealChokeStopsTheCommonMode() {
    PortState state = state(Complex.INF);
    double sum = state.currents().get(1).add(state.currents().get(2)).abs();
    assertThat(sum).isLessThan(1e-9 * state.currents().get(1).abs());
    assertThat(state.power(1) + state.power(2) + state.power(3)).isCloseTo(0, within(1e-12));
  }

  private static PortState state(Complex choke) {
    TransmissionLine line = new TransmissionLine(100, 0.6, 0.8, LineAttenuation.NONE);
    WoundTransformer transformer =
        new WoundTransformer(new WoundTransformer.EqualDelay(1), line, f -> choke, 0);
    return PortState.driven(transformer.at(F), complex(10, 0), complex(50, 0), ANTENNA);
  }

  /** Mean voltage along the winding, which the choke sees. */
  private static Complex chokeVoltage(PortState state) {
    return state
        .voltages()
        .get(0)
        .subtract(state.voltages().get(1))
        .subtract(state.voltages().get(2))
        .multiply(0.5);
  }

  /**
   * Thévenin: open-circuit voltage from an infinite choke and source impedance from a short one
   * foretell the current, voltage and heat of every choke between.
   */
  @ParameterizedTest
  @ValueSource(doubles = {10, 300, 1000, 5000, 50000})
  void theveninForetellsTheChokeCurrent(double ohm) {
    Complex open = chokeVoltage(state(Complex.INF));
    PortState shorted = state(Complex.ZERO);
    Complex most = shorted.currents().get(1).add(shorted.currents().get(2)).negate();
    CommonModeDrive drive = new CommonModeDrive(open, open.divide(most));
    Complex choke = complex(ohm, 0.4 * ohm);
    PortState state = state(choke);
    Complex current = state.currents().get(1).add(state.currents().get(2)).negate();
    assertClose(drive.current(choke), current, 1e-12);
    assertClose(drive.voltage(choke), chokeVoltage(state), 1e-9);
    double lost = state.power(1) + state.power(2) + state.power(3);
    assertThat(drive.dissipation(choke)).isCloseTo(lost, within(1e-12));
  }

  @Test
  void chokeAtItsLimits() {
    CommonModeDrive drive = new CommonModeDrive(complex(100, 0), complex(50, -200));
    assertThat(drive.current(Complex.INF)).isEqualTo(Complex.ZERO);
    assertThat(drive.voltage(Complex.INF)).isEqualTo(complex(100, 0));
    assertThat(drive.dissipation(Complex.INF)).isZero();
    assertThat(drive.dissipation(Complex.ZERO)).isZero();
    assertThatThrownBy(() -> drive.current(complex(-50, 200))).hasMessageContaining("resonates");
    assertThatThrownBy(() -> PortState.driven(ANTENNA, Complex.ONE, Complex.ONE, ANTENNA))
        .hasMessageContaining("expected 1");
  }
}
