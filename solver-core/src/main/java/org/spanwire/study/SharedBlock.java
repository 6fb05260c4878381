package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.spanwire.Antenna;
import org.spanwire.MemoryException;
import org.spanwire.MovingFeed;
import org.spanwire.Solution;
import org.spanwire.SolutionFamily;
import org.spanwire.Solver;
import org.spanwire.ToleranceException;
import org.spanwire.circuit.CircuitException;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Position;
import org.spanwire.result.InputImpedance;

/**
 * The rows of one block. What is shared follows from the whole block, so that a row does not depend
 * on which rows are asked for. Rows that cannot be shared are left to {@link RowByRow}, which also
 * says why a row has no result.
 */
final class SharedBlock {

  /** Frequencies farther apart get meshes of their own. */
  private static final double CLUSTER = 1.25;

  /** Frequencies times heights of a structure that are worth a family, and that one may hold. */
  private static final int FEWEST = 4;

  private static final int MOST = 2000;

  /** Places read by one task. */
  private static final int CHUNK = 32;

  /** Rows that a thread solves on their own before they are handed on. */
  private static final int ALONE = 8;

  private final Sweep sweep;
  private final Solver solver;
  private final RowRange block;
  private final RowRange wanted;
  private final int threads;
  private final int frequencies;
  private final SweepRow[] rows;

  /**
   * A place of the block.
   *
   * @param number of the place in the sweep
   * @param antenna what is solved
   * @param chain its feed chain, and that of others where they are equal
   */
  private record Entry(long number, Antenna antenna, SweepPlace place, Installation chain) {}

  /** Several frequencies of the sweep, by their index, rising. */
  private record Cluster(List<Integer> indices, double[] hertz) {}

  SharedBlock(Sweep sweep, Solver solver, RowRange block, RowRange wanted, int threads) {
    this.sweep = sweep;
    this.solver = solver;
    this.block = block;
    this.wanted = wanted;
    this.threads = threads;
    frequencies = sweep.frequenciesHz().size();
    rows = new SweepRow[(int) wanted.count()];
  }

  void solve(Consumer<SweepRow> sink) {
    List<List<Entry>> groups = groups();
    for (List<Entry> group : groups) {
      for (Cluster cluster : clusters()) {
        if (needs(group, cluster)) {
          share(group, cluster);
        }
      }
    }
    handOn(sink);
  }

  /** Places of one structure each; those that cannot be read are left out. */
  private List<List<Entry>> groups() {
    long first = block.first() / frequencies;
    long end = (block.end() + frequencies - 1) / frequencies;
    List<Callable<List<Optional<Design>>>> tasks = new ArrayList<>();
    for (long from = first; from < end; from += CHUNK) {
      long start = from;
      long stop = Math.min(end, from + CHUNK);
      tasks.add(() -> read(start, stop));
    }
    Map<List<Object>, Installation> chains = new HashMap<>();
    Map<List<Object>, List<Entry>> groups = new LinkedHashMap<>();
    long number = first;
    for (List<Optional<Design>> chunk : inParallel(tasks)) {
      for (Optional<Design> design : chunk) {
        if (design.isPresent()) {
          add(number, design.get(), chains, groups);
        }
        number++;
      }
    }
    return new ArrayList<>(groups.values());
  }

  private List<Optional<Design>> read(long from, long end) {
    List<Optional<Design>> designs = new ArrayList<>();
    for (long place = from; place < end; place++) {
      designs.add(read(place));
    }
    return designs;
  }

  private Optional<Design> read(long place) {
    try {
      return Optional.of(sweep.design(place * frequencies));
    } catch (DesignException e) {
      return Optional.empty();
    }
  }

  private void add(
      long number,
      Design design,
      Map<List<Object>, Installation> chains,
      Map<List<Object>, List<Entry>> groups) {
    try {
      Antenna antenna = SharedPlan.modelled(design);
      SweepPlace place = SweepPlace.of(antenna, sweep.frequenciesHz());
      List<Object> chain =
          List.of(
              place.structure(),
              design.feedLine(),
              design.feedChain(),
              design.referenceOhm(),
              design.powerWatts());
      Installation installation = chains.get(chain);
      if (installation == null) {
        installation = Installation.of(design);
        chains.put(chain, installation);
      }
      groups
          .computeIfAbsent(place.structure(), structure -> new ArrayList<>())
          .add(new Entry(number, antenna, place, installation));
    } catch (CircuitException | GeometryException e) {
      // Left to be solved on its own, which says what is wrong.
    }
  }

  /** Frequencies close to each other, from the whole sweep. */
  private List<Cluster> clusters() {
    List<Integer> rising =
        IntStream.range(0, frequencies)
            .boxed()
            .sorted((a, b) -> Double.compare(hertz(a), hertz(b)))
            .toList();
    List<Cluster> clusters = new ArrayList<>();
    int first = 0;
    for (int i = 1; i <= rising.size(); i++) {
      if (i == rising.size() || hertz(rising.get(i)) > CLUSTER * hertz(rising.get(first))) {
        List<Integer> indices = rising.subList(first, i);
        clusters.add(
            new Cluster(indices, indices.stream().mapToDouble(this::hertz).distinct().toArray()));
        first = i;
      }
    }
    return clusters;
  }

  private double hertz(int index) {
    return sweep.frequenciesHz().get(index);
  }

  private boolean needs(List<Entry> group, Cluster cluster) {
    return cluster.indices.stream().anyMatch(index -> wants(group, index));
  }

  private long row(Entry entry, int frequency) {
    return entry.number * frequencies + frequency;
  }

  private boolean isWanted(long row) {
    return row >= wanted.first() && row < wanted.end();
  }

  private void share(List<Entry> group, Cluster cluster) {
    double[] alongs =
        group.stream().mapToDouble(e -> e.place.along()).sorted().distinct().toArray();
    if (SharedPlan.movesFeed(sweep) && alongs.length > 1) {
      moving(group, cluster, alongs);
      return;
    }
    Map<Double, List<Entry>> byPlace = new LinkedHashMap<>();
    group.forEach(e -> byPlace.computeIfAbsent(e.place.along(), along -> new ArrayList<>()).add(e));
    byPlace.values().forEach(same -> standing(same, cluster));
  }

  /** Lifts over the first entry, rising. */
  private static double[] lifts(List<Entry> group) {
    double base = group.get(0).place.height();
    return group.stream().mapToDouble(e -> e.place.height() - base).sorted().distinct().toArray();
  }

  private static Map<Double, List<Entry>> byHeight(List<Entry> group) {
    Map<Double, List<Entry>> byHeight = new LinkedHashMap<>();
    group.forEach(
        e -> byHeight.computeIfAbsent(e.place.height(), height -> new ArrayList<>()).add(e));
    return byHeight;
  }

  /** One mesh for the feed at many places. */
  private void moving(List<Entry> group, Cluster cluster, double[] alongs) {
    List<Position> places = Arrays.stream(alongs).mapToObj(Position::distance).toList();
    Entry base = group.get(0);
    Optional<MovingFeed> moving =
        fromLowest(
            lifts(group),
            lifts -> solver.movingFeed(base.antenna, places, cluster.hertz, lifts, threads));
    if (moving.isEmpty()) {
      return;
    }
    List<Callable<Boolean>> tasks = new ArrayList<>();
    for (List<Entry> entries : byHeight(group).values()) {
      double lift = entries.get(0).place.height() - base.place.height();
      for (int index : cluster.indices) {
        if (moving.get().covers(lift) && wants(entries, index)) {
          tasks.add(() -> moved(moving.get(), entries, alongs, index, lift));
        }
      }
    }
    inParallel(tasks);
  }

  private boolean wants(List<Entry> entries, int index) {
    return entries.stream().anyMatch(entry -> isWanted(row(entry, index)));
  }

  /** What can be made for all heights, or for all that are not too low. */
  private static <T> Optional<T> fromLowest(double[] lifts, Function<double[], T> make) {
    for (int low = 0; low < lifts.length; low++) {
      try {
        return Optional.of(make.apply(Arrays.copyOfRange(lifts, low, lifts.length)));
      } catch (GeometryException e) {
        // Perhaps the lowest height is too low; it is left to be solved on its own, and refused.
      } catch (CircuitException | ToleranceException | MemoryException e) {
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  private boolean moved(
      MovingFeed moving, List<Entry> entries, double[] alongs, int index, double lift) {
    List<Optional<InputImpedance>> found = moving.solve(hertz(index), lift);
    for (Entry entry : entries) {
      found
          .get(Arrays.binarySearch(alongs, entry.place.along()))
          .ifPresent(
              z ->
                  put(
                      entry,
                      index,
                      () ->
                          Optional.of(sweep.request().values(entry.chain.seen(z, hertz(index))))));
    }
    return true;
  }

  /** One mesh for all heights and frequencies of one place; the same antenna is solved once. */
  private void standing(List<Entry> group, Cluster cluster) {
    Entry base = group.get(0);
    double[] lifts = lifts(group);
    int count = lifts.length * cluster.hertz.length;
    Optional<SolutionFamily> shared =
        count < FEWEST || count > MOST
            ? Optional.empty()
            : fromLowest(lifts, up -> family(base, cluster, up));
    List<Callable<Boolean>> tasks = new ArrayList<>();
    for (List<Entry> same : byHeight(group).values()) {
      double lift = same.get(0).place.height() - base.place.height();
      for (int index : cluster.indices) {
        boolean once = shared.isEmpty() && same.size() == 1;
        if (!once && wants(same, index)) {
          tasks.add(() -> stood(shared, same, index, lift));
        }
      }
    }
    inParallel(tasks);
  }

  private SolutionFamily family(Entry base, Cluster cluster, double[] lifts) {
    return base.chain.hasFeedLine()
        ? solver.family(base.antenna, cluster.hertz, lifts, threads, base.chain::relativeError)
        : solver.family(base.antenna, cluster.hertz, lifts, threads);
  }

  private boolean stood(Optional<SolutionFamily> family, List<Entry> same, int index, double lift) {
    Solution solution;
    try {
      solution =
          family
              .map(all -> all.at(hertz(index), lift))
              .orElseGet(() -> alone(same.get(0), hertz(index)));
    } catch (CircuitException | GeometryException | ToleranceException | MemoryException e) {
      return false;
    }
    for (Entry entry : same) {
      put(entry, index, () -> values(entry, solution));
    }
    return true;
  }

  /** Empty where the solution was judged behind another feed chain and is too coarse for this. */
  private Optional<List<Double>> values(Entry entry, Solution solution) {
    Operation operation = entry.chain.operate(solution).operation();
    boolean fine =
        !entry.chain.hasFeedLine() || operation.relativeError() <= solver.options().tolerance();
    return fine ? Optional.of(sweep.request().values(operation)) : Optional.empty();
  }

  private Solution alone(Entry entry, double frequencyHz) {
    return entry.chain.antennaSolution(solver, entry.antenna, frequencyHz);
  }

  /** Keeps a row, if it is wanted and the feed chain has parameters there. */
  private void put(Entry entry, int index, Supplier<Optional<List<Double>>> values) {
    long row = row(entry, index);
    if (!isWanted(row)) {
      return;
    }
    try {
      values
          .get()
          .ifPresent(
              found ->
                  rows[(int) (row - wanted.first())] =
                      new SweepRow(sweep.parameters(row), hertz(index), found, Optional.empty()));
    } catch (CircuitException e) {
      // Left to be solved on its own, which says what is wrong.
    }
  }

  /**
   * Hands the rows on, those that are still missing solved row by row, a few at a time: an
   * interruption loses what was shared, which is quick, and those few.
   */
  private void handOn(Consumer<SweepRow> sink) {
    RowByRow each = new RowByRow(solver);
    for (int from = 0; from < rows.length; ) {
      List<Callable<Boolean>> tasks = new ArrayList<>();
      int end = from;
      while (end < rows.length && (rows[end] != null || tasks.size() < ALONE * threads)) {
        int index = end++;
        if (rows[index] == null) {
          tasks.add(
              () -> {
                rows[index] = each.solve(sweep, wanted.first() + index);
                return true;
              });
        }
      }
      inParallel(tasks);
      for (; from < end; from++) {
        sink.accept(rows[from]);
        rows[from] = null;
      }
    }
  }

  private <T> List<T> inParallel(List<Callable<T>> tasks) {
    if (tasks.isEmpty()) {
      return Collections.emptyList();
    }
    try (Workers workers = new Workers(Math.min(threads, tasks.size()))) {
      return workers.run(tasks);
    }
  }
}
