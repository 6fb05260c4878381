package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.CommonModeDrive;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneOptions;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.WoundTransformer;
import org.spanwire.circuit.WoundTransformer.Autotransformer;
import org.spanwire.circuit.WoundTransformer.EqualDelay;
import org.spanwire.design.DesignReader;
import org.spanwire.geometry.GeometryException;

/** The outside of a feed line as a conductor, held to circuit theory and to symmetry. */
class FeedLineTest {

  private static final double F = 7.1e6;

  @TempDir private Path directory;

  /** 20 m of wire at 10 m with a line of 15 m: down, then along the ground. */
  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit with its line
      conductors:
        strand: {material: copper, diameter: 2 mm}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 10], [10, 0, 10], [20, 0, 10]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm}
      ground: {soil: medium-dry}
      feed-chain:
        - transformer: {ratio: 4}
        - choke: {impedance: 3 kohm}
        - line:
            impedance: 50 ohm
            length: 15 m
            velocity-factor: 0.66
            loss: {frequency: 10 MHz, per: 100 m, value: 4.5 dB}
      feed-line: {conductor: jacket, path: [[7.2, 0, 1], [7.2, 6, 1]]}
      power: 100 W
      """;

  private static Operation solve(String design) {
    Solver solver = new Solver(SolverOptions.defaults().withTolerance(2e-3));
    return Installation.of(DesignReader.read(design, "kit.yaml")).solve(solver, F);
  }

  /** The error counts as driven in the circuit; here the halves of the gap alone err by more. */
  @Test
  void theMeshIsAsFineAsTheDrivenAntennaNeeds() {
    double hertz = 17.1e6;
    Installation installation = Installation.of(DesignReader.read(DESIGN, "kit.yaml"));
    Operation operation = installation.solve(new Solver(), hertz);
    assertThat(operation.relativeError()).isLessThan(1e-3);
    int halves = new Solver().solve(installation.modelled(), hertz).unknowns();
    assertThat(operation.solution().unknowns()).isLessThan(halves);
    Complex fine =
        installation.solve(new Solver().withTolerance(1e-4), hertz).feeds().get(0).impedance();
    assertThat(operation.feeds().get(0).impedance().subtract(fine).abs())
        .isLessThan(operation.relativeError() * fine.abs());
  }

  private static String with(String old, String fresh) {
    assertThat(DESIGN).contains(old);
    return DESIGN.replace(old, fresh);
  }

  /** From the design's feed voltage to the transmitter's power. */
  private static double scale(Operation operation) {
    return Math.sqrt(
        operation.chain().orElseThrow().deliveredPower()
            / operation.solution().powerBudget().accepted());
  }

  private static Ledger ledger(Operation operation) {
    return operation.ledger(operation.solution().powerBudgetWithSoil()).orElseThrow();
  }

  /**
   * The field solved with each choke gives the current that Thévenin's source, found with the place
   * of the choke open and shorted, drives through it; and all watts are found again.
   */
  @Test
  void chokesHoldBackTheCurrentThatTheSourcePredictsAndTheLedgerCloses() {
    List<Double> currents = new ArrayList<>();
    for (String choke :
        List.of("0 ohm", "300 ohm", "{r: 500 ohm, x: 800 ohm}", "3 kohm", "30 kohm")) {
      Operation operation = solve(with("3 kohm", choke));
      CommonMode mode = operation.commonMode().orElseThrow();
      CommonModeDrive drive = mode.drive();
      Complex predicted = drive.current(mode.chokeOhm());
      Ledger ledger = ledger(operation);
      assertThat(mode.current().subtract(predicted).abs()).isLessThan(1e-9 * predicted.abs());
      assertThat(mode.topWatts()).isCloseTo(drive.dissipation(mode.chokeOhm()), within(1e-9 * 100));
      // The field's own current just below the gap is that of the circuit.
      assertThat(operation.solution().current("feed-line", 0.02).multiply(scale(operation)).abs())
          .isCloseTo(mode.current().abs(), within(0.01 * mode.current().abs()));
      assertThat(mode.kirchhoff()).isLessThan(1e-9);
      assertThat(ledger.closure()).isCloseTo(0, within(1e-3));
      assertThat(ledger.watts("soil")).isPositive();
      currents.add(mode.current().abs());
    }
    assertThat(currents.get(0)).isGreaterThan(0.2);
    assertThat(currents.get(4)).isLessThan(0.05 * currents.get(0));
  }

  /** Fed in the middle, the line in the plane of symmetry: nothing drives its outside. */
  @Test
  void aSymmetricLineCarriesNoCommonModeCurrent() {
    Operation operation =
        solve(
            with("36 %", "50 %")
                .replace("3 kohm", "0 ohm")
                .replace("length: 15 m", "length: 9 m")
                .replace("[[7.2, 0, 1], [7.2, 6, 1]]", "[[10, 0, 1]]"));
    CommonMode mode = operation.commonMode().orElseThrow();
    double feed =
        Math.sqrt(
            operation.chain().orElseThrow().deliveredPower()
                / operation.feeds().get(0).impedance().getReal());
    assertThat(mode.current().abs()).isLessThan(1e-9 * feed);
    assertThat(mode.largest().current().abs()).isLessThan(1e-9 * feed);
  }

  /**
   * An unbalanced output ties the line to one arm or, with the other polarity, to the other. On a
   * feed off the centre they differ; on one in the middle the mirror image does not.
   */
  @Test
  void polarityChoosesTheArmThatTheLineTiesTo() {
    String unbalanced = with("{ratio: 4}", "{ratio: 4, output: unbalanced}");
    double first = solve(unbalanced).commonMode().orElseThrow().topWatts();
    double last = solve(reversed(unbalanced)).commonMode().orElseThrow().topWatts();
    assertThat(Math.abs(first - last)).isGreaterThan(0.05 * first);
    String middle =
        unbalanced
            .replace("36 %", "50 %")
            .replace("[7.2, 0, 1], [7.2, 6, 1]", "[10, 0, 1], [10, 6, 1]");
    double one = solve(middle).commonMode().orElseThrow().topWatts();
    double other = solve(reversed(middle)).commonMode().orElseThrow().topWatts();
    assertThat(one).isPositive().isCloseTo(other, within(1e-6 * one));
    Operation balanced = solve(DESIGN);
    assertThat(solve(reversed(DESIGN)).commonMode().orElseThrow().topWatts())
        .isCloseTo(balanced.commonMode().orElseThrow().topWatts(), within(1e-9));
  }

  private static String reversed(String design) {
    return design.replace("feed-line: {", "feed-line: {polarity: last-point, ");
  }

  /**
   * A choke half way down acts as one at the top does on what lies below it: less current there.
   */
  @Test
  void chokesAlongTheLineHaveTheirHeat() {
    Operation operation =
        solve(with("feed-line: {", "feed-line: {chokes: [{at: 9 m, impedance: 2 kohm}], "));
    CommonMode mode = operation.commonMode().orElseThrow();
    assertThat(mode.chokes()).hasSize(2);
    CommonMode.ChokeHeat along = mode.chokes().get(1);
    assertThat(along.watts())
        .isPositive()
        .isCloseTo(along.voltage() * along.voltage() / 2000, within(1e-9));
    Ledger ledger = ledger(operation);
    assertThat(ledger.watts("fittings")).isCloseTo(along.watts(), within(1e-6));
    assertThat(ledger.closure()).isCloseTo(0, within(1e-3));
  }

  @Test
  void aRouteOfAnotherLengthIsNamed() {
    Installation fits = Installation.of(DesignReader.read(DESIGN, "kit.yaml"));
    assertThat(fits.warnings()).isEmpty();
    Installation other =
        Installation.of(DesignReader.read(with("length: 15 m", "length: 16 m"), "kit.yaml"));
    assertThat(other.warnings())
        .singleElement()
        .satisfies(w -> assertThat(w.message()).contains("16.00 m", "15.00 m"));
  }

  @Test
  void aLineThatLeadsNowhereIsRefused() {
    assertThatThrownBy(() -> solve(with("at: 36 %", "at: 5 mm")))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("an arm on each side of the feed");
    String two = with("main: {", "other: {wire: radiator, at: 80 %}\n  main: {");
    assertThatThrownBy(() -> solve(two))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("needs a single feed")
        .hasMessageContaining("has 2");
  }

  private String measured(WoundTransformer transformer, String name) throws IOException {
    NetworkData data = NetworkData.of(new TreeMap<>(Map.of(F, transformer.at(F).renormalized(50))));
    Path file = directory.resolve(name);
    Touchstone.of(
            data,
            TouchstoneOptions.version1(TouchstoneOptions.Unit.HZ, TouchstoneOptions.Format.RI))
        .write(file);
    return with("{ratio: 4}", "{ratio: 4, touchstone: \"" + file + "\"}");
  }

  /** Ruthroff's balanced form with a short line on an ideal core is the ideal balanced tie. */
  @Test
  void aMeasuredTransformerWithoutFaultsIsTheIdealOne() throws IOException {
    TransmissionLine winding = new TransmissionLine(100, 1e-3, 1, LineAttenuation.NONE);
    WoundTransformer perfect =
        new WoundTransformer(new Autotransformer(true), winding, f -> Complex.INF, 0);
    Operation file = solve(measured(perfect, "perfect.s3p"));
    Operation ideal = solve(DESIGN);
    double expected = ideal.commonMode().orElseThrow().current().abs();
    assertThat(file.commonMode().orElseThrow().current().abs())
        .isCloseTo(expected, within(2e-3 * expected));
    Complex z = ideal.feeds().get(0).impedance();
    assertThat(file.feeds().get(0).at(Plane.TRANSMITTER).swr())
        .isCloseTo(ideal.feeds().get(0).at(Plane.TRANSMITTER).swr(), within(5e-3));
    assertThat(file.feeds().get(0).impedance().subtract(z).abs()).isLessThan(5e-3 * z.abs());
  }

  /** An equal-delay transformer with a lossy core: its heat is found, and the ledger closes. */
  @Test
  void aMeasuredTransformersHeatIsPartOfTheLedger() throws IOException {
    TransmissionLine winding =
        new TransmissionLine(100, 0.4, 0.8, LineAttenuation.ofConductor(10e6, 0.1));
    WoundTransformer guanella =
        new WoundTransformer(new EqualDelay(2), winding, f -> new Complex(1500, 800), 50e-9);
    String design = measured(guanella, "guanella.s3p");
    Operation operation = solve(design);
    Ledger ledger = ledger(operation);
    assertThat(ledger.watts("transformer")).isGreaterThan(0.5);
    assertThat(ledger.closure()).isCloseTo(0, within(1e-3));
    assertThat(operation.chain().orElseThrow().closure()).isCloseTo(0, within(1e-9));
    Operation floating = solve(design.replaceFirst("feed-line: .*\n", ""));
    assertThat(floating.commonMode()).isEmpty();
    assertThat(ledger(floating).closure()).isCloseTo(0, within(1e-3));
    assertThat(ledger(floating).watts("transformer")).isPositive();
  }
}
