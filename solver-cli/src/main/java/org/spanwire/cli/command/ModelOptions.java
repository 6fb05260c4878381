package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.CircuitException;
import org.spanwire.circuit.TouchstoneException;
import org.spanwire.cli.output.Conditions;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.DesignReader;
import org.spanwire.geometry.GeometryException;
import picocli.CommandLine.Option;

/** How designs are read and solved. */
class ModelOptions {

  @Option(
      names = "--set",
      paramLabel = "NAME=VALUE",
      description = "Give a parameter of the design another value: --set height=9m. Repeatable.")
  private Map<String, String> values = new LinkedHashMap<>();

  @Option(
      names = "--tolerance",
      paramLabel = "T",
      converter = Converters.Tolerance.class,
      description = "Wanted relative accuracy of impedances, 0.00001%% to 10%%; default 0.1%%.")
  private double tolerance = SolverOptions.DEFAULT_TOLERANCE;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "Number of threads; default: one per core. The result does not depend on it.")
  private int threads = Runtime.getRuntime().availableProcessors();

  /** Reads a design and sets its parameters. */
  Design read(Path file) {
    Design design = DesignReader.read(file);
    for (Map.Entry<String, String> value : values.entrySet()) {
      design = design.with(value.getKey(), value.getValue());
    }
    return design;
  }

  int threads() {
    if (threads < 1) {
      throw new InputException("--threads " + threads + ": must be at least 1");
    }
    return threads;
  }

  double tolerance() {
    return tolerance;
  }

  /** The parameters that have other values than the file's, NAME=VALUE. */
  List<String> changes() {
    return values.entrySet().stream().map(e -> e.getKey() + "=" + e.getValue()).toList();
  }

  /** What of these options changes results, in words. */
  String settings() {
    return "tolerance " + tolerance + " with " + new TreeMap<>(values);
  }

  Solver solver() {
    try {
      return new Solver(SolverOptions.defaults().withTolerance(tolerance));
    } catch (IllegalArgumentException e) {
      throw new InputException("--tolerance: must lie between 0.00001% and 10%; default 0.1%");
    }
  }

  /** Says which design it is whose values are refused. */
  static <T> T accept(Design design, Supplier<T> work) {
    try {
      return work.get();
    } catch (IllegalArgumentException e) {
      throw new InputException(design.source() + ": " + e.getMessage());
    }
  }

  /** Places what the solver finds wrong with the geometry in the design file. */
  static <T> T solve(Design design, Supplier<T> work) {
    try {
      return work.get();
    } catch (GeometryException e) {
      DesignException located = design.locate(e);
      located.addSuppressed(e);
      throw located;
    } catch (CircuitException e) {
      throw new InputException(design.source() + ": feed-chain: " + e.getMessage());
    } catch (TouchstoneException e) {
      throw new InputException(
          e.line() > 0 ? e.getMessage() : design.source() + ": feed-chain: " + e.getMessage());
    }
  }

  /** What results of a design hold for. */
  Conditions conditions(Design design, Map<String, Double> gaps, List<Double> relativeErrors) {
    double largest = relativeErrors.stream().mapToDouble(Double::doubleValue).max().orElse(0);
    return new Conditions(design, ProgramVersion.number(), tolerance, largest, gaps);
  }
}
