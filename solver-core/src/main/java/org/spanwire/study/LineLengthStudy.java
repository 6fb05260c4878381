package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.DoubleStream;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.circuit.CircuitException;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.FeedLine.Polarity;
import org.spanwire.geometry.GeometryException;
import org.spanwire.result.CurrentSample;

/**
 * How the length of the feed line changes the current on its outside and the heat of its choke, for
 * both ways to join the hot terminal. The route is cut short, or led on in the direction of its
 * last leg; the chain's line has the same length. Every band is looked at on both edges and in the
 * middle.
 *
 * @param design with a feed line that ends free
 * @param lengths of the line in metres, positive and rising
 */
public record LineLengthStudy(Design design, List<Double> lengths) {

  /** Takes a copy and checks that there is a line whose end may move. */
  public LineLengthStudy {
    lengths = List.copyOf(lengths);
    if (design.feedLine().isEmpty()) {
      throw new IllegalArgumentException(
          "the design gives no feed-line; add feed-line: {path: …, conductor: …}");
    }
    if (design.feedLine().get().earthed()) {
      throw new IllegalArgumentException(
          "the feed line is earthed at its far end, which cannot move; write a design for each"
              + " route");
    }
    for (int i = 0; i < lengths.size(); i++) {
      if (!(lengths.get(i) > (i == 0 ? 0 : lengths.get(i - 1)))) {
        throw new IllegalArgumentException("lengths must be positive and rise");
      }
    }
  }

  /**
   * A band with a length and a polarity, at the frequency where the choke is hottest.
   *
   * @param lengthMetres length of the line
   * @param polarity where the hot terminal goes
   * @param band name of the band
   * @param frequencyHz frequency in hertz
   * @param chokeWatts heat of the choke at the top of the line at the transmitter's power
   * @param chokeVolts voltage across it, rms
   * @param largestAmperes largest current along the line, rms, at any of the band's frequencies
   */
  public record Row(
      double lengthMetres,
      Polarity polarity,
      String band,
      double frequencyHz,
      double chokeWatts,
      double chokeVolts,
      double largestAmperes) {}

  /**
   * A length that cannot be modelled.
   *
   * @param lengthMetres length of the line
   * @param reason why not
   */
  public record Gap(double lengthMetres, String reason) {}

  /**
   * What came out.
   *
   * @param rows by length, then polarity, then band
   * @param gaps lengths without rows
   */
  public record Result(List<Row> rows, List<Gap> gaps) {
    /** Takes copies. */
    public Result {
      rows = List.copyOf(rows);
      gaps = List.copyOf(gaps);
    }

    /** The lengths with rows, rising. */
    public List<Double> lengths() {
      return rows.stream().map(Row::lengthMetres).distinct().toList();
    }

    /** The hottest row of a length and a polarity. */
    public Row hottest(double lengthMetres, Polarity polarity) {
      return rows.stream()
          .filter(row -> row.lengthMetres() == lengthMetres && row.polarity() == polarity)
          .max(Comparator.comparingDouble(Row::chokeWatts))
          .orElseThrow();
    }

    /** The hottest row of the length and polarity that keep the choke coolest. */
    public Row coolest() {
      return lengths().stream()
          .flatMap(
              length -> Arrays.stream(Polarity.values()).map(polarity -> hottest(length, polarity)))
          .min(Comparator.comparingDouble(Row::chokeWatts))
          .orElseThrow();
    }

    /**
     * Stretches of length to avoid: neighbouring lengths at which the choke's heat is above a limit
     * on any band.
     */
    public List<Avoid> avoid(Polarity polarity, double limitWatts) {
      List<Avoid> stretches = new ArrayList<>();
      boolean open = false;
      for (double length : lengths()) {
        Row worst = hottest(length, polarity);
        boolean bad = worst.chokeWatts() > limitWatts;
        if (bad && open) {
          Avoid last = stretches.remove(stretches.size() - 1);
          Row hotter = worst.chokeWatts() > last.worst().chokeWatts() ? worst : last.worst();
          stretches.add(new Avoid(last.fromMetres(), length, hotter));
        } else if (bad) {
          stretches.add(new Avoid(length, length, worst));
        }
        open = bad;
      }
      return stretches;
    }

    /** Whether it makes no difference where the hot terminal goes, to a thousandth. */
    public boolean polarityIsIndifferent() {
      return lengths().stream()
          .allMatch(
              length -> {
                double first = hottest(length, Polarity.FIRST_POINT).chokeWatts();
                double last = hottest(length, Polarity.LAST_POINT).chokeWatts();
                return Math.abs(first - last) <= 1e-3 * Math.max(first, last);
              });
    }
  }

  /**
   * A stretch of lengths to avoid.
   *
   * @param fromMetres shortest of them
   * @param toMetres longest of them
   * @param worst the hottest row among them
   */
  public record Avoid(double fromMetres, double toMetres, Row worst) {}

  private record Outcome(List<Row> rows, Optional<Gap> gap) {}

  /**
   * Runs the study.
   *
   * @param threads number of threads; the result does not depend on it
   * @throws org.spanwire.ToleranceException if the wanted tolerance could not be reached
   */
  public Result run(Solver solver, int threads) {
    List<Callable<Outcome>> tasks = new ArrayList<>();
    lengths.forEach(length -> tasks.add(() -> outcome(solver, length)));
    List<Row> rows = new ArrayList<>();
    List<Gap> gaps = new ArrayList<>();
    try (Workers workers = new Workers(threads)) {
      for (Outcome outcome : workers.run(tasks)) {
        rows.addAll(outcome.rows());
        outcome.gap().ifPresent(gaps::add);
      }
    }
    return new Result(rows, gaps);
  }

  private Outcome outcome(Solver solver, double length) {
    try {
      return new Outcome(rows(solver, length), Optional.empty());
    } catch (GeometryException | CircuitException e) {
      return new Outcome(List.of(), Optional.of(new Gap(length, e.getMessage())));
    }
  }

  /** The antenna is solved once: polarity is a matter of the circuit alone. */
  private List<Row> rows(Solver solver, double length) {
    double[] frequencies =
        design.bands().stream()
            .flatMapToDouble(band -> DoubleStream.of(band.lowHz(), band.middleHz(), band.highHz()))
            .toArray();
    List<Solution> solutions =
        solver.solveAll(
            Installation.ofLine(design, length, Polarity.FIRST_POINT).modelled(), frequencies);
    List<Row> rows = new ArrayList<>();
    for (Polarity polarity : Polarity.values()) {
      Installation installation = Installation.ofLine(design, length, polarity);
      List<Operation> operations = new ArrayList<>();
      for (Solution solution : solutions) {
        Operation operation = installation.operate(solution).operation();
        operations.add(
            operation.relativeError() <= solver.options().tolerance()
                ? operation
                : installation.solve(solver, solution.frequencyHz()));
      }
      for (int b = 0; b < design.bands().size(); b++) {
        rows.add(
            row(length, polarity, design.bands().get(b), operations.subList(3 * b, 3 * b + 3)));
      }
    }
    return rows;
  }

  private static Row row(double length, Polarity polarity, Band band, List<Operation> operations) {
    Comparator<Operation> byHeat =
        Comparator.comparingDouble(each -> each.commonMode().orElseThrow().topWatts());
    Operation hottest = operations.stream().max(byHeat).orElseThrow();
    CommonMode mode = hottest.commonMode().orElseThrow();
    double largest =
        operations.stream()
            .map(each -> each.commonMode().orElseThrow().largest())
            .map(CurrentSample::current)
            .mapToDouble(current -> current.abs())
            .max()
            .orElseThrow();
    return new Row(
        length,
        polarity,
        band.name(),
        hottest.solution().frequencyHz(),
        mode.topWatts(),
        mode.chokes().get(0).voltage(),
        largest);
  }
}
