package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanwire.circuit.Attenuator;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneOptions;
import org.spanwire.circuit.Transformer;

class BalunBenchTest {

  private static final TouchstoneOptions OPTIONS =
      TouchstoneOptions.version1(TouchstoneOptions.Unit.MHZ, TouchstoneOptions.Format.RI);

  @TempDir private Path directory;

  private static JsonNode json(String... args) throws IOException {
    Run run = Run.of(args);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  /** Two units of 0.3 dB each, known in their parts: the pair gives 0.3 dB back. */
  @Test
  void aPairGivesTheLossOfOneUnitAndSaysWhatItHides() throws IOException {
    TreeMap<Double, NPort> samples = new TreeMap<>();
    for (double f : new double[] {1.8e6, 7e6, 30e6}) {
      NPort up = new Attenuator(0.3, 50).cascade(Transformer.ideal(4, 50)).at(f);
      NPort down = Transformer.ideal(0.25, 200).cascade(new Attenuator(0.3, 50)).at(f);
      samples.put(f, up.cascade(down));
    }
    Path file = directory.resolve("pair.s2p");
    Touchstone.of(NetworkData.of(samples), OPTIONS).write(file);
    JsonNode result = json("balun", "bench", file.toString(), "--format", "json");
    for (JsonNode reading : result.at("/units/0/readings")) {
      assertThat(reading.get("loss_db").doubleValue()).isCloseTo(0.3, within(1e-9));
      assertThat(reading.has("phase_imbalance_deg")).isFalse();
    }
    assertThat(result.at("/units/0/usable").isNull()).isTrue();
    assertThat(result.at("/warnings/0/name").textValue()).isEqualTo("pair-hides-imbalance");
    assertThat(Run.of("balun", "bench", file.toString()).out()).contains("hides imbalance");
  }

  /**
   * A splitter of 50 to 2 x 100 ohm whose second output errs by φ: rejection cot(φ/2), 21.2 dB at
   * 10°; the limit of 10° is crossed half way from 5° at 10 MHz to 15° at 20 MHz.
   */
  @Test
  void aUnitsBalanceAndUsableRange() throws IOException {
    double[][] rows = {{10e6, 5}, {15e6, 10}, {20e6, 15}};
    TreeMap<Double, NPort> samples = new TreeMap<>();
    double t = Math.sqrt(0.5);
    for (double[] row : rows) {
      double phi = Math.toRadians(row[1]);
      Complex second = new Complex(-t * Math.cos(phi), -t * Math.sin(phi));
      Complex first = new Complex(t, 0);
      Complex zero = Complex.ZERO;
      samples.put(
          row[0],
          NPort.ofScattering(
                  new Complex[][] {
                    {zero, first, second}, {first, zero, zero}, {second, zero, zero}
                  },
                  new Complex(50, 0),
                  new Complex(100, 0),
                  new Complex(100, 0))
              .renormalized(50));
    }
    Path file = directory.resolve("unit.s3p");
    Touchstone.of(NetworkData.of(samples), OPTIONS).write(file);
    JsonNode unit = json("balun", "bench", file.toString(), "--format", "json").at("/units/0");
    for (int i = 0; i < rows.length; i++) {
      JsonNode reading = unit.get("readings").get(i);
      double phi = Math.toRadians(rows[i][1]);
      assertThat(reading.get("phase_imbalance_deg").doubleValue())
          .isCloseTo(rows[i][1], within(1e-6));
      assertThat(reading.get("rejection_db").doubleValue())
          .isCloseTo(20 * Math.log10(1 / Math.tan(phi / 2)), within(1e-6));
      assertThat(reading.get("loss_db").doubleValue())
          .isCloseTo(-20 * Math.log10(Math.cos(phi / 2)), within(1e-6));
    }
    assertThat(unit.at("/usable/0/low_hz").doubleValue()).isEqualTo(10e6);
    assertThat(unit.at("/usable/0/high_hz").doubleValue()).isCloseTo(15e6, within(10.0));
    String tighter = Run.of("balun", "bench", file.toString(), "--max-phase", "3deg").out();
    assertThat(tighter).contains("usable: nowhere", "phase imbalance <= 3 deg");
    Run csv = Run.of("balun", "bench", file.toString(), "--format", "csv");
    assertThat(csv.out()).startsWith("source,measured_as,frequency_hz,loss_db,").hasLineCount(4);
    assertThat(csv.err()).isEmpty();
  }

  @Test
  void whatIsNoUnitIsRefusedWithItsPlace() throws IOException {
    Path bad = Files.writeString(directory.resolve("bad.s3p"), "# MHz S RI R 50\n7 x\n");
    Run run = Run.of("balun", "bench", bad.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("bad.s3p:2:").hasLineCount(1);
    assertThat(Run.of("balun", "bench", "missing.s3p").code()).isEqualTo(2);
    Path one = Files.writeString(directory.resolve("one.s1p"), "# MHz S RI R 50\n7 0.1 0\n");
    Run single = Run.of("balun", "bench", one.toString());
    assertThat(single.err()).contains("has 1 ports; expected 3 of a unit, or 2 of a pair");
    assertThat(single.code()).isEqualTo(2);
  }
}
