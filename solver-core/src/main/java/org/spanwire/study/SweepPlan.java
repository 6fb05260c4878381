package org.spanwire.study;

import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.spanwire.Solver;

/**
 * How the rows of a sweep are solved. A plan may share work between the rows of a block in any way,
 * as long as every row equals what solving it alone gives within the tolerance, and the same row
 * always gives the same bits, whichever rows of its block are asked for. Used by several threads at
 * once.
 */
public interface SweepPlan {

  /**
   * Number of consecutive rows that are worth solving together; blocks start at multiples of it.
   */
  int blockRows(Sweep sweep);

  /** Number of times the equations of the antenna are solved for a range of rows, about. */
  long solves(Sweep sweep, RowRange rows);

  /** Rows of one block, in order. */
  List<SweepRow> solve(Sweep sweep, RowRange rows);

  /**
   * Rows of one block, in order.
   *
   * @param threads number of threads; the rows do not depend on it
   */
  default List<SweepRow> solve(Sweep sweep, RowRange rows, int threads) {
    return solve(sweep, rows);
  }

  /**
   * Hands on the rows of one block in order, each as soon as it and those before it are there.
   *
   * @param threads number of threads; the rows do not depend on it
   * @param sink takes the rows, on the calling thread
   */
  default void solve(Sweep sweep, RowRange rows, int threads, Consumer<SweepRow> sink) {
    solve(sweep, rows, threads).forEach(sink);
  }

  /**
   * Prepares a solve at the first place and the sweep's highest frequency, which is no cheaper than
   * most that the rows need: to be run and timed for an estimate of what a sweep will cost.
   *
   * @return tells whether there was a result
   */
  default BooleanSupplier sample(Sweep sweep) {
    int highest = 0;
    for (int i = 1; i < sweep.frequenciesHz().size(); i++) {
      highest = sweep.frequencyHz(i) > sweep.frequencyHz(highest) ? i : highest;
    }
    RowRange row = new RowRange(highest, highest + 1);
    return () -> solve(sweep, row).get(0).failure().isEmpty();
  }

  /** Solves every row on its own. */
  static SweepPlan rowByRow(Solver solver) {
    return new RowByRow(solver);
  }

  /**
   * Finds by itself what rows have in common. Places that differ in nothing but where the only feed
   * lies on its wire, how high everything hangs, and what follows the feedpoint share one mesh and,
   * at one height and frequency, one solution ({@link org.spanwire.MovingFeed}); where more than
   * the feedpoint's impedance is asked for, all frequencies and heights of one place share a mesh
   * ({@link org.spanwire.SolutionFamily}). What shares nothing, or misses the tolerance that way,
   * is solved on its own.
   */
  static SweepPlan shared(Sweep sweep, Solver solver) {
    return SharedPlan.of(sweep, solver);
  }
}
