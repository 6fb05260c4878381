package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.LawAntennas.FREQUENCY;
import static org.spanwire.LawAntennas.THIN;
import static org.spanwire.LawAntennas.difference;
import static org.spanwire.LawAntennas.p;

import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.result.Direction;

/** What circuit theory says about lumped parts at the ports of a structure. */
class FeedAndFittingLawsTest {

  private static final double OMEGA = 2 * Math.PI * FREQUENCY;

  private final Solver solver = new Solver();

  private static Antenna replaceSecondFeed(Antenna pair, LumpedImpedance impedance) {
    Feed second = pair.feeds().get(1);
    Antenna.Builder builder = Antenna.builder().feed(pair.feeds().get(0));
    pair.wires().forEach(builder::wire);
    return builder
        .fitting(
            new Fitting("fitting", second.wire(), second.at(), OptionalDouble.empty(), impedance))
        .build();
  }

  /** A lossless trap at resonance is an open port: Z = Z11 of the port matrix. */
  @Test
  void trapAtResonanceIsAnOpenPort() {
    Antenna pair = LawAntennas.pair(Complex.ONE, Complex.ZERO);
    Complex open = solver.solve(pair, FREQUENCY).portMatrix()[0][0];
    LumpedImpedance trap = LumpedImpedance.parallel(0, 300 / OMEGA, 1 / (300 * OMEGA));
    Complex trapped = solver.solve(replaceSecondFeed(pair, trap), FREQUENCY).impedance();
    assertThat(difference(trapped, open)).isLessThan(1e-9);
    LumpedImpedance off = LumpedImpedance.parallel(0, 300 / OMEGA, 1 / (200 * OMEGA));
    Complex other = solver.solve(replaceSecondFeed(pair, off), FREQUENCY).impedance();
    assertThat(difference(other, open)).isGreaterThan(1e-3);
  }

  /** A short dipole of reactance X resonates with a coil ωL = −X beside its feed. */
  @Test
  void coilBringsAShortDipoleToResonance() {
    Antenna bare =
        Antenna.builder()
            .wire("dipole", THIN, p(-0.05, 0, 0), p(0.05, 0, 0))
            .feed(Feed.of("feed", "dipole", Position.fraction(0.5)).withGap(4e-4))
            .build();
    double reactance = solver.solve(bare, FREQUENCY).impedance().getImaginary();
    assertThat(reactance).isLessThan(-1000);
    for (double part : new double[] {0.95, 1, 1.05}) {
      Fitting coil =
          new Fitting(
              "coil",
              "dipole",
              Position.distance(0.05 + 4e-4),
              OptionalDouble.of(4e-4),
              LumpedImpedance.series(0, -part * reactance / OMEGA, Double.POSITIVE_INFINITY));
      Complex z = solver.solve(bare.toBuilder().fitting(coil).build(), FREQUENCY).impedance();
      assertThat(z.getImaginary() / -reactance).isCloseTo(part - 1, within(0.02));
    }
  }

  /** V = Z I for every pair of voltages, and the driving-point impedance follows. */
  @Test
  void portMatrixTimesCurrentsIsTheVoltages() {
    for (Complex second :
        new Complex[] {new Complex(-1), new Complex(0, 1), new Complex(0.3, -2), Complex.ZERO}) {
      Complex[] v = {Complex.ONE, second};
      Solution solution = solver.solve(LawAntennas.pair(v[0], v[1]), FREQUENCY);
      Complex[][] z = solution.portMatrix();
      Complex[] i = {solution.feedCurrent("a"), solution.feedCurrent("b")};
      for (int m = 0; m < 2; m++) {
        Complex sum = z[m][0].multiply(i[0]).add(z[m][1].multiply(i[1]));
        assertThat(sum.subtract(v[m]).abs()).isLessThan(1e-9);
      }
      Complex driving = z[0][0].add(z[0][1].multiply(i[1]).divide(i[0]));
      assertThat(difference(solution.impedance("a"), driving)).isLessThan(1e-9);
    }
  }

  /** Z = 1/(1/Z + jωC): the capacitance lies across the terminals and takes no power. */
  @Test
  void capacitanceLiesAcrossTheTerminals() {
    Antenna dipole = LawAntennas.dipole(Conductor.bare(Materials.COPPER, 1e-4), 0.36);
    Solution bare = solver.solve(dipole, FREQUENCY);
    double farads = 2e-12;
    Antenna.Builder builder = Antenna.builder().feed(dipole.feeds().get(0).withCapacitance(farads));
    dipole.wires().forEach(builder::wire);
    Solution loaded = solver.solve(builder.build(), FREQUENCY);
    Complex expected =
        bare.impedance().reciprocal().add(new Complex(0, OMEGA * farads)).reciprocal();
    assertThat(difference(loaded.impedance(), expected)).isLessThan(1e-12);
    assertThat(difference(loaded.portMatrix()[0][0], expected)).isLessThan(1e-12);
    assertThat(difference(expected, bare.impedance())).isGreaterThan(0.05);
    assertThat(loaded.powerBalance().orElseThrow()).isCloseTo(1, within(1e-6));
    Direction broadside = new Direction(20, 80);
    assertThat(loaded.gainDbi(broadside)).isCloseTo(bare.gainDbi(broadside), within(1e-9));
  }

  /** With several feeds the capacitances add to the diagonal of the admittance matrix. */
  @Test
  void capacitancesAddToTheAdmittanceMatrix() {
    Antenna pair = LawAntennas.pair(Complex.ONE, new Complex(0, 1));
    Complex[][] z = solver.solve(pair, FREQUENCY).portMatrix();
    double[] farads = {1e-12, 5e-12};
    Antenna.Builder builder = Antenna.builder();
    pair.wires().forEach(builder::wire);
    for (int f = 0; f < 2; f++) {
      builder.feed(pair.feeds().get(f).withCapacitance(farads[f]));
    }
    Complex[][] loaded = solver.solve(builder.build(), FREQUENCY).portMatrix();
    for (int i = 0; i < 2; i++) {
      for (int j = 0; j < 2; j++) {
        Complex change = inverse(loaded)[i][j].subtract(inverse(z)[i][j]);
        Complex expected = new Complex(0, i == j ? OMEGA * farads[i] : 0);
        assertThat(change.subtract(expected).abs()).isLessThan(1e-11);
      }
    }
  }

  private static Complex[][] inverse(Complex[][] z) {
    Complex det = z[0][0].multiply(z[1][1]).subtract(z[0][1].multiply(z[1][0]));
    return new Complex[][] {
      {z[1][1].divide(det), z[0][1].negate().divide(det)},
      {z[1][0].negate().divide(det), z[0][0].divide(det)}
    };
  }

  @Test
  void refusesACapacitanceThatCannotBe() {
    Feed feed = Feed.of("feed", "dipole", Position.fraction(0.5));
    for (double farads : new double[] {-1e-12, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> feed.withCapacitance(farads))
          .withMessageContaining("feed 'feed': capacitance");
    }
  }

  @Test
  void changingOnePropertyOfAFeedKeepsTheOthers() {
    Feed feed =
        Feed.of("feed", "dipole", Position.fraction(0.5))
            .withCapacitance(1e-12)
            .withGap(0.01)
            .withVoltage(Complex.I);
    assertThat(feed.capacitance()).isEqualTo(1e-12);
    assertThat(feed.gap()).hasValue(0.01);
    assertThat(feed.voltage()).isEqualTo(Complex.I);
  }
}
