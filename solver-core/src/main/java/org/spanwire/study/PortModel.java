package org.spanwire.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.design.Design;

/**
 * What an antenna shows at its terminals over ranges of parameters and over ranges of frequency: in
 * each of these a polynomial through solutions, of the scattering parameters and where wanted of
 * ratios such as gain. The feed chain is exact. Immutable once built.
 *
 * <p>Scattering parameters are bounded and, damped by their reference, smoother than impedances.
 */
final class PortModel {

  /** Solutions that the polynomial has not seen, per range of frequency and round of checks. */
  private static final int CHECKS = 4;

  private static final int ROUNDS = 3;
  private static final double TIGHTER = 0.3;
  private static final int MOST_CHAINS = 4096;

  private final Request request;
  private final List<Integer> ofAntenna;
  private final List<Integer> ofChain;
  private final List<Domain> domains;
  private final PortNumbers numbers;
  private final Map<List<Double>, Installation> chains = new ConcurrentHashMap<>();
  private int solves;
  private double error;

  /**
   * What is wanted.
   *
   * @param box parameters and their ranges
   * @param ranges ranges of frequency; one may be a single frequency
   * @param decibels gains and other ratios to model, in decibels
   * @param accuracy wanted error of reflection coefficients
   * @param mostSolves number of solutions to give up at
   */
  record Request(
      ParameterBox box,
      List<FrequencyRange> ranges,
      List<ToDoubleFunction<Solution>> decibels,
      double accuracy,
      int mostSolves) {}

  /** One range of frequency. */
  private static final class Domain {
    private final FrequencyRange range;
    private final SparseInterpolant interpolant;
    private final SobolSequenceGenerator checks;
    private final Map<List<Double>, double[]> solved = new HashMap<>();
    private double tolerance;

    Domain(FrequencyRange range, int variables, double tolerance) {
      this.range = range;
      this.tolerance = tolerance;
      interpolant = new SparseInterpolant(variables);
      checks = new SobolSequenceGenerator(variables);
      checks.nextVector();
    }

    double frequency(double unit) {
      double f = range.middleHz() + unit * (range.highHz() - range.lowHz()) / 2;
      return Math.max(range.lowHz(), Math.min(range.highHz(), f));
    }

    double unit(double frequencyHz) {
      double width = range.highHz() - range.lowHz();
      return width > 0 ? (frequencyHz - range.middleHz()) * 2 / width : 0;
    }

    double[] check() {
      double[] point = checks.nextVector();
      for (int i = 0; i < point.length; i++) {
        point[i] = 2 * point[i] - 1;
      }
      return point;
    }
  }

  private PortModel(Request request) {
    this.request = request;
    ParameterBox box = request.box();
    numbers = new PortNumbers(box.base().feedLine().isPresent(), request.decibels());
    double frequency = request.ranges().get(0).lowHz();
    ofChain = box.ofChain(frequency);
    List<Integer> moving = new ArrayList<>(box.ofAntenna(frequency));
    if (!request.decibels().isEmpty() && box.base().feedLine().isPresent()) {
      // What the line's outside radiates depends on the chain.
      ofChain.stream().filter(i -> !moving.contains(i)).forEach(moving::add);
    }
    ofAntenna = List.copyOf(moving);
    domains =
        request.ranges().stream()
            .map(range -> new Domain(range, 1 + ofAntenna.size(), request.accuracy()))
            .toList();
  }

  /**
   * Builds the model on several threads; it does not depend on their number.
   *
   * @throws org.spanwire.design.DesignException if the design is faulty somewhere in the box
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled somewhere
   */
  static PortModel of(Request request, Solver solver, int threads) {
    PortModel model = new PortModel(request);
    try (Workers workers = new Workers(threads)) {
      for (int round = 0; round < ROUNDS; round++) {
        model.grow(solver, workers);
        if (!model.check(solver, workers) || model.solves >= request.mostSolves()) {
          break;
        }
      }
    }
    return model;
  }

  private void grow(Solver solver, Workers workers) {
    List<Domain> open = new ArrayList<>(domains);
    while (!open.isEmpty() && solves < request.mostSolves()) {
      List<List<double[]>> wanted =
          open.stream().map(domain -> domain.interpolant.wanted()).toList();
      List<List<double[]>> found = solve(solver, workers, open, wanted);
      for (int i = 0; i < open.size(); i++) {
        if (!found.get(i).isEmpty()) {
          open.get(i).interpolant.take(found.get(i));
        }
      }
      open.removeIf(domain -> domain.interpolant.uncertainty() <= domain.tolerance);
      open.forEach(domain -> domain.interpolant.grow(domain.tolerance));
    }
  }

  /** Whether some range has to become better; asks it to. */
  private boolean check(Solver solver, Workers workers) {
    List<List<double[]>> points = new ArrayList<>();
    for (Domain domain : domains) {
      List<double[]> own = new ArrayList<>();
      for (int i = 0; i < CHECKS; i++) {
        own.add(domain.check());
      }
      points.add(own);
    }
    List<List<double[]>> found = solve(solver, workers, domains, points);
    error = 0;
    boolean again = false;
    for (int i = 0; i < domains.size(); i++) {
      Domain domain = domains.get(i);
      double worst = 0;
      for (int k = 0; k < CHECKS; k++) {
        double[] point = points.get(i).get(k);
        worst = Math.max(worst, difference(domain, point, found.get(i).get(k)));
      }
      error = Math.max(error, worst);
      if (worst > request.accuracy()) {
        domain.tolerance *= TIGHTER;
        again = true;
      }
    }
    return again;
  }

  /** Largest difference of a reflection coefficient at a plane, or of a gain in its measure. */
  private double difference(Domain domain, double[] point, double[] solved) {
    double frequency = domain.frequency(point[0]);
    double[] modelled = domain.interpolant.at(point);
    Installation installation = Installation.of(request.box().with(values(point)));
    List<PlaneMismatch> one = installation.planes(frequency, numbers.ports(modelled));
    List<PlaneMismatch> other = installation.planes(frequency, numbers.ports(solved));
    double worst = 0;
    for (int i = 0; i < one.size(); i++) {
      Complex a = one.get(i).mismatch().reflection();
      worst = Math.max(worst, a.subtract(other.get(i).mismatch().reflection()).abs());
    }
    for (int i = solved.length - request.decibels().size(); i < solved.length; i++) {
      worst = Math.max(worst, Math.abs(modelled[i] - solved[i]));
    }
    return worst;
  }

  private List<List<double[]>> solve(
      Solver solver, Workers workers, List<Domain> open, List<List<double[]>> points) {
    List<Callable<double[]>> tasks = new ArrayList<>();
    List<Map<List<Double>, double[]>> into = new ArrayList<>();
    List<List<Double>> keys = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      Domain domain = open.get(i);
      for (double[] point : points.get(i)) {
        List<Double> key = key(domain, point);
        if (domain.solved.putIfAbsent(key, new double[0]) == null) {
          tasks.add(() -> solve(solver, domain.frequency(point[0]), values(point)));
          into.add(domain.solved);
          keys.add(key);
        }
      }
    }
    List<double[]> results = workers.run(tasks);
    solves += results.size();
    for (int t = 0; t < results.size(); t++) {
      into.get(t).put(keys.get(t), results.get(t));
    }
    List<List<double[]>> found = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      Domain domain = open.get(i);
      found.add(points.get(i).stream().map(p -> domain.solved.get(key(domain, p))).toList());
    }
    return found;
  }

  private List<Double> key(Domain domain, double[] point) {
    List<Double> key = new ArrayList<>();
    key.add(domain.frequency(point[0]));
    for (double value : values(point)) {
      key.add(value);
    }
    return key;
  }

  /** Values of all parameters of the box at a point of an interpolant. */
  private double[] values(double[] point) {
    double[] values = request.box().middle();
    for (int i = 0; i < ofAntenna.size(); i++) {
      values[ofAntenna.get(i)] = request.box().value(ofAntenna.get(i), point[i + 1]);
    }
    return values;
  }

  private double[] solve(Solver solver, double frequencyHz, double[] values) {
    Design design = request.box().with(values);
    return numbers.solve(Installation.of(design), solver, frequencyHz);
  }

  /** Number of solutions it took. */
  int solves() {
    return solves;
  }

  /**
   * Largest error of a reflection coefficient at any plane of the chain, against solutions that the
   * model had not seen; a gain's error of 0.1 dB counts as 0.002.
   */
  double error() {
    return error;
  }

  int ranges() {
    return domains.size();
  }

  FrequencyRange range(int index) {
    return domains.get(index).range;
  }

  /** Frequencies in hertz that show the extremes over a range, ends included. */
  double[] frequencies(int index) {
    Domain domain = domains.get(index);
    if (domain.range.lowHz() == domain.range.highHz()) {
      return new double[] {domain.range.lowHz()};
    }
    return ReflectionCurve.frequencies(domain.range, 2 * domain.interpolant.degree(0) + 3);
  }

  /**
   * The installation at a place of the box.
   *
   * @param values parameters in SI units, in the order of the box
   */
  Place at(double... values) {
    double[] point = new double[ofAntenna.size()];
    for (int i = 0; i < point.length; i++) {
      point[i] = request.box().unit(ofAntenna.get(i), values[ofAntenna.get(i)]);
    }
    return new Place(
        chain(values), domains.stream().map(domain -> domain.interpolant.slice(point)).toList());
  }

  private Installation chain(double[] values) {
    double[] others = request.box().middle();
    List<Double> key = new ArrayList<>();
    for (int i : ofChain) {
      others[i] = values[i];
      key.add(values[i]);
    }
    Installation known = chains.get(key);
    if (known == null) {
      known = Installation.of(request.box().with(others));
      if (chains.size() < MOST_CHAINS) {
        chains.put(key, known);
      }
    }
    return known;
  }

  /** The installation for certain values of the parameters. */
  final class Place implements Look {
    private final Installation chain;
    private final List<SparseInterpolant.Slice> slices;

    private Place(Installation chain, List<SparseInterpolant.Slice> slices) {
      this.chain = chain;
      this.slices = slices;
    }

    private double[] flat(int index, double frequencyHz) {
      return slices.get(index).at(domains.get(index).unit(frequencyHz));
    }

    /** What the first feed shows at the planes of the chain. */
    List<PlaneMismatch> planes(int index, double frequencyHz) {
      return chain.planes(frequencyHz, numbers.ports(flat(index, frequencyHz)));
    }

    @Override
    public double swr(int index, double frequencyHz, Plane plane) {
      return Look.swr(planes(index, frequencyHz), plane);
    }

    @Override
    public double chokeWatts(int index, double frequencyHz) {
      return chain.chokeWatts(frequencyHz, numbers.ports(flat(index, frequencyHz)));
    }

    @Override
    public double decibels(int index, double frequencyHz, int number) {
      return numbers.decibels(flat(index, frequencyHz), number);
    }

    /** The largest SWR over a range. */
    double worstSwr(int index, Plane plane) {
      double worst = 1;
      for (double frequency : frequencies(index)) {
        worst = Math.max(worst, swr(index, frequency, plane));
      }
      return worst;
    }
  }
}
