package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.circuit.CircuitException;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.geometry.GeometryException;

/**
 * Shares solutions between the rows of a block.
 *
 * @param solver solves
 * @param blockRows rows of a block
 * @param rowsPerSolve rows that one solution serves
 */
record SharedPlan(Solver solver, int blockRows, int rowsPerSolve) implements SweepPlan {

  /** Rows of a block at most: they are kept until the last of them is done. */
  private static final int MOST_ROWS = 1 << 19;

  /** What varying a parameter does to the antenna. */
  private enum Effect {
    /** Nothing, or the feed moves: no further solution. */
    SHARED,
    /** All wires move up and down together: the same mesh. */
    LIFTED,
    /** Another structure. */
    REBUILT
  }

  static SharedPlan of(Sweep sweep, Solver solver) {
    int frequencies = sweep.frequenciesHz().size();
    if (!(sweep.space() instanceof ParameterGrid grid)) {
      return new SharedPlan(solver, frequencies, 1);
    }
    List<Effect> effects =
        IntStream.range(0, grid.axes().size()).mapToObj(axis -> effect(sweep, grid, axis)).toList();
    int first = 0;
    while (first < effects.size()
        && (effects.get(first) == Effect.REBUILT || rows(grid, first) > MOST_ROWS / frequencies)) {
      first++;
    }
    int perSolve = 1;
    for (int axis = first; axis < effects.size(); axis++) {
      if (effects.get(axis) == Effect.SHARED) {
        perSolve *= grid.axes().get(axis).values().size();
      }
    }
    return new SharedPlan(solver, (int) rows(grid, first) * frequencies, perSolve);
  }

  /** Places from an axis on. */
  private static long rows(ParameterGrid grid, int first) {
    long rows = 1;
    for (ParameterGrid.Axis axis : grid.axes().subList(first, grid.axes().size())) {
      rows = Math.min(Integer.MAX_VALUE, rows * axis.values().size());
    }
    return rows;
  }

  /**
   * Compares the first place with those where one parameter has its last or a middle value. Places
   * that cannot be read tell nothing.
   */
  private static Effect effect(Sweep sweep, ParameterGrid grid, int axis) {
    long stride = rows(grid, axis + 1);
    int count = grid.axes().get(axis).values().size();
    Optional<SweepPlace> base = place(sweep, 0);
    Effect effect = base.isPresent() ? Effect.SHARED : Effect.REBUILT;
    for (int index : new int[] {count - 1, count / 2}) {
      Optional<SweepPlace> other = place(sweep, index * stride);
      if (base.isPresent() && other.isPresent()) {
        effect = later(effect, effect(base.get(), other.get(), movesFeed(sweep)));
      }
    }
    return effect;
  }

  private static Effect later(Effect a, Effect b) {
    return a.compareTo(b) > 0 ? a : b;
  }

  private static Effect effect(SweepPlace base, SweepPlace other, boolean movesFeed) {
    if (!other.structure().equals(base.structure())
        || other.along() != base.along() && !movesFeed) {
      return Effect.REBUILT;
    }
    return other.height() == base.height() ? Effect.SHARED : Effect.LIFTED;
  }

  /** The antenna that is solved: with a feed line, that of the installation. */
  static Antenna modelled(Design design) {
    return design.feedLine().isPresent() ? Installation.of(design).modelled() : design.antenna();
  }

  /** Whether the feed may move without another solution: a feed line would move with it. */
  static boolean movesFeed(Sweep sweep) {
    return !sweep.request().needsField()
        && sweep.base().antenna().feeds().size() == 1
        && sweep.base().feedLine().isEmpty();
  }

  private static Optional<SweepPlace> place(Sweep sweep, long place) {
    try {
      Design design = sweep.design(place * sweep.frequenciesHz().size());
      return Optional.of(SweepPlace.of(modelled(design), sweep.frequenciesHz()));
    } catch (CircuitException | DesignException | GeometryException e) {
      return Optional.empty();
    }
  }

  @Override
  public int blockRows(Sweep sweep) {
    return blockRows;
  }

  @Override
  public long solves(Sweep sweep, RowRange rows) {
    return (rows.count() + rowsPerSolve - 1) / rowsPerSolve;
  }

  @Override
  public BooleanSupplier sample(Sweep sweep) {
    return new RowByRow(solver).sample(sweep);
  }

  @Override
  public List<SweepRow> solve(Sweep sweep, RowRange rows) {
    return solve(sweep, rows, 1);
  }

  @Override
  public List<SweepRow> solve(Sweep sweep, RowRange rows, int threads) {
    List<SweepRow> solved = new ArrayList<>();
    solve(sweep, rows, threads, solved::add);
    return solved;
  }

  @Override
  public void solve(Sweep sweep, RowRange rows, int threads, Consumer<SweepRow> sink) {
    if (rows.count() == 0) {
      return;
    }
    long first = rows.first() / blockRows * blockRows;
    RowRange block = new RowRange(first, Math.min(first + blockRows, sweep.rows().end()));
    new SharedBlock(sweep, solver, block, rows, threads).solve(sink);
  }
}
