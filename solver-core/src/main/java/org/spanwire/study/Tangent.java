package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.design.DesignException;
import org.spanwire.geometry.GeometryException;
import org.spanwire.result.Sensitivity;

/**
 * What an installation shows to first order around given values of its parameters: the scattering
 * parameters of its terminals and their slopes from one solution per frequency, the feed chain
 * exact. Gains have no slopes here: they are no matter of the ports.
 */
final class Tangent {

  /** Steps over the reach at which slopes of what follows from the terminals are taken. */
  private static final double STEP = 1e-3;

  /** A range may hold a bend of a wire that a smaller one does not. */
  private static final double SMALLER = 0.1;

  private final ParameterBox box;
  private final double[] centre;
  private final double[] reach;
  private final PortNumbers numbers;
  private final Solver solver;
  private final Map<Double, FeedLineCircuit.Solved> solved = new ConcurrentHashMap<>();
  private final Map<Place, Optional<double[]>> slopes = new ConcurrentHashMap<>();

  private record Place(double frequencyHz, int parameter) {}

  /**
   * Prepares.
   *
   * @param box parameters
   * @param centre their values in SI units
   * @param reach changes that are small for each of them, in SI units
   */
  Tangent(ParameterBox box, double[] centre, double[] reach, Solver solver) {
    this.box = box;
    this.centre = centre.clone();
    this.reach = reach.clone();
    this.solver = solver;
    numbers = new PortNumbers(box.base().feedLine().isPresent(), List.of());
  }

  /** Solves at frequencies in hertz and finds the slopes there, on several threads. */
  void prepare(List<Double> frequenciesHz, Workers workers) {
    List<Double> distinct = frequenciesHz.stream().distinct().toList();
    List<Callable<FeedLineCircuit.Solved>> solutions = new ArrayList<>();
    distinct.forEach(f -> solutions.add(() -> solved(f)));
    workers.run(solutions);
    List<Callable<Optional<double[]>>> tasks = new ArrayList<>();
    for (double frequency : distinct) {
      for (int i = 0; i < centre.length; i++) {
        int parameter = i;
        tasks.add(() -> slopes(frequency, parameter));
      }
    }
    workers.run(tasks);
  }

  private Installation installation() {
    return Installation.of(box.with(centre));
  }

  private FeedLineCircuit.Solved solved(double frequencyHz) {
    FeedLineCircuit.Solved known = solved.get(frequencyHz);
    if (known == null) {
      known = installation().solveWithPorts(solver, frequencyHz);
      solved.put(frequencyHz, known);
    }
    return known;
  }

  private double[] moved(int parameter, double by) {
    double[] values = centre.clone();
    values[parameter] += by;
    return values;
  }

  /** Slopes of the flat numbers of the terminals; none if the antenna cannot change smoothly. */
  private Optional<double[]> slopes(double frequencyHz, int parameter) {
    Place place = new Place(frequencyHz, parameter);
    Optional<double[]> known = slopes.get(place);
    if (known == null) {
      known = differentiated(frequencyHz, parameter, reach[parameter]);
      if (known.isEmpty()) {
        known = differentiated(frequencyHz, parameter, SMALLER * reach[parameter]);
      }
      slopes.put(place, known);
    }
    return known;
  }

  private Optional<double[]> differentiated(double frequencyHz, int parameter, double width) {
    FeedLineCircuit.Solved at = solved(frequencyHz);
    try {
      Sensitivity sensitivity =
          at.antenna()
              .sensitivity(
                  by ->
                      sameCapacitances(
                          ParameterBox.modelled(box.with(moved(parameter, by))),
                          at.antenna().antenna()),
                  width);
      Complex[][] ds = installation().slopes(at, sensitivity);
      return Optional.of(PortNumbers.flat(ds.length, (i, j) -> ds[i][j]));
    } catch (GeometryException | DesignException e) {
      // Parts of the antenna meet or part within the reach, or the value is at its limit.
      return Optional.empty();
    }
  }

  /** What lies across the feeds belongs to the chain, which is exact. */
  private static Antenna sameCapacitances(Antenna changed, Antenna like) {
    Antenna.Builder builder = Antenna.builder().ground(changed.ground());
    changed.wires().forEach(builder::wire);
    changed.fittings().forEach(builder::fitting);
    for (int i = 0; i < changed.feeds().size(); i++) {
      double farads = like.feeds().get(i).capacitance();
      builder.feed(changed.feeds().get(i).withCapacitance(farads));
    }
    return builder.build();
  }

  /** What is read off an installation at a frequency. */
  @FunctionalInterface
  interface Reading {
    double of(Linear look, double frequencyHz);
  }

  /** The value of a reading. */
  double value(Reading reading, double frequencyHz) {
    return reading.of(at(0, 0, new double[0]), frequencyHz);
  }

  /**
   * Slope of a reading of SWR or heat against a parameter, per SI unit; empty if the antenna cannot
   * change smoothly or the parameter may go to one side only.
   */
  Optional<Double> slope(Reading reading, double frequencyHz, int parameter) {
    double step = STEP * reach[parameter];
    return slopes(frequencyHz, parameter)
        .map(
            flat -> {
              double above = reading.of(at(parameter, step, flat), frequencyHz);
              double below = reading.of(at(parameter, -step, flat), frequencyHz);
              return (above - below) / (2 * step);
            });
  }

  /**
   * How fast the reflection coefficient Γ at the transmitter moves with a parameter, |dΓ|/(1 −
   * |Γ|²): the speed of the hyperbolic plane, which a line without loss leaves as it is and which
   * keeps even for a reactance that grows evenly. Empty as at {@link #slope}.
   */
  Optional<Double> speed(double frequencyHz, int parameter) {
    Optional<Double> re = slope((at, f) -> at.reflection(f).getReal(), frequencyHz, parameter);
    Optional<Double> im = slope((at, f) -> at.reflection(f).getImaginary(), frequencyHz, parameter);
    double square = value((at, f) -> Math.pow(at.reflection(f).abs(), 2), frequencyHz);
    return re.flatMap(x -> im.map(y -> Math.hypot(x, y) / (1 - square)));
  }

  private Linear at(int parameter, double by, double[] slope) {
    Installation chain = by == 0 ? installation() : Installation.of(box.with(moved(parameter, by)));
    return new Linear(chain, by, slope);
  }

  /** The installation with one parameter off the centre. */
  final class Linear implements Look {
    private final Installation chain;
    private final double by;
    private final double[] slope;

    private Linear(Installation chain, double by, double[] slope) {
      this.chain = chain;
      this.by = by;
      this.slope = slope;
    }

    private double[] flat(double frequencyHz) {
      FeedLineCircuit.Solved at = solved(frequencyHz);
      double[] flat =
          PortNumbers.flat(at.terminals().ports(), (i, j) -> at.terminals().s(i + 1, j + 1));
      for (int i = 0; i < slope.length; i++) {
        flat[i] += by * slope[i];
      }
      return flat;
    }

    /** Reflection coefficient at the transmitter. */
    Complex reflection(double frequencyHz) {
      return chain.planes(frequencyHz, numbers.ports(flat(frequencyHz))).stream()
          .filter(each -> each.plane() == Plane.TRANSMITTER)
          .findFirst()
          .orElseThrow()
          .mismatch()
          .reflection();
    }

    @Override
    public double swr(int range, double frequencyHz, Plane plane) {
      return Look.swr(chain.planes(frequencyHz, numbers.ports(flat(frequencyHz))), plane);
    }

    @Override
    public double chokeWatts(int range, double frequencyHz) {
      return chain.chokeWatts(frequencyHz, numbers.ports(flat(frequencyHz)));
    }

    @Override
    public double decibels(int range, double frequencyHz, int number) {
      throw new UnsupportedOperationException("gains are no matter of the ports");
    }
  }

  /** Number of solutions it took. */
  int solves() {
    return solved.size();
  }
}
