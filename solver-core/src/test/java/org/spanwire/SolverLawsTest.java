package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanwire.LawAntennas.FREQUENCY;
import static org.spanwire.LawAntennas.THIN;
import static org.spanwire.LawAntennas.difference;
import static org.spanwire.LawAntennas.impedance;
import static org.spanwire.LawAntennas.moved;
import static org.spanwire.LawAntennas.p;
import static org.spanwire.LawAntennas.rewired;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;

/** Laws of Maxwell's equations that hold whatever the numbers are. */
class SolverLawsTest {

  private static final double TOLERANCE = 1e-3;

  static Stream<Antenna> structures() {
    return Stream.of(
        LawAntennas.dipole(THIN, 0.3),
        LawAntennas.vee(THIN),
        LawAntennas.loop(THIN),
        LawAntennas.star(THIN),
        LawAntennas.foldedDipole(THIN),
        LawAntennas.yagi(THIN));
  }

  @ParameterizedTest
  @MethodSource("structures")
  void translationChangesNothing(Antenna antenna) {
    Antenna shifted = moved(antenna, q -> p(q.x() + 3.1, q.y() - 7.3, q.z() + 11.9));
    assertThat(difference(impedance(shifted, TOLERANCE), impedance(antenna, TOLERANCE)))
        .isLessThan(1e-9);
  }

  @ParameterizedTest
  @MethodSource("structures")
  void rotationChangesNothing(Antenna antenna) {
    Antenna turned = moved(antenna, SolverLawsTest::turn);
    assertThat(difference(impedance(turned, TOLERANCE), impedance(antenna, TOLERANCE)))
        .isLessThan(1e-9);
  }

  /** By 0.7 rad about z, then by −1.1 rad about x. */
  private static Point turn(Point q) {
    double x = Math.cos(0.7) * q.x() - Math.sin(0.7) * q.y();
    double y = Math.sin(0.7) * q.x() + Math.cos(0.7) * q.y();
    return p(
        x, Math.cos(1.1) * y + Math.sin(1.1) * q.z(), -Math.sin(1.1) * y + Math.cos(1.1) * q.z());
  }

  @ParameterizedTest
  @MethodSource("structures")
  void frequencyTimesSizeIsAllThatCounts(Antenna antenna) {
    double s = 43.7;
    List<Wire> scaled =
        antenna.wires().stream()
            .map(
                w ->
                    new Wire(
                        w.name(),
                        Conductor.perfect(w.conductor().radius() * s),
                        w.path().stream().map(q -> p(s * q.x(), s * q.y(), s * q.z())).toList()))
            .toList();
    Complex z = new Solver().solve(rewired(antenna, scaled), FREQUENCY / s).impedance();
    assertThat(difference(z, new Solver().solve(antenna, FREQUENCY).impedance())).isLessThan(1e-9);
  }

  /** Short-circuit transfer admittances measured each on its own, one feed driven at a time. */
  @Test
  void portsAreReciprocal() {
    Solver solver = new Solver();
    Solution a = solver.solve(LawAntennas.pair(Complex.ONE, Complex.ZERO), FREQUENCY);
    Solution b = solver.solve(LawAntennas.pair(Complex.ZERO, Complex.ONE), FREQUENCY);
    Complex forth = a.feedCurrent("b");
    Complex back = b.feedCurrent("a");
    assertThat(difference(forth, back)).isLessThan(1e-9);
    assertThat(meanOverGap(a, "short", 0.6))
        .satisfies(i -> assertThat(difference(i, forth)).isLessThan(1e-9));
    assertThat(meanOverGap(b, "long", 0.3))
        .satisfies(i -> assertThat(difference(i, back)).isLessThan(1e-9));
    Complex[][] z = a.portMatrix();
    Complex determinant =
        a.feedCurrent("a").multiply(b.feedCurrent("b")).subtract(forth.multiply(back));
    assertThat(difference(z[0][1], forth.negate().divide(determinant))).isLessThan(1e-9);
    assertThat(z[0][1]).isEqualTo(z[1][0]);
  }

  /** The current along the wire, averaged over a feed's gap by Simpson's rule on the solution. */
  private static Complex meanOverGap(Solution solution, String wire, double fraction) {
    double length = LawAntennas.pair(Complex.ONE, Complex.ONE).wire(wire).orElseThrow().length();
    double gap = solution.gap(wire.equals("long") ? "a" : "b");
    Complex sum = Complex.ZERO;
    int n = 2000;
    for (int i = 0; i <= n; i++) {
      double at = fraction * length + gap * ((double) i / n - 0.5);
      double weight = i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2;
      sum = sum.add(solution.current(wire, at).multiply(weight));
    }
    return sum.divide(3.0 * n);
  }

  @Test
  void currentsAddUp() {
    Complex va = new Complex(2, -1);
    Complex vb = new Complex(-0.5, 3);
    Solver solver = new Solver();
    Solution a = solver.solve(LawAntennas.pair(Complex.ONE, Complex.ZERO), FREQUENCY);
    Solution b = solver.solve(LawAntennas.pair(Complex.ZERO, Complex.ONE), FREQUENCY);
    Solution both = solver.solve(LawAntennas.pair(va, vb), FREQUENCY);
    Complex expected = a.current("long", 0.5).multiply(va).add(b.current("long", 0.5).multiply(vb));
    assertThat(difference(both.current("long", 0.5), expected)).isLessThan(1e-10);
  }

  /** A feed at 36 % is the mirror image of one at 64 %. */
  @Test
  void offsetFeedHasAMirrorImage() {
    assertThat(
            difference(
                impedance(LawAntennas.dipole(THIN, 0.36), TOLERANCE),
                impedance(LawAntennas.dipole(THIN, 0.64), TOLERANCE)))
        .isLessThan(1e-9);
  }

  @Test
  void runningAWireTheOtherWayChangesNothing() {
    Antenna antenna = LawAntennas.star(THIN);
    List<Wire> wires = new ArrayList<>();
    for (Wire wire : antenna.wires()) {
      List<Point> path = new ArrayList<>(wire.path());
      java.util.Collections.reverse(path);
      wires.add(new Wire(wire.name(), wire.conductor(), path));
    }
    Antenna.Builder builder = Antenna.builder();
    wires.forEach(builder::wire);
    builder.feed("feed", "one", Position.fraction(0.7));
    assertThat(difference(impedance(builder.build(), TOLERANCE), impedance(antenna, TOLERANCE)))
        .isLessThan(1e-9);
  }

  @ParameterizedTest
  @MethodSource("structures")
  void orderOfWiresChangesNothing(Antenna antenna) {
    Antenna other = rewired(antenna, LawAntennas.reversed(antenna.wires()));
    assertThat(difference(impedance(other, TOLERANCE), impedance(antenna, TOLERANCE)))
        .isLessThan(1e-9);
  }

  /** A wire split in two at a path point is the same conductor. */
  @Test
  void splittingAWireAtAPathPointChangesNothing() {
    Antenna whole =
        Antenna.builder()
            .wire("a", THIN, p(-0.24, 0, 0), p(0.1, 0, 0), p(0.2, 0, 0.1))
            .feed("feed", "a", Position.distance(0.2))
            .build();
    Antenna split =
        Antenna.builder()
            .wire("a", THIN, p(-0.24, 0, 0), p(0.1, 0, 0))
            .wire("b", THIN, p(0.1, 0, 0), p(0.2, 0, 0.1))
            .feed("feed", "a", Position.distance(0.2))
            .build();
    assertThat(difference(impedance(split, TOLERANCE), impedance(whole, TOLERANCE)))
        .isLessThan(1e-9);
  }

  /** A path point on a straight wire, or a bend of 0.1°, hardly shows. */
  @Test
  void straightPathPointIsInvisible() {
    double tight = 1e-5;
    Complex straight = impedance(LawAntennas.dipole(THIN, 0.3), tight);
    for (double off : new double[] {0, 0.24 * Math.tan(Math.toRadians(0.05))}) {
      Antenna bent =
          Antenna.builder()
              .wire("dipole", THIN, p(-0.24, 0, 0), p(0, 0, off), p(0.24, 0, 0))
              .feed("feed", "dipole", Position.fraction(0.3))
              .build();
      assertThat(difference(impedance(bent, tight), straight)).as("off %g", off).isLessThan(2e-5);
    }
  }

  /** A feed turned round drives the same current the other way. */
  @Test
  void voltageScalesCurrent() {
    Antenna antenna = LawAntennas.vee(THIN);
    Feed feed = antenna.feeds().get(0);
    Antenna turned =
        Antenna.builder()
            .wire(antenna.wires().get(0))
            .feed(feed.withVoltage(new Complex(0, -10)))
            .build();
    Solver solver = new Solver();
    Complex one = solver.solve(antenna, FREQUENCY).feedCurrent("feed");
    Complex ten = solver.solve(turned, FREQUENCY).feedCurrent("feed");
    assertThat(difference(ten, one.multiply(new Complex(0, -10)))).isLessThan(1e-12);
  }

  @Test
  void threadsDoNotChangeABit() throws Exception {
    Solver solver = new Solver();
    List<Antenna> antennas = structures().toList();
    List<Complex> alone =
        antennas.stream().map(a -> solver.solve(a, FREQUENCY).impedance()).toList();
    ExecutorService pool = Executors.newFixedThreadPool(4);
    try {
      List<Callable<Complex>> tasks = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        antennas.forEach(a -> tasks.add(() -> solver.solve(a, FREQUENCY).impedance()));
      }
      List<Future<Complex>> results = pool.invokeAll(tasks);
      for (int i = 0; i < results.size(); i++) {
        assertThat(results.get(i).get()).isEqualTo(alone.get(i % alone.size()));
      }
    } finally {
      pool.shutdown();
    }
  }
}
