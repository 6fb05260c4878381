package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.circuit.Networks.assertClose;
import static org.spanwire.circuit.Networks.complex;

import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.circuit.WoundTransformer.Autotransformer;
import org.spanwire.circuit.WoundTransformer.EqualDelay;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.unit.PhysicalConstants;

class WoundTransformerTest {

  private static final double F = 14.2e6;
  private static final LumpedImpedance IDEAL = f -> Complex.INF;

  private static TransmissionLine line(double z0, double wavelengths) {
    return new TransmissionLine(
        z0, wavelengths * PhysicalConstants.wavelength(F), 1, LineAttenuation.NONE);
  }

  private static ChainState chain(Network transformer, double load) {
    return new FeedChain(
            new FeedChain.Source(1, 50),
            List.of(FeedChain.Stage.of("transformer", transformer, load)))
        .at(F, complex(load, 0));
  }

  /** Guanella 1944: n lines of Z0 = n Rg take Rg to n² Rg, flat and ideal at every length. */
  @ParameterizedTest
  @CsvSource({"1, 50, 50", "2, 100, 200", "3, 150, 450"})
  void equalDelayIsIdealAtAllFrequencies(int lines, double z0, double load) {
    for (double length : new double[] {0, 0.05, 0.2, 0.25, 0.4, 0.5, 0.8}) {
      WoundTransformer transformer =
          new WoundTransformer(new EqualDelay(lines), line(z0, length), IDEAL, 0);
      assertThat(transformer.connection().ratio()).isEqualTo(lines * lines);
      ChainState state = chain(transformer.floating(), load);
      assertThat(state.deliveredPower()).isCloseTo(1, within(1e-12));
      assertClose(state.planes().get(0).mismatch().impedance(), complex(50, 0), 1e-10);
    }
  }

  /**
   * Ruthroff, Proc. IRE 1959: P/Pavail = 4 (1 + cos βl)²/((1 + 3 cos βl)² + 4 sin² βl) for Z0 = 2
   * Rg and 4 Rg, with its printed values; the same for the balanced form.
   */
  @ParameterizedTest
  @CsvSource({
    "0.05, -0.00068",
    "0.1, -0.0121",
    "0.15, -0.0726",
    "0.2, -0.2925",
    "0.25, -0.96910",
  })
  void autotransformerFollowsRuthroff(double length, double decibels) {
    double bl = 2 * Math.PI * length;
    double formula =
        4
            * Math.pow(1 + Math.cos(bl), 2)
            / (Math.pow(1 + 3 * Math.cos(bl), 2) + 4 * Math.pow(Math.sin(bl), 2));
    assertThat(10 * Math.log10(formula)).isCloseTo(decibels, within(1e-4));
    for (boolean balanced : new boolean[] {true, false}) {
      WoundTransformer transformer =
          new WoundTransformer(new Autotransformer(balanced), line(100, length), IDEAL, 0);
      assertThat(chain(transformer.floating(), 200).deliveredPower())
          .isCloseTo(formula, within(1e-12));
    }
  }

  @Test
  void autotransformerHasANullAtHalfAWavelength() {
    WoundTransformer transformer =
        new WoundTransformer(new Autotransformer(true), line(100, 0.5), IDEAL, 0);
    assertThat(chain(transformer.floating(), 200).deliveredPower()).isLessThan(1e-20);
  }

  /**
   * Short lines on real cores. The balanced autotransformer puts the port's voltage V along its
   * winding: |V|² Re(1/Z) is lost. In the equal-delay pair half of V stands along each: half that.
   * In the 1:1 nothing.
   */
  @Test
  void coreLossFollowsTheVoltageAlongTheWinding() {
    Complex z = complex(1500, 800);
    double g = z.reciprocal().getReal();
    double[] shares = {1, 0.5, 0, 2};
    WoundTransformer[] transformers = {
      new WoundTransformer(new Autotransformer(true), line(100, 0), f -> z, 0),
      new WoundTransformer(new EqualDelay(2), line(100, 0), f -> z, 0),
      new WoundTransformer(new EqualDelay(1), line(50, 0), f -> z, 0),
      new WoundTransformer(new EqualDelay(3), line(150, 0), f -> z, 0),
    };
    for (int i = 0; i < shares.length; i++) {
      double load = 50.0 * transformers[i].connection().ratio();
      ChainState state = chain(transformers[i].floating(), load);
      Complex input = state.planes().get(0).mismatch().impedance();
      double v2 = state.acceptedPower() / input.reciprocal().getReal();
      assertThat(state.losses().get(0).watts()).isCloseTo(shares[i] * v2 * g, within(1e-12));
      assertThat(transformers[i].connection().windingShare()).isEqualTo(shares[i]);
      assertThat(state.closure()).isCloseTo(0, within(1e-12));
    }
  }

  /** Passive and reciprocal with all parasitics, over frequency, lengths and both connections. */
  @Test
  void isPassiveAndReciprocal() {
    SplittableRandom random = new SplittableRandom(3);
    ToroidCore core =
        new ToroidCore(0.061, 0.03555, 0.0127, 2, PermeabilityTable.genericNickelZinc());
    for (int i = 0; i < 200; i++) {
      WoundTransformer.Connection connection =
          switch (i % 4) {
            case 0 -> new Autotransformer(true);
            case 1 -> new Autotransformer(false);
            default -> new EqualDelay(i % 4);
          };
      TransmissionLine winding =
          new TransmissionLine(
              random.nextDouble(40, 160),
              random.nextDouble(0, 3),
              0.8,
              new LineAttenuation(random.nextDouble(0, 1e-4), 0));
      WoundTransformer transformer =
          new WoundTransformer(
              connection,
              winding,
              core.winding(random.nextInt(3, 14), random.nextDouble(0, 10e-12)),
              random.nextDouble(0, 1e-7));
      double f = Math.pow(10, random.nextDouble(5.5, 7.9));
      NPort network = transformer.at(f);
      assertThat(network.largestGain()).isLessThan(1 + 1e-11);
      assertThat(network.reciprocityError()).isLessThan(1e-11);
    }
    // Without resistance anywhere nothing is lost.
    WoundTransformer reactive =
        new WoundTransformer(new EqualDelay(2), line(90, 0.1), f -> complex(0, 900), 2e-8);
    assertThat(reactive.at(F).largestGain()).isCloseTo(1, within(1e-12));
    Complex[][] s = reactive.at(F).scattering();
    double row = 0;
    for (Complex entry : s[0]) {
      row += entry.abs() * entry.abs();
    }
    assertThat(row).as("unitary").isCloseTo(1, within(1e-12));
  }

  /** The choke stands between the antenna and the common node; Ruthroff's form has none there. */
  @Test
  void commonModeImpedance() {
    Complex z = complex(2000, 1500);
    WoundTransformer choke = new WoundTransformer(new EqualDelay(1), line(50, 0), f -> z, 0);
    assertClose(choke.commonModeImpedance(F), z, 1e-8);
    WoundTransformer voltage =
        new WoundTransformer(new Autotransformer(true), line(100, 0), f -> z, 0);
    assertThat(voltage.commonModeImpedance(F).abs()).isLessThan(1e-9);
  }

  /**
   * A choke of any size, between a short and an open circuit, neither of which is a special case.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1e9, 1e15, 1e30, 1e200})
  void hugeAndTinyChokesJoinTheLimits(double ohm) {
    WoundTransformer.Connection pair = new EqualDelay(2);
    Complex[][] open = new WoundTransformer(pair, line(100, 0.1), IDEAL, 0).at(F).scattering();
    Complex[][] shorted =
        new WoundTransformer(pair, line(100, 0.1), f -> Complex.ZERO, 0).at(F).scattering();
    assertClose(
        new WoundTransformer(pair, line(100, 0.1), f -> complex(ohm, ohm), 0).at(F).scattering(),
        open,
        1e-6);
    assertClose(
        new WoundTransformer(pair, line(100, 0.1), f -> complex(1 / ohm, 0), 0).at(F).scattering(),
        shorted,
        1e-6);
  }

  /** Leakage is in series: 1:1 of length 0 between 50 ohm shows jωL on top of the load. */
  @Test
  void leakageIsInSeries() {
    WoundTransformer transformer =
        new WoundTransformer(new EqualDelay(1), line(50, 0), IDEAL, 1e-7);
    Complex input = chain(transformer.floating(), 50).planes().get(0).mismatch().impedance();
    assertClose(input, complex(50, 2 * Math.PI * F * 1e-7), 1e-10);
  }

  /** Closed form (μ0/2π) h ln(OD/ID): 1.37143 nH; 1097 nH per turn squared at μ = 800. */
  @Test
  void inductanceOfARing() {
    ToroidCore core =
        new ToroidCore(0.061, 0.03555, 0.0127, 1, PermeabilityTable.genericNickelZinc());
    assertThat(core.airInductance()).isCloseTo(1.37143e-9, within(1e-14));
    double low = core.winding(1, 0).at(2e4).getImaginary() / (2 * Math.PI * 2e4);
    assertThat(low).isCloseTo(1097e-9, within(1097e-9 * 1e-3));
  }

  /** Snelling: R = ωN²L0μ″, X = ωN²L0μ′; a stray capacitance resonates where 1/ωC = |X|. */
  @ParameterizedTest
  @ValueSource(doubles = {1e6, 3.7e6, 21e6})
  void chokeImpedance(double f) {
    ToroidCore core =
        new ToroidCore(0.061, 0.03555, 0.0127, 2, PermeabilityTable.genericNickelZinc());
    Complex mu = core.material().at(f);
    double scale = 2 * Math.PI * f * 121 * core.airInductance();
    Complex z = core.winding(11, 0).at(f);
    assertClose(z, complex(-scale * mu.getImaginary(), scale * mu.getReal()), 1e-9 * z.abs());
    Complex stray = core.winding(11, 2e-12).at(f);
    assertClose(
        stray.reciprocal().subtract(z.reciprocal()), complex(0, 2 * Math.PI * f * 2e-12), 1e-15);
  }

  @Test
  void permeabilityTable() {
    PermeabilityTable table =
        PermeabilityTable.parse(
            "ring.csv",
            """
            # measured on one ring, our bench, 2024
            frequency_hz,mu_real,mu_imaginary
            1e6, 800, 100
            4e6, 400, 400
            """);
    assertThat(table.provenance()).contains("our bench");
    assertClose(table.at(2e6), complex(Math.sqrt(800 * 400.0), -200), 1e-9);
    assertThat(table.at(4e6)).isEqualTo(complex(400, -400));
    assertThatThrownBy(() -> table.at(5e6)).isInstanceOf(CircuitException.class);
    assertThat(PermeabilityTable.genericManganeseZinc().provenance()).contains("no maker's data");
    // The table of the generic ferrite against its own formula between rows.
    Complex exact = complex(799, 0).divide(complex(1, 7.3e6 / 5e6)).add(1);
    Complex read = PermeabilityTable.genericNickelZinc().at(7.3e6);
    assertClose(read, exact, 2e-3 * exact.abs());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "frequency_hz,mu_real,mu_imaginary|1,2,3; t.csv:1:1: table needs rows, and a comment",
        "# x|f,mu; t.csv:2:1: expected the header",
        "# x|frequency_hz,mu_real,mu_imaginary|1,2; t.csv:3:1: expected three positive",
        "# x|frequency_hz,mu_real,mu_imaginary|1,2,-3; t.csv:3:1: expected three positive",
        "# x|frequency_hz,mu_real,mu_imaginary|1,2,x; t.csv:3:1: row holds a word",
        "# x|frequency_hz,mu_real,mu_imaginary|2,2,3|1,2,3; t.csv:4:1: frequency is not above",
      })
  void badPermeabilityTable(String text, String message) {
    assertThatThrownBy(() -> PermeabilityTable.parse("t.csv", text.replace('|', '\n')))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith(message);
  }
}
