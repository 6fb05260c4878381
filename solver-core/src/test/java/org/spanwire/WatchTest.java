package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.spanwire.design.Band;
import org.spanwire.design.DesignReader;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Materials;
import org.spanwire.study.BandStudy;
import org.spanwire.study.Installation;

/** What programs that embed the solver need: calling off, progress, bounded memory, threads. */
class WatchTest {

  private static final Antenna DIPOLE =
      Antenna.builder()
          .wire(
              "radiator",
              Conductor.bare(Materials.COPPER, 1e-3),
              new Point(0, 0, 9),
              new Point(20, 0, 9))
          .feed("main", "radiator", Position.fraction(0.36))
          .ground(FreeSpace.INSTANCE)
          .build();

  private static final Installation KIT =
      Installation.of(
          DesignReader.read(
              """
              format: spanwire-design/1
              title: Hut dipole
              conductors: {strand: {material: copper, diameter: 2 mm}}
              wires: {radiator: {conductor: strand, path: [[0, 0, 9], [20, 0, 9]]}}
              feeds: {main: {wire: radiator, at: 36 %}}
              ground: free-space
              """,
              "dipole.yaml"));

  private static final List<Band> BANDS =
      List.of(new Band("40 m", 7e6, 7.2e6), new Band("20 m", 14e6, 14.35e6));

  @Test
  void tellsOfEverySolution() {
    ConcurrentLinkedQueue<Double> seen = new ConcurrentLinkedQueue<>();
    Watch watch =
        new Watch() {
          @Override
          public void solved(double frequencyHz, int unknowns) {
            assertThat(unknowns).isPositive();
            seen.add(frequencyHz);
          }
        };
    Solver solver = new Solver(SolverOptions.defaults(), watch);
    solver.withTolerance(0.01).solve(DIPOLE, 7e6);
    assertThat(seen).containsExactly(7e6);
    new BandStudy(KIT, List.of(), 5).run(solver, BANDS, 2);
    assertThat(seen).hasSizeGreaterThan(11).contains(7.2e6, 14.35e6);
  }

  @Test
  void callsOffSolutionsAndStudies() {
    AtomicInteger asked = new AtomicInteger();
    Watch impatient =
        new Watch() {
          @Override
          public boolean cancelled() {
            return asked.incrementAndGet() > 3;
          }
        };
    Solver solver = new Solver(SolverOptions.defaults(), impatient);
    assertThatThrownBy(() -> new BandStudy(KIT, List.of(), 11).run(solver, BANDS, 2))
        .isInstanceOf(CancellationException.class);
    assertThat(asked.get()).isLessThan(3 + 22);
    assertThatThrownBy(() -> solver.solve(DIPOLE, 7e6)).isInstanceOf(CancellationException.class);
  }

  /** As a user interface does it: the work elsewhere, the button here. */
  @Test
  void servesAFuture() throws Exception {
    AtomicBoolean stop = new AtomicBoolean();
    Watch button =
        new Watch() {
          @Override
          public boolean cancelled() {
            return stop.get();
          }
        };
    Solver solver = new Solver(SolverOptions.defaults(), button);
    assertThat(CompletableFuture.supplyAsync(() -> solver.solve(DIPOLE, 7e6)).get().impedance())
        .isEqualTo(new Solver().solve(DIPOLE, 7e6).impedance());
    stop.set(true);
    CompletableFuture<Solution> late =
        CompletableFuture.supplyAsync(() -> solver.solve(DIPOLE, 7e6));
    assertThatThrownBy(late::join).hasCauseInstanceOf(CancellationException.class);
  }

  @Test
  void anInterruptCallsOffAStudy() {
    Thread.currentThread().interrupt();
    assertThatThrownBy(() -> new BandStudy(KIT, List.of(), 11).run(new Solver(), BANDS, 1))
        .isInstanceOf(CancellationException.class)
        .hasMessageContaining("interrupted");
    assertThat(Thread.interrupted()).isTrue();
  }

  @Test
  void anInterruptCallsOffAFamilyOnSeveralThreads() {
    Thread.currentThread().interrupt();
    assertThatThrownBy(
            () -> new Solver().family(DIPOLE, new double[] {7e6, 7.1e6, 7.2e6}, new double[1], 2))
        .isInstanceOf(CancellationException.class)
        .hasMessageContaining("interrupted");
    assertThat(Thread.interrupted()).isTrue();
  }

  @Test
  void aFamilyNeedsAtLeastOneFrequencyLiftAndThread() {
    Solver solver = new Solver();
    double[] one = {7e6};
    double[] none = {};
    assertThatThrownBy(() -> solver.solveAll(DIPOLE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0 frequencies");
    assertThatThrownBy(() -> solver.family(DIPOLE, one, none, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0 lifts");
    assertThatThrownBy(() -> solver.family(DIPOLE, one, new double[1], 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0 threads");
  }

  @Test
  void refusesWhatDoesNotFitBeforeItIsAllocated() {
    Solver small = new Solver(SolverOptions.defaults().withMemoryBytes(10_000));
    MemoryException refusal =
        catchThrowableOfType(MemoryException.class, () -> small.solve(DIPOLE, 7e6));
    int unknowns = new Solver().solve(DIPOLE, 7e6).unknowns();
    assertThat(refusal.unknowns()).isBetween(unknowns / 2, 2 * unknowns);
    assertThat(refusal.neededBytes()).isGreaterThan(10_000);
    assertThat(refusal.allowedBytes()).isEqualTo(10_000);
    assertThat(refusal)
        .hasMessageContaining("give Java more memory")
        .hasMessageContaining("limit 1 MB");
    assertThatThrownBy(() -> SolverOptions.defaults().withMemoryBytes(0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void saysHowFarItGot() {
    ToleranceException fault = new ToleranceException("message", 7e6, 1e-6, 1e-5);
    assertThat(fault.frequencyHz()).isEqualTo(7e6);
    assertThat(fault.wanted()).isEqualTo(1e-6);
    assertThat(fault.reached()).isEqualTo(1e-5);
  }
}
