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

  private Path unit(String name, double lossDb, double phase) throws IOException {
    TreeMap<Double, NPort> samples = new TreeMap<>();
    double t = Math.sqrt(0.5) * Math.pow(10, -lossDb / 20);
    Complex first = new Complex(t, 0);
    Complex second = first.multiply(new Complex(0, Math.toRadians(phase)).exp()).negate();
    Complex zero = Complex.ZERO;
    for (double f : new double[] {3e6, 10e6, 30e6}) {
      samples.put(
          f,
          NPort.ofScattering(
                  new Complex[][] {
                    {zero, first, second}, {first, zero, zero}, {second, zero, zero}
                  },
                  new Complex(50, 0),
                  new Complex(100, 0),
                  new Complex(100, 0))
              .renormalized(50));
    }
    Path file = directory.resolve(name);
    Touchstone.of(NetworkData.of(samples), OPTIONS).write(file);
    return file;
  }

  /** A batch with one bad unit: exit code 1, its reason, the statistics and the golden unit. */
  @Test
  void aBatchIsJudgedAndComparedWithAGoldenUnit() throws IOException {
    String[] files = new String[4];
    for (int k = 0; k < 4; k++) {
      files[k] = unit("unit-" + k + ".s3p", k == 3 ? 1.4 : 0.2 + 0.1 * k, 2).toString();
    }
    Run run =
        Run.of(
            "balun",
            "bench",
            files[1],
            files[2],
            files[3],
            "--over",
            "3.5MHz:30MHz",
            "--golden",
            files[0],
            "--format",
            "json");
    assertThat(run.code()).isEqualTo(1);
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    JsonNode result = new ObjectMapper().readTree(run.out());
    assertThat(result.at("/units/0/outcome").textValue()).isEqualTo("passed");
    assertThat(result.at("/units/2/outcome").textValue()).isEqualTo("failed");
    assertThat(result.at("/units/2/breaches/0/quantity").textValue()).isEqualTo("loss");
    JsonNode loss = result.at("/batch/rows/0");
    double mean = (0.3 + 0.4 + 1.4) / 3;
    double phase = -20 * Math.log10(Math.cos(Math.toRadians(1)));
    assertThat(loss.get("mean").doubleValue()).isCloseTo(mean + phase, within(1e-6));
    assertThat(loss.get("mean_less_golden").doubleValue()).isCloseTo(mean - 0.2, within(1e-6));
    Run text = Run.of("balun", "bench", files[1], files[3], "--over", "3.5MHz:30MHz");
    assertThat(text.code()).isEqualTo(1);
    assertThat(text.out()).contains("FAILED", "loss 1.4 dB at 10 MHz, 1 more", "1 of 2 failed");
    Run good = Run.of("balun", "bench", files[1], "--over", "3MHz:30MHz");
    assertThat(good.code()).isZero();
    assertThat(Run.of("balun", "bench", files[1], "--over", "1MHz:30MHz").out())
        .contains("measured from 3 to 30 MHz only");
    Run against =
        Run.of("balun", "bench", files[1], "--against", "examples/workshop/balun-4-to-1.yaml");
    assertThat(against.code()).isZero();
    assertThat(against.out()).contains("judged over 3.5-30 MHz");
  }

  /**
   * By hand: 150 ohm in series takes 10 log (200/50) = 6.02 dB; a pad of least loss 11.44 dB; (0.6
   * + 0.7 − 0.5)/2 = 0.4 dB; 1 ns at 10 MHz is 3.6 degrees; 100 ohm · (1/S21 − 1).
   */
  @Test
  void typedReadings() throws IOException {
    Path file =
        Files.writeString(
            directory.resolve("typed.yaml"),
            """
            format: spanwire-readings/1
            title: Unit 3
            series-resistor:
              readings: [{at: 7 MHz, loss: 6.3206 dB}, {at: 14 MHz, loss: 6.3206 dB, return-loss: 20 dB}]
            minimum-loss-pad:
              readings: [{at: 7 MHz, loss: 11.7395 dB}]
            back-to-back:
              readings: [{at: 7 MHz, loss: 0.8 dB}]
            three-units:
              readings: [{at: 7 MHz, ab: 0.6 dB, ac: 0.7 dB, bc: 0.5 dB}]
            balance:
              probes: {amplitude: 0.1 dB, phase: 1 deg}
              readings: [{at: 7 MHz, amplitude: 0.3 dB, phase: 185 deg}, {at: 10 MHz, amplitude: 0 dB, delay: 1 ns}]
            choke:
              fixture-capacitance: 0 pF
              readings: [{at: 7 MHz, through: -20 dB, phase: 0 deg}, {at: 8 MHz, reflection: -1 dB, phase: 0 deg}]
            """);
    JsonNode result = json("balun", "bench", file.toString(), "--format", "json");
    JsonNode units = result.get("units");
    assertThat(units).hasSize(7);
    assertThat(units.at("/0/readings/0/loss_db").doubleValue()).isCloseTo(0.3, within(1e-4));
    assertThat(units.at("/0/readings/1/loss_db").doubleValue())
        .isCloseTo(0.3 + 10 * Math.log10(0.99), within(1e-4));
    assertThat(units.at("/1/readings/0/loss_db").doubleValue()).isCloseTo(0.3, within(1e-3));
    assertThat(units.at("/2/readings/0/loss_db").doubleValue()).isCloseTo(0.4, within(1e-9));
    assertThat(units.at("/3/readings/0/loss_db").doubleValue()).isCloseTo(0.4, within(1e-9));
    assertThat(units.at("/4/readings/0/loss_db").doubleValue()).isCloseTo(0.2, within(1e-9));
    assertThat(units.at("/5/readings/0/loss_db").doubleValue()).isCloseTo(0.3, within(1e-9));
    assertThat(units.at("/6/readings/0/phase_imbalance_deg").doubleValue())
        .isCloseTo(4, within(1e-9));
    assertThat(units.at("/6/readings/0/amplitude_imbalance_db").doubleValue())
        .isCloseTo(0.2, within(1e-9));
    assertThat(units.at("/6/readings/1/phase_imbalance_deg").doubleValue())
        .isCloseTo(-4.6, within(1e-9));
    JsonNode choke = result.at("/chokes/0/readings");
    assertThat(choke.at("/0/impedance_ohm/re").doubleValue()).isCloseTo(900, within(1e-9));
    // An error of 0.005 in S21 moves it by 0.005 · 1000²/100.
    assertThat(choke.at("/0/uncertainty_ohm").doubleValue()).isCloseTo(50, within(1e-9));
    double gamma = Math.pow(10, -0.05);
    assertThat(choke.at("/1/impedance_ohm/re").doubleValue())
        .isCloseTo(50 * (1 + gamma) / (1 - gamma), within(1e-6));
    assertThat(result.at("/warnings/0/name").textValue()).isEqualTo("pair-hides-imbalance");
  }

  /**
   * Bridged by 2 pF in its fixture, a choke of 3 kohm reads less; without the fixture it is back.
   */
  @Test
  void aChokeWithoutItsFixture() throws IOException {
    TreeMap<Double, NPort> measured = new TreeMap<>();
    TreeMap<Double, NPort> empty = new TreeMap<>();
    for (double f : new double[] {7e6, 28e6}) {
      Complex bridge = new Complex(0, 2 * Math.PI * f * 2e-12);
      for (boolean full : new boolean[] {true, false}) {
        Complex y = full ? bridge.add(1 / 3000.0) : bridge;
        NPort series =
            NPort.ofAdmittance(
                new Complex[][] {{y, y.negate()}, {y.negate(), y}}, new Complex(50, 0));
        (full ? measured : empty).put(f, series);
      }
    }
    Path choke = directory.resolve("choke.s2p");
    Path fixture = directory.resolve("fixture.s2p");
    Touchstone.of(NetworkData.of(measured), OPTIONS).write(choke);
    Touchstone.of(NetworkData.of(empty), OPTIONS).write(fixture);
    String pointer = "/chokes/0/readings/1/impedance_ohm/";
    JsonNode bare = json("balun", "bench", choke.toString(), "--choke", "--format", "json");
    assertThat(bare.at(pointer + "re").doubleValue()).isLessThan(2000);
    JsonNode clean =
        json(
            "balun",
            "bench",
            choke.toString(),
            "--choke",
            "--fixture",
            fixture.toString(),
            "--format",
            "json");
    assertThat(clean.at(pointer + "re").doubleValue()).isCloseTo(3000, within(1e-3));
    assertThat(clean.at(pointer + "im").doubleValue()).isCloseTo(0, within(1e-3));
    // Nobody is to read a pass from what was not judged.
    Run judged = Run.of("balun", "bench", choke.toString(), "--choke", "--over", "3.5MHz:30MHz");
    assertThat(judged.code()).isEqualTo(2);
    assertThat(judged.err()).contains("--over: there is no transformer to judge").hasLineCount(1);
  }

  @Test
  void faultsOfTypedReadingsHaveTheirPlace() throws IOException {
    String head = "format: spanwire-readings/1\ntitle: Unit 3\n";
    for (String[] each :
        new String[][] {
          {"balance:\n  readings: [{at: 7 MHz, amplitude: 0 dB}]\n", ":4:14:", "phase, delay"},
          {"back-to-back: {readings: [{at: 7 MHz, loss: -1 dB}]}\n", ":3:45:", "at least 0"},
          {"choke: {readings: [{at: 7 MHz, through: -20 dB}]}\n", ":3:20:", "has no phase"},
          {
            "heat-run: {power: 9 W, allowed-rise: 9 K, readings: [{at: 0 s, celsius: 9}]}\n",
            ":3:11:",
            "at least four"
          },
          {
            "back-to-back: {readings: [{at: 7 MHz, loss: 1 dB}, {at: 6 MHz, loss: 1 dB}]}\n",
            ":3:15:",
            "sort them"
          },
          {"", ":1:1:", "no readings"},
        }) {
      Path file = Files.writeString(directory.resolve("typed.yaml"), head + each[0]);
      Run run = Run.of("balun", "bench", file.toString());
      assertThat(run.code()).as(each[2]).isEqualTo(2);
      assertThat(run.err()).hasLineCount(1).contains(each[1], each[2]);
    }
  }

  /** The example's figures by the closed forms that stand in the library's tests. */
  @Test
  void designOfAWinding() throws IOException {
    JsonNode design =
        json("balun", "design", "examples/workshop/balun-4-to-1.yaml", "--format", "json");
    assertThat(design.get("turns").intValue()).isEqualTo(8);
    assertThat(design.get("turns_found").booleanValue()).isTrue();
    JsonNode spot = design.at("/spots/0");
    double flux =
        Math.sqrt(2)
            * Math.sqrt(100 * 50 / 4.0)
            / (2 * Math.PI * 3.5e6 * 8 * 2 * 0.0127 * (0.061 - 0.0355) / 2);
    assertThat(spot.get("flux_density_t").doubleValue()).isCloseTo(flux, within(1e-9));
    JsonNode powers = spot.get("safe_power");
    assertThat(powers).hasSize(18);
    double rise = spot.get("temperature_rise_k").doubleValue();
    assertThat(powers.at("/5/mode").textValue()).isEqualTo("carrier");
    assertThat(powers.at("/5/peak_w").doubleValue()).isCloseTo(100 * 60 / rise, within(1e-6));
    Run text = Run.of("balun", "design", "examples/workshop/balun-4-to-1.yaml");
    assertThat(text.out().lines()).allMatch(line -> line.length() <= 118);
    assertThat(text.out()).contains("the fewest that reach 2000 ohm at 3.5 MHz", "can burn");
    assertThat(
            Run.of("balun", "design", "examples/workshop/balun-4-to-1.yaml", "--format", "csv")
                .out())
        .startsWith("name,frequency_hz,")
        .hasLineCount(1 + 8 * 18);
    assertThat(Run.of("balun", "bench", "examples/workshop/balun-readings.yaml").out().lines())
        .allMatch(line -> line.length() <= 118);
  }

  @Test
  void faultsOfAWindingHaveTheirPlace() throws IOException {
    String good = Files.readString(Path.of("examples", "workshop", "balun-4-to-1.yaml"));
    for (String[] each :
        new String[][] {
          {"lowest: 3.5 MHz", "lowest: 3.5 m", "expected a frequency"},
          {"ratio: 4", "ratio: 5", "square of a number of lines"},
          {"2 kohm", "2 Mohm", "more than 200 turns"},
          {"swr: [1, 2, 3]", "swr: [0.5]", "at least 1"},
          {"to: 30 MHz", "to: 3 MHz", "not above from"},
        }) {
      assertThat(good).contains(each[0]);
      Path file =
          Files.writeString(directory.resolve("balun.yaml"), good.replace(each[0], each[1]));
      Run run = Run.of("balun", "design", file.toString());
      assertThat(run.code()).as(each[2]).isEqualTo(2);
      assertThat(run.err()).hasLineCount(1).contains("balun.yaml:", each[2]);
    }
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
