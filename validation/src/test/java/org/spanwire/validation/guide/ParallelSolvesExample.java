package org.spanwire.validation.guide;

import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.Watch;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Materials;

public final class ParallelSolvesExample {

  /** Counts solutions, and stops them all when somebody says so. */
  static final class Desk implements Watch {
    final AtomicInteger done = new AtomicInteger();
    final AtomicBoolean stop = new AtomicBoolean();

    @Override
    public boolean cancelled() {
      return stop.get();
    }

    @Override
    public void solved(double frequencyHz, int unknowns) {
      done.incrementAndGet();
    }
  }

  public static void main(String[] args) {
    Antenna wire =
        Antenna.builder()
            .wire(
                "wire",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(0, 0, 0),
                new Point(41, 0, 0))
            .feed("main", "wire", Position.fraction(0.3))
            .ground(FreeSpace.INSTANCE)
            .build();
    Desk desk = new Desk();
    // One solver serves all threads; the results do not depend on how many there are.
    Solver solver = new Solver(SolverOptions.defaults().withTolerance(0.01), desk);
    List<Complex> impedances =
        IntStream.rangeClosed(35, 300)
            .parallel()
            .mapToObj(i -> solver.solve(wire, i * 0.1e6).impedance())
            .toList();
    double highest = impedances.stream().mapToDouble(Complex::getReal).max().orElseThrow();
    System.out.println(desk.done + " solutions");
    System.out.printf("largest resistance about %.0f00 ohm%n", highest / 100);
  }
}
