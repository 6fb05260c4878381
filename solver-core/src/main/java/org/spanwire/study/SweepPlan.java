package org.spanwire.study;

import java.util.List;
import org.spanwire.Solver;

/**
 * How the rows of a sweep are solved. A plan may share work between the rows of a block in any way,
 * as long as every row equals what solving it alone gives within the tolerance, and the same block
 * always gives the same bits. Used by several threads at once.
 */
public interface SweepPlan {

  /**
   * Number of consecutive rows that are worth solving together; blocks start at multiples of it.
   */
  int blockRows(Sweep sweep);

  /** Number of times the antenna is solved for a range of rows. */
  long solves(Sweep sweep, RowRange rows);

  /** The rows of a block, in order. */
  List<SweepRow> solve(Sweep sweep, RowRange rows);

  /** Solves every row on its own. */
  static SweepPlan rowByRow(Solver solver) {
    return new RowByRow(solver);
  }
}
