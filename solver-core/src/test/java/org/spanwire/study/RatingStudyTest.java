package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;

/** What the parts bear, by laws that hold whatever the design is. */
class RatingStudyTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit with a trap
      parameters:
        sent: 100 W
      conductors:
        strand: {material: copper, diameter: 2 mm}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 9], [20.2, 0, 9]]}
      feeds:
        main: {wire: radiator, at: 34 %, gap: 40 mm}
      fittings:
        coil: {wire: radiator, at: 15 m, gap: 20 mm, series: {r: 5 ohm, l: 2 uH}}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 4}
        - choke: {impedance: 3 kohm}
        - line: {impedance: 50 ohm, length: 10 m, velocity-factor: 0.66, loss: {frequency: 10 MHz, per: 100 m, value: 4.5 dB}}
      feed-line: {conductor: jacket, path: [[6.87, 0, 1], [3, 0, 1]]}
      power: sent
      ratings:
        choke: {heat: 4 W, voltage: 900 V}
        line: {heat: 50 W}
        ends: {voltage: 1.5 kV}
        fittings: {coil: {heat: 3 W}}
      bands: {plan: iaru-region-1, use: [30 m]}
      """;

  private static Design design;
  private static BandRating rating;

  @BeforeAll
  static void rateOnce() {
    design = DesignReader.read(DESIGN, "kit.yaml");
    rating = rate(design);
  }

  private static BandRating rate(Design design) {
    return new RatingStudy(design).run(new Solver(), design.bands(), 2).get(0);
  }

  private static BandRating.Load load(BandRating rating, String part) {
    return rating.loads().stream()
        .filter(load -> load.part().equals(part))
        .findFirst()
        .orElseThrow();
  }

  private static BandRating.Limit limit(String part, BandRating.Cause cause) {
    return rating.limits().stream()
        .filter(limit -> limit.part().equals(part) && limit.cause() == cause)
        .findFirst()
        .orElseThrow();
  }

  /** With the power that a limit names, the part bears just what it is rated for. */
  @Test
  void atItsLimitAPartBearsWhatItIsRatedFor() {
    BandRating.Limit heat = limit("choke", BandRating.Cause.HEAT);
    BandRating atHeat = rate(design.with("sent", heat.watts() + " W"));
    assertThat(load(atHeat, "choke").watts().orElseThrow()).isCloseTo(4, within(1e-6));
    BandRating.Limit voltage = limit("ends", BandRating.Cause.VOLTAGE);
    BandRating atVoltage = rate(design.with("sent", voltage.watts() + " W"));
    assertThat(load(atVoltage, "ends").peakVolts().orElseThrow()).isCloseTo(1500, within(1e-3));
    BandRating.Limit coil = limit("coil", BandRating.Cause.HEAT);
    BandRating atCoil = rate(design.with("sent", coil.watts() + " W"));
    assertThat(load(atCoil, "coil").watts().orElseThrow()).isCloseTo(3, within(1e-6));
  }

  /** Heat of the line, the choke and the coil is less than the power, and adds up with the rest. */
  @Test
  void chokeHeatIsThatOfTheLedgerWithAllThePower() {
    Installation installation = Installation.of(design);
    Operation operation = installation.solve(new Solver(), design.bands().get(0).middleHz());
    Ledger ledger = operation.ledger(operation.solution().powerBudgetWithSoil()).orElseThrow();
    double tuned = 100 / (100 - ledger.watts(Ledger.MISMATCH));
    assertThat(load(rating, "choke").watts().orElseThrow())
        .isCloseTo(tuned * ledger.watts(Ledger.CHOKE), within(0.02 * 100));
    assertThat(load(rating, "line").watts().orElseThrow())
        .isCloseTo(tuned * ledger.watts("line"), within(0.02 * 100));
    assertThat(installation.tunedWatts(operation))
        .isCloseTo(100 - tuned * ledger.watts("line"), within(0.01));
  }

  /** Voltage and resistance make the choke's heat: V²/R. */
  @Test
  void voltageAcrossTheChokeMakesItsHeat() {
    BandRating.Load choke = load(rating, "choke");
    double volts = choke.volts().orElseThrow();
    assertThat(choke.watts().orElseThrow()).isCloseTo(volts * volts / 3000, within(1e-6));
  }

  @Test
  void pausesHelpAgainstHeatOnly() {
    BandRating.Limit heat = limit("choke", BandRating.Cause.HEAT);
    assertThat(heat.envelopeWatts(OperatingMode.SSB)).isCloseTo(5 * heat.watts(), within(1e-9));
    BandRating.Limit voltage = limit("choke", BandRating.Cause.VOLTAGE);
    assertThat(voltage.envelopeWatts(OperatingMode.SSB)).isEqualTo(voltage.watts());
    List<Double> all =
        rating.limits().stream().map(l -> l.envelopeWatts(OperatingMode.CW)).sorted().toList();
    assertThat(rating.lowest(OperatingMode.CW).envelopeWatts(OperatingMode.CW))
        .isEqualTo(all.get(0));
  }

  @Test
  void partsWithoutARatingSetNoLimit() {
    assertThat(rating.limits()).noneMatch(limit -> limit.part().equals("feedpoint"));
    assertThat(rating.limits()).anyMatch(limit -> limit.part().startsWith("wire radiator"));
  }
}
