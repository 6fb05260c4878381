package org.spanwire.validation.accuracy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.ToleranceException;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.DesignReader;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Wire;
import org.spanwire.result.Direction;
import org.spanwire.unit.PhysicalConstants;

/**
 * Random designs through the reader and the solver. Each must be solved with finite results or be
 * refused with one of the library's three exceptions and a message of one line, in good time.
 */
public final class DesignFuzz {

  static final long SEED = 4_711L;

  private static final int DESIGNS = 20_000;
  private static final int THREADS = 2;
  private static final double TOLERANCE = 0.05;
  private static final long LIMIT_SECONDS = 60;

  /** Total length of wire in wavelengths beyond which a design is read and checked only. */
  private static final double MOST_WIRE = 4;

  private DesignFuzz() {}

  /**
   * What came of a run.
   *
   * @param counts number of designs by outcome
   * @param faults number, description and text of every design that broke the promise
   */
  record Outcome(Map<String, Integer> counts, List<String> faults) {

    Outcome {
      counts = Collections.unmodifiableMap(counts);
      faults = List.copyOf(faults);
    }
  }

  /**
   * Runs all designs and exits with 1 if one breaks the promise.
   *
   * @param arguments number of designs, and the first; 20,000 and 0 without
   */
  public static void main(String[] arguments) throws InterruptedException {
    int designs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : DESIGNS;
    int first = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 0;
    Outcome outcome = run(SEED, first, designs);
    outcome.counts.forEach((name, count) -> System.out.println(count + " " + name));
    outcome.faults.forEach(System.out::println);
    System.exit(outcome.faults.isEmpty() ? 0 : 1);
  }

  /** Runs a stretch of the sequence of designs. */
  static Outcome run(long seed, int first, int designs) throws InterruptedException {
    ExecutorService threads = Executors.newFixedThreadPool(THREADS, DesignFuzz::daemon);
    Map<String, Integer> counts = new TreeMap<>();
    List<String> faults = new ArrayList<>();
    List<Future<String>> results = new ArrayList<>();
    for (int i = first; i < first + designs; i++) {
      String text = RandomDesign.of(seed, i);
      results.add(threads.submit(() -> attempt(text)));
    }
    for (int i = 0; i < designs; i++) {
      String result;
      try {
        result = results.get(i).get(LIMIT_SECONDS, TimeUnit.SECONDS);
      } catch (TimeoutException e) {
        result = "FAULT no answer within " + LIMIT_SECONDS + " s";
      } catch (ExecutionException e) {
        result = "FAULT " + e.getCause();
      }
      if ((i + 1) % 1000 == 0) {
        System.err.println((i + 1) + " of " + designs + " designs");
      }
      boolean fault = result.startsWith("FAULT");
      counts.merge(fault ? "FAULT" : result, 1, Integer::sum);
      if (fault) {
        faults.add(
            "design " + (first + i) + ": " + result + "\n" + RandomDesign.of(seed, first + i));
      }
    }
    threads.shutdownNow();
    return new Outcome(counts, faults);
  }

  private static Thread daemon(Runnable task) {
    Thread thread = new Thread(task, "design-fuzz");
    thread.setDaemon(true);
    return thread;
  }

  /** One design; returns the kind of outcome, or a fault. */
  static String attempt(String text) {
    try {
      Design design = DesignReader.read(text, "fuzz.yaml");
      double frequencyHz = design.frequencies().isEmpty() ? 30e6 : design.frequencies().get(0);
      Solver solver = new Solver(new SolverOptions(TOLERANCE));
      double length = design.antenna().wires().stream().mapToDouble(Wire::length).sum();
      if (length > MOST_WIRE * PhysicalConstants.wavelength(frequencyHz)) {
        solver.check(design.antenna(), frequencyHz);
        return "read and checked only";
      }
      return judge(design, solver.solve(design.antenna(), frequencyHz));
    } catch (DesignException e) {
      return refusal("refused by the reader", e, text);
    } catch (GeometryException e) {
      return refusal("refused for its geometry", e, text);
    } catch (ToleranceException e) {
      return refusal("tolerance out of reach", e, text);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      StackTraceElement[] trace = e.getStackTrace();
      return "FAULT " + e + (trace.length > 0 ? " at " + trace[0] : "");
    }
  }

  /** A message of one line, which names no number that is none unless the design does. */
  private static String refusal(String kind, RuntimeException e, String text) {
    String message = e.getMessage();
    boolean oneLine = message != null && message.lines().count() == 1;
    boolean sound = oneLine && (!message.contains("NaN") || text.contains("NaN"));
    return sound ? kind : "FAULT message of " + kind + ": " + message;
  }

  private static String judge(Design design, Solution solution) {
    double sum = solution.radiationEfficiency();
    for (Feed feed : design.antenna().feeds()) {
      Complex z = solution.impedance(feed.name());
      boolean dead = z.isInfinite() && solution.feedCurrent(feed.name()).equals(Complex.ZERO);
      sum += dead ? 0 : z.abs() + solution.impedanceErrorOhm(feed.name());
    }
    double gain = solution.gainDbi(new Direction(30, 40));
    if (!Double.isFinite(sum) || Double.isNaN(gain)) {
      return "FAULT result is not a number: " + sum + ", gain " + gain;
    }
    return "solved";
  }
}
