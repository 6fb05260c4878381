package org.spanwire.cli.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import org.spanwire.study.RowRange;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepPlan;
import org.spanwire.study.SweepRow;

/**
 * One run of a sweep with what it tells on the way: what it will cost, how far it is, what went
 * wrong.
 *
 * @param sweep the sweep
 * @param plan how its rows are solved
 * @param rows the rows that belong to this run
 * @param threads number of threads
 * @param err takes messages
 * @param seen takes every row besides
 */
record SweepRun(
    Sweep sweep,
    SweepPlan plan,
    RowRange rows,
    int threads,
    PrintWriter err,
    Consumer<SweepRow> seen) {

  /**
   * Blocks solved before the one that is timed: the first ones pay for the start of the program.
   */
  private static final int WARM_BLOCKS = 4;

  /** Takes rows in order. */
  @FunctionalInterface
  interface Sink {
    void accept(SweepRow row) throws IOException;
  }

  /**
   * Solves the rows from a row on.
   *
   * @param from first row that is still missing
   */
  void run(long from, Sink sink) {
    Failures failures = new Failures();
    RowRange left = new RowRange(from, rows.end());
    announce(left);
    RowRange warm = blocks(left, WARM_BLOCKS);
    sweep.run(plan, warm, 1, row -> accept(row, sink, failures));
    RowRange timed = blocks(new RowRange(warm.end(), left.end()), 1);
    long start = System.nanoTime();
    sweep.run(plan, timed, 1, row -> accept(row, sink, failures));
    double seconds = (System.nanoTime() - start) * 1e-9;
    RowRange rest = new RowRange(timed.end(), left.end());
    if (failures.rowsWithout == 0) {
      estimate(seconds, timed, rest);
    }
    try (SweepProgress progress = SweepProgress.over(rest.count())) {
      sweep.run(
          plan,
          rest,
          threads,
          row -> {
            accept(row, sink, failures);
            progress.step();
          });
    }
    failures.tell();
  }

  /** The first blocks of a range, or what there is of them. */
  private RowRange blocks(RowRange range, long count) {
    long size = plan.blockRows(sweep);
    long end = (range.first() / size + count) * size;
    return new RowRange(range.first(), Math.min(range.end(), end));
  }

  private void accept(SweepRow row, Sink sink, Failures failures) {
    seen.accept(row);
    failures.count(row);
    try {
      sink.accept(row);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void announce(RowRange left) {
    say(
        "sweep: points x frequencies = rows: %,d x %,d = %,d%s%s; solves to do: %,d",
        sweep.space().count(),
        sweep.frequenciesHz().size(),
        sweep.rows().count(),
        rows.equals(sweep.rows())
            ? ""
            : String.format(Locale.ROOT, "; in this shard: %,d", rows.count()),
        left.equals(rows)
            ? ""
            : String.format(Locale.ROOT, "; already there: %,d", rows.count() - left.count()),
        plan.solves(sweep, left));
  }

  private void estimate(double seconds, RowRange done, RowRange rest) {
    if (rest.count() == 0) {
      return;
    }
    double each = seconds / Math.max(1, plan.solves(sweep, done));
    say(
        "sweep: one solve takes %.2g s so early; at most some %s for the rest with --threads %d",
        each, duration(each * plan.solves(sweep, rest) / threads), threads);
  }

  private static String duration(double seconds) {
    if (seconds < 100) {
      return String.format(Locale.ROOT, "%.0f s", Math.ceil(seconds));
    }
    return seconds < 6000
        ? String.format(Locale.ROOT, "%.0f min", seconds / 60)
        : String.format(Locale.ROOT, "%.1f h", seconds / 3600);
  }

  private void say(String format, Object... values) {
    err.println("spanwire: " + String.format(Locale.ROOT, format, values));
    err.flush();
  }

  /** Rows without a result. */
  private final class Failures {
    private long rowsWithout;
    private Optional<SweepRow.Failure> first = Optional.empty();

    void count(SweepRow row) {
      if (row.failure().isPresent()) {
        rowsWithout++;
        first = first.isPresent() ? first : row.failure();
      }
    }

    void tell() {
      first.ifPresent(
          failure ->
              say(
                  "warning: rows without a result: %,d; the first one: %s",
                  rowsWithout, failure.message()));
    }
  }
}
