package org.spanwire.study;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.spanwire.design.Design;
import org.spanwire.unit.Quantity;

/**
 * A design solved at many places of its parameter space and at several frequencies. The rows come
 * in the order of the space, the frequency innermost.
 *
 * @param base the design whose parameters are varied
 * @param space the places
 * @param frequenciesHz frequencies in hertz, at least one
 * @param request what to give at every row
 */
public record Sweep(
    Design base, ParameterSpace space, List<Double> frequenciesHz, SweepRequest request) {

  /** Blocks that may wait for their turn, per thread. */
  private static final int WAITING_PER_THREAD = 16;

  /** Rows that may wait, unless a block alone has more. */
  private static final long MOST_WAITING = 1 << 17;

  /** Blocks of more rows are solved one after the other: an interruption then loses less. */
  private static final long MOST_AT_ONCE = 1 << 13;

  /** Takes copies and checks the size. */
  public Sweep {
    Objects.requireNonNull(base, "base");
    frequenciesHz = List.copyOf(frequenciesHz);
    if (frequenciesHz.isEmpty()) {
      throw new IllegalArgumentException("a sweep needs at least one frequency");
    }
    Math.multiplyExact(space.count(), (long) frequenciesHz.size());
  }

  /** All rows. */
  public RowRange rows() {
    return new RowRange(0, space.count() * frequenciesHz.size());
  }

  /** The values of the varied parameters in a row. */
  public List<Quantity> parameters(long row) {
    return space.at(row / frequenciesHz.size());
  }

  /** The frequency of a row in hertz. */
  public double frequencyHz(long row) {
    return frequenciesHz.get((int) (row % frequenciesHz.size()));
  }

  /**
   * The design of a row.
   *
   * @throws org.spanwire.design.DesignException if the design is faulty with the row's values
   */
  public Design design(long row) {
    List<String> names = space.parameters();
    List<Quantity> values = parameters(row);
    Map<String, String> quantities = new LinkedHashMap<>();
    for (int i = 0; i < names.size(); i++) {
      quantities.put(names.get(i), exact(values.get(i)));
    }
    return base.with(quantities);
  }

  /** A text that reads back to the same number. */
  static String exact(Quantity quantity) {
    return quantity.value() + " " + quantity.dimension().symbol();
  }

  /**
   * Solves rows on several threads and hands them on in order, on the calling thread, as they are
   * done. The memory used does not grow with the number of rows.
   *
   * @param rows which rows
   * @param threads number of threads; the results do not depend on it
   */
  public void run(SweepPlan plan, RowRange rows, int threads, Consumer<SweepRow> sink) {
    long size = plan.blockRows(this);
    long blocks = rows.count() == 0 ? 0 : (rows.end() - 1) / size - rows.first() / size + 1;
    if (blocks <= 2L * threads || size > MOST_AT_ONCE) {
      blocks(size, rows).forEach(block -> plan.solve(this, block, threads, sink));
      return;
    }
    long waiting = Math.max(1, Math.min((long) threads * WAITING_PER_THREAD, MOST_WAITING / size));
    try (Workers workers = new Workers(threads)) {
      workers.stream(
          blocks(size, rows).map(block -> () -> plan.solve(this, block)),
          (int) waiting,
          (List<SweepRow> solved) -> solved.forEach(sink));
    }
  }

  private static Stream<RowRange> blocks(long size, RowRange rows) {
    return LongStream.range(rows.first() / size, (rows.end() + size - 1) / size)
        .mapToObj(
            block ->
                new RowRange(
                    Math.max(rows.first(), block * size),
                    Math.min(rows.end(), (block + 1) * size)));
  }
}
