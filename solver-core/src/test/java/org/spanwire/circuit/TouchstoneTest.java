package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.circuit.Networks.assertClose;
import static org.spanwire.circuit.Networks.complex;

import java.io.IOException;
import java.nio.file.Path;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanwire.circuit.TouchstoneOptions.Format;
import org.spanwire.circuit.TouchstoneOptions.Matrix;
import org.spanwire.circuit.TouchstoneOptions.Order;
import org.spanwire.circuit.TouchstoneOptions.Parameter;
import org.spanwire.circuit.TouchstoneOptions.Unit;
import org.spanwire.circuit.TouchstoneOptions.Version;

/** Layout rules: IBIS Open Forum, Touchstone File Format Specification 1.1 and 2.1. */
class TouchstoneTest {

  private static NetworkData random(SplittableRandom random, int ports, boolean reciprocal) {
    TreeMap<Double, NPort> samples = new TreeMap<>();
    for (int k = 0; k < 3; k++) {
      Complex[][] s = Networks.randomPassive(random, ports, 0.9).scattering();
      for (int i = 0; i < ports; i++) {
        for (int j = 0; j < i && reciprocal; j++) {
          s[i][j] = s[j][i];
        }
      }
      samples.put(random.nextDouble(1e6, 60e6), NPort.ofScattering(s, 50));
    }
    return NetworkData.of(samples);
  }

  /** Reading and writing again: every number keeps its bits, in every format and layout. */
  @Test
  void roundTripKeepsTheNumbersBitForBit() {
    SplittableRandom random = new SplittableRandom(11);
    int combinations = 0;
    for (int ports = 1; ports <= 5; ports++) {
      for (Parameter parameter : Parameter.values()) {
        if (ports != 2 && (parameter == Parameter.G || parameter == Parameter.H)) {
          continue;
        }
        for (Format format : Format.values()) {
          for (Unit unit : Unit.values()) {
            for (Version version : Version.values()) {
              for (Matrix matrix : Matrix.values()) {
                for (Order order : Order.values()) {
                  boolean full = matrix == Matrix.FULL;
                  boolean hybrid = parameter == Parameter.G || parameter == Parameter.H;
                  boolean second = order == Order.ORDER_12_21;
                  if ((version == Version.V1 && (!full || second))
                      || (hybrid && !full)
                      || (ports != 2 && second)) {
                    continue;
                  }
                  roundTrip(
                      random(random, ports, !full),
                      new TouchstoneOptions(version, unit, parameter, format, matrix, order));
                  combinations++;
                }
              }
            }
          }
        }
      }
    }
    assertThat(combinations).isEqualTo(12 * (4 * 3 * 7 + 3 * 13 + 2 * 5));
  }

  private static void roundTrip(NetworkData data, TouchstoneOptions options) {
    Touchstone first = Touchstone.of(data, options);
    String name = "unit.s" + data.ports() + "p";
    Touchstone second = Touchstone.parse(name, first.text());
    assertThat(second.options()).isEqualTo(options);
    assertThat(second.text()).isEqualTo(first.text());
    assertThat(second.frequenciesHz()).containsExactly(first.frequenciesHz());
    NetworkData network = second.network();
    for (int k = 0; k < data.frequencies().length; k++) {
      Complex[][] read = network.sample(k).scattering();
      assertThat(read).isDeepEqualTo(first.network().sample(k).scattering());
      if (options.parameter() == Parameter.S && options.format() == Format.RI) {
        assertThat(read).isDeepEqualTo(data.sample(k).scattering());
      } else {
        assertClose(read, data.sample(k).scattering(), 1e-9);
      }
      assertThat(network.frequencies()[k])
          .isCloseTo(data.frequencies()[k], within(2 * Math.ulp(data.frequencies()[k])));
    }
    if (options.unit() == Unit.HZ) {
      assertThat(network.frequencies()).containsExactly(data.frequencies());
    }
  }

  /**
   * The 2-port of version 1 writes 21 before 12; angles in degrees; decimal megahertz are exact.
   */
  @Test
  void versionOneTwoPort() {
    Touchstone file =
        Touchstone.parse(
            "balun.S2P",
            """
            ! measured on the bench
            # mhz s ma r 75   ! options in any case
            14.1  0.5 180  2 90   0.25 -90  0.125 0
            # GHz Y RI
            14.35 0.5 45   1 0    1 0       1 60 ! second
            7 0.9 0.4 30 0.2
            """);
    assertThat(file.frequenciesHz()).containsExactly(14_100_000.0, 14_350_000.0);
    NPort network = file.network().sample(0);
    assertThat(network.reference(2)).isEqualTo(complex(75, 0));
    assertThat(network.s(1, 1)).isEqualTo(complex(-0.5, 0));
    assertThat(network.s(2, 1)).isEqualTo(complex(0, 2));
    assertThat(network.s(1, 2)).isEqualTo(complex(0, -0.25));
    assertThat(file.noise()).hasSize(1);
    assertThat(file.noise().get(0)).containsExactly(7e6, 0.9, 0.4, 30, 0.2);
    assertThat(Touchstone.parse("x.s2p", file.text()).text()).isEqualTo(file.text());
  }

  /** 2.002 and 2.007 times 1e6 in binary would miss the hertz that the file means. */
  @Test
  void decimalMegahertzBecomeExactHertz() {
    Touchstone file = Touchstone.parse("x.s1p", "# MHz S RI\n2.002 0 0\n2.007 0 0\n");
    assertThat(2.002 * 1e6).isNotEqualTo(2_002_000.0);
    assertThat(file.frequenciesHz()).containsExactly(2_002_000.0, 2_007_000.0);
  }

  /** Defaults of the option line: GHz, S, MA, 50 ohm. */
  @Test
  void emptyOptionLineMeansTheDefaults() {
    Touchstone file = Touchstone.parse("x.s1p", "#\r\n1 1 180\r2 1 0\n");
    assertThat(file.options()).isEqualTo(TouchstoneOptions.version1(Unit.GHZ, Format.MA));
    assertThat(file.frequenciesHz()).containsExactly(1e9, 2e9);
    assertThat(file.network().sample(0).inputImpedance()).isEqualTo(Complex.ZERO);
    assertThat(file.network().sample(1).inputImpedance()).isEqualTo(Complex.INF);
  }

  /** Version 1 normalizes Z to the reference, version 2 does not. */
  @Test
  void impedancesOfBothVersions() {
    Touchstone one = Touchstone.parse("x.s1p", "# Hz Z RI R 75\n5 2 1\n");
    assertClose(one.network().sample(0).inputImpedance(), complex(150, 75), 1e-12);
    Touchstone two =
        Touchstone.parse(
            "x.ts",
            "[Version] 2.0\n# Hz Z RI R 75\n[Number of Ports] 1\n[Number of Frequencies] 1\n"
                + "[Network Data]\n5 2 1\n[End]\n");
    assertClose(two.network().sample(0).inputImpedance(), complex(2, 1), 1e-13);
  }

  @Test
  void versionTwoKeywords() {
    Touchstone file =
        Touchstone.parse(
            "any name",
            """
            ! a comment may come first
            [Version] 2.1
            # MHz S RI
            [Number of Ports] 3
            [Number  of Frequencies] 1
            [Reference] 50
              75 100.5
            [Matrix Format] lower
            [Begin Information]
            [Manufacturer] any words 1 2 3
            [End Information]
            [Network Data]
            3.5 0.1 0.01
              0.2 0.02 0.3 0.03
              0.4 0.04 0.5 0.05
              0.6 0.06
            [End]
            """);
    assertThat(file.references()).containsExactly(50, 75, 100.5);
    NPort network = file.network().sample(0);
    assertThat(network.s(1, 3)).isEqualTo(complex(0.4, 0.04));
    assertThat(network.s(2, 3)).isEqualTo(complex(0.5, 0.05));
    assertThat(network.reciprocityError()).isZero();
  }

  /** Options of version 1.1 may give every port its own reference (from memory). */
  @Test
  void referencePerPort() {
    Touchstone file = Touchstone.parse("x.s2p", "# Hz S RI R 50 200\n1 0 0 1 0 1 0 0 0\n");
    assertThat(file.references()).containsExactly(50, 200);
    assertThat(Touchstone.parse("x.s2p", file.text()).references()).containsExactly(50, 200);
  }

  /** A full 4-port wraps after four pairs and starts every row on a new line. */
  @Test
  void layoutOfManyPorts() {
    NetworkData five = random(new SplittableRandom(5), 5, false);
    String[] lines =
        Touchstone.of(five, TouchstoneOptions.version1(Unit.HZ, Format.RI)).text().split("\n");
    assertThat(lines[1].split(" ")).hasSize(9);
    assertThat(lines[2].strip().split(" ")).hasSize(2);
    assertThat(lines[3].strip().split(" ")).hasSize(8);
    assertThat(lines).hasSize(1 + 3 * 10);
  }

  @Test
  void readsAndWritesFiles(@TempDir Path folder) throws IOException {
    NetworkData data = random(new SplittableRandom(6), 3, false);
    Path path = folder.resolve("unit.s3p");
    Touchstone.of(data, TouchstoneOptions.version1(Unit.HZ, Format.RI)).write(path);
    assertThat(Touchstone.read(path).network().sample(2).scattering())
        .isDeepEqualTo(data.sample(2).scattering());
    assertThatThrownBy(() -> Touchstone.read(folder)).hasMessageContaining("is a directory");
  }

  @Test
  void refusesWhatTheFormCannotHold() {
    NetworkData data = random(new SplittableRandom(7), 2, false);
    TouchstoneOptions one = TouchstoneOptions.version1(Unit.HZ, Format.DB);
    TouchstoneOptions two = TouchstoneOptions.version2(Unit.HZ, Format.DB);
    assertThatThrownBy(() -> Touchstone.of(data, two.with(Matrix.UPPER)))
        .hasMessageContaining("not symmetric");
    TreeMap<Double, NPort> through = new TreeMap<>();
    Complex[][] s = {{Complex.ZERO, Complex.ONE}, {Complex.ONE, Complex.ZERO}};
    through.put(1e6, NPort.ofScattering(s, complex(50, 0), complex(200, 0)));
    NetworkData matched = NetworkData.of(through);
    assertThatThrownBy(() -> Touchstone.of(matched, one)).hasMessageContaining("reference");
    assertThatThrownBy(() -> Touchstone.of(matched, two)).hasMessageContaining("decibels");
    through.put(1e6, NPort.ofScattering(s, complex(50, 3)));
    assertThatThrownBy(() -> Touchstone.of(NetworkData.of(through), two))
        .hasMessageContaining("renormalize");
    assertThatThrownBy(() -> one.with(Matrix.LOWER)).isInstanceOf(IllegalArgumentException.class);
  }
}
