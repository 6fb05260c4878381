package org.spanwire.cli.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
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

  /** Solves before the one that is timed: the first ones pay for the start of the program. */
  private static final int WARM_SOLVES = 4;

  /** So few solves are done before they are estimated. */
  private static final int FEW_SOLVES = 5;

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
    try (ProgressLine progress = ProgressLine.ofRows(left.count())) {
      sweep.run(
          plan,
          left,
          threads,
          row -> {
            accept(row, sink, failures);
            progress.step();
          });
    }
    failures.tell();
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

  /** Says what the rows will cost. */
  void announce(RowRange left) {
    long solves = plan.solves(sweep, left);
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
        solves);
    if (solves > FEW_SOLVES) {
      estimate(solves);
    }
  }

  private void estimate(long solves) {
    BooleanSupplier sample = plan.sample(sweep);
    double each = 0;
    for (int i = 0; i <= WARM_SOLVES; i++) {
      long start = System.nanoTime();
      if (!sample.getAsBoolean()) {
        return;
      }
      each = (System.nanoTime() - start) * 1e-9;
    }
    say(
        "sweep: one solve takes %.2g s so early; some %s at most for all with --threads %d",
        each, duration(each * solves / threads), threads);
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
