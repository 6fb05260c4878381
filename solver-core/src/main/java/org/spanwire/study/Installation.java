package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.ToleranceException;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.NPort;
import org.spanwire.design.Design;
import org.spanwire.design.FeedLine;
import org.spanwire.design.Stage;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Ground;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.InputImpedance;
import org.spanwire.result.Sensitivity;
import org.spanwire.result.Warning;

/**
 * A design as it is put up: the antenna, the outside of its feed line as a conductor of it where
 * the design gives the route, and the feed chain between its feedpoint and the transmitter.
 * Immutable and safe for use by several threads.
 */
public final class Installation {

  /** Name of the warning that the chokes' effect is not known. */
  public static final String NO_ROUTE = "common-mode-not-modelled";

  /** Name of the warning that the line and its route differ in length. */
  public static final String LINE_LENGTH = "feed-line-length";

  /** Watts that the transmitter is assumed to have where the design states no power. */
  public static final double ASSUMED_POWER = 100;

  private static final double LENGTH_TOLERANCE = 0.02;

  /** Reference in ohms of the scattering parameter of a feedpoint without a feed line. */
  static final double ONE_PORT_REFERENCE = 200;

  /** Diameters from a wire's end within which its charge is that of the model's sharp rim. */
  private static final double RIM_DIAMETERS = 10;

  private final Antenna antenna;
  private final ChainModel chain;
  private final Optional<SplitAntenna> split;
  private final List<Warning> warnings;

  private Installation(Design design, List<Stage> stages, Optional<FeedLine> route) {
    this(design, design.antenna(), stages, route);
  }

  private Installation(
      Design design, Antenna antenna, List<Stage> stages, Optional<FeedLine> route) {
    this.antenna = antenna;
    chain = ChainModel.of(design, stages, route.isPresent());
    split = route.map(line -> SplitAntenna.of(antenna, line));
    warnings =
        split
            .map(cut -> lengthWarning(stages, cut))
            .orElseGet(() -> chain.choke().isEmpty() ? List.of() : List.of(noRoute()));
  }

  /**
   * Builds what a design describes and reads the files that it names.
   *
   * @throws org.spanwire.circuit.TouchstoneException if a transformer's file cannot be used
   * @throws org.spanwire.geometry.GeometryException if the feed line cannot start at the feed
   */
  public static Installation of(Design design) {
    Objects.requireNonNull(design, "design");
    return new Installation(design, design.feedChain(), design.feedLine());
  }

  /** The same with other stages in its feed chain, from the feedpoint. */
  static Installation withStages(Design design, List<Stage> stages) {
    return new Installation(design, stages, design.feedLine());
  }

  /** The same, as if its choke were perfect: without the outside of the feed line. */
  static Installation withoutLine(Design design) {
    return new Installation(design, design.feedChain(), Optional.empty());
  }

  /**
   * The same with a feed line of another length, route and chain alike, and a polarity.
   *
   * @param metres length of the line, positive
   * @throws org.spanwire.geometry.GeometryException if the line cannot lie there
   */
  static Installation ofLine(Design design, double metres, FeedLine.Polarity polarity) {
    Optional<FeedLine> line =
        design.feedLine().map(each -> ofLength(design, each, metres).withPolarity(polarity));
    return new Installation(design, ofLength(design.feedChain(), metres), line);
  }

  /**
   * The same over another ground, and with a feed line of another length if one is given: in the
   * chain, and where the design has its route, there as well.
   *
   * @throws org.spanwire.geometry.GeometryException if the line cannot lie there
   */
  static Installation onSite(Design design, Ground ground, OptionalDouble lineMetres) {
    Antenna there = design.antenna().toBuilder().ground(ground).build();
    if (lineMetres.isEmpty()) {
      return new Installation(design, there, design.feedChain(), design.feedLine());
    }
    double metres = lineMetres.getAsDouble();
    return new Installation(
        design,
        there,
        ofLength(design.feedChain(), metres),
        design.feedLine().map(line -> ofLength(design, line, metres)));
  }

  private static List<Stage> ofLength(List<Stage> stages, double metres) {
    return stages.stream()
        .map(
            stage ->
                stage instanceof Stage.Line each
                    ? new Stage.Line(each.line().withLength(metres))
                    : stage)
        .toList();
  }

  private static FeedLine ofLength(Design design, FeedLine line, double metres) {
    Point feedpoint = SplitAntenna.of(design.antenna(), line).lineWire().path().get(0);
    return line.ofLength(feedpoint, metres);
  }

  private static Warning noRoute() {
    return new Warning(
        NO_ROUTE,
        "choke: its heat and effect are unknown without the line's route; add feed-line: {path: …,"
            + " conductor: …}");
  }

  private static List<Warning> lengthWarning(List<Stage> stages, SplitAntenna cut) {
    double route = cut.lineWire().length();
    double line =
        stages.stream()
            .filter(Stage.Line.class::isInstance)
            .mapToDouble(stage -> ((Stage.Line) stage).length())
            .sum();
    if (Math.abs(route / line - 1) <= LENGTH_TOLERANCE) {
      return List.of();
    }
    return List.of(
        new Warning(
            LINE_LENGTH,
            String.format(
                Locale.ROOT,
                "the line of the feed-chain is %.2f m long, its route %.2f m, more than %.0f %%"
                    + " apart; make them one",
                line,
                route,
                100 * LENGTH_TOLERANCE)));
  }

  /** The antenna as the design has it, without the line. */
  public Antenna antenna() {
    return antenna;
  }

  /**
   * The antenna that is solved: with a feed line, the fed wire cut into two arms and the line as a
   * further wire.
   */
  public Antenna modelled() {
    return split.map(SplitAntenna::antenna).orElse(antenna);
  }

  /** Whether the feed line is part of the antenna. */
  public boolean hasFeedLine() {
    return split.isPresent();
  }

  /** Power in watts that the transmitter has available: the design's, or 100 W. */
  public double powerWatts() {
    return chain.chain().source().availablePower();
  }

  /**
   * Power in watts at the antenna's feed when the transmitter delivers all of its power into the
   * chain, as through a tuner without loss: what the chain loses on the way is gone.
   */
  public double tunedWatts(Operation operation) {
    return operation
        .chain()
        .map(state -> state.deliveredPower() / state.acceptedPower() * powerWatts())
        .orElse(powerWatts());
  }

  /** Reference impedance in ohms of SWR at the feedpoint. */
  public double feedpointReferenceOhm() {
    return chain.feedpointOhm();
  }

  /** Doubts that hold at every frequency. */
  public List<Warning> warnings() {
    return warnings;
  }

  /**
   * Solves at a frequency in hertz.
   *
   * @throws org.spanwire.circuit.CircuitException if a stage has no parameters there
   * @throws ToleranceException if the wanted tolerance could not be reached
   */
  public Operation solve(Solver solver, double frequencyHz) {
    return solveWithPorts(solver, frequencyHz).operation();
  }

  /** Solves, and gives the antenna's terminals as {@link #planes} takes them. */
  FeedLineCircuit.Solved solveWithPorts(Solver solver, double frequencyHz) {
    return operate(antennaSolution(solver, modelled(), frequencyHz));
  }

  /**
   * Solves {@link #modelled}, or the same antenna at another height. With a feed line the error is
   * judged as driven in the circuit: the halves of the gap alone would ask for meshes that nothing
   * needs.
   */
  Solution antennaSolution(Solver solver, Antenna modelled, double frequencyHz) {
    return hasFeedLine()
        ? solver.solve(modelled, frequencyHz, this::relativeError)
        : solver.solve(modelled, frequencyHz);
  }

  /** Relative error of the feed's impedance that a solution of {@link #modelled} amounts to. */
  double relativeError(Solution solution) {
    return operate(solution).operation().relativeError();
  }

  /** What a solution of {@link #modelled} amounts to behind the feed chain. */
  FeedLineCircuit.Solved operate(Solution solution) {
    if (split.isPresent()) {
      return FeedLineCircuit.operate(split.get(), chain, solution);
    }
    Operation operation = withoutLine(solution);
    Complex impedance = operation.feeds().get(0).impedance();
    NPort withCapacitance = NPort.load(impedance, ONE_PORT_REFERENCE);
    Complex across = antenna.feeds().get(0).shuntAdmittance(solution.frequencyHz());
    return new FeedLineCircuit.Solved(
        operation, Terminals.across(withCapacitance, across.negate()), solution);
  }

  /**
   * Slopes of the scattering parameters of the terminals, without a line dS = −½ (1 + S)² R dY.
   *
   * @param solved of this installation
   * @param sensitivity of its antenna, the capacitance across the feed kept
   */
  Complex[][] slopes(FeedLineCircuit.Solved solved, Sensitivity sensitivity) {
    if (split.isPresent()) {
      return FeedLineCircuit.slopes(split.get(), solved.terminals(), sensitivity);
    }
    Complex impedance = solved.operation().feeds().get(0).impedance();
    Complex dy =
        impedance.isInfinite()
            ? sensitivity.admittance().get(0).get(0)
            : sensitivity.impedance().get(0).divide(impedance.multiply(impedance)).negate();
    Complex sum = solved.terminals().s(1, 1).add(1);
    return new Complex[][] {{sum.multiply(sum).multiply(dy).multiply(-0.5 * ONE_PORT_REFERENCE)}};
  }

  /**
   * What the only feed of an antenna without a feed line shows for an impedance that is known
   * already.
   */
  SolvedFeed seen(InputImpedance z, double frequencyHz) {
    Feed feed = antenna.feeds().get(0);
    double gap =
        feed.gap()
            .orElseGet(() -> 4 * antenna.wire(feed.wire()).orElseThrow().conductor().radius());
    ChainState state = chain.chain().at(frequencyHz, z.ohm());
    return new SolvedFeed(feed.name(), z.ohm(), z.errorOhm(), gap, chain.planes(state));
  }

  private Operation withoutLine(Solution solution) {
    List<SolvedFeed> feeds =
        antenna.feeds().stream().map(feed -> solvedFeed(solution, feed)).toList();
    return new Operation(
        solution,
        feeds,
        antenna.feeds().size() == 1 ? chainOf(solution) : Optional.empty(),
        Optional.empty());
  }

  /**
   * What the first feed shows at the planes of the chain.
   *
   * @param terminals of an antenna that differs from this one in nothing but numbers, without a
   *     capacitance across the feed: that is this one's
   */
  List<PlaneMismatch> planes(double frequencyHz, NPort terminals) {
    NPort all = withCapacitance(frequencyHz, terminals);
    if (split.isPresent()) {
      DrivenChain driven = new DrivenChain(chain, frequencyHz, all);
      return chain.planes(driven.end().state());
    }
    return chain.planes(chain.chain().at(frequencyHz, all.inputImpedance()));
  }

  private NPort withCapacitance(double frequencyHz, NPort terminals) {
    return Terminals.across(terminals, antenna.feeds().get(0).shuntAdmittance(frequencyHz));
  }

  /**
   * Numbers that two installations share if their feed chains are the same: what the planes show of
   * terminals that stand for no antenna in particular, the chokes and the power.
   */
  List<Object> chainSignature(double frequencyHz) {
    Complex[] reflections = {new Complex(0.3, 0.2), new Complex(-0.1, 0.4), new Complex(0.2, -0.5)};
    int ports = split.isPresent() ? reflections.length : 1;
    Complex[][] s = new Complex[ports][ports];
    for (int i = 0; i < ports; i++) {
      Arrays.fill(s[i], Complex.ZERO);
      s[i][i] = reflections[i];
    }
    List<Object> signature =
        new ArrayList<>(planes(frequencyHz, NPort.ofScattering(s, ONE_PORT_REFERENCE)));
    signature.add(chain.chokeImpedance(frequencyHz));
    signature.add(powerWatts());
    return signature;
  }

  /** Heat in watts of the chokes at the top of the feed line, which the design must have. */
  double chokeWatts(double frequencyHz, NPort terminals) {
    return new DrivenChain(chain, frequencyHz, withCapacitance(frequencyHz, terminals))
        .full()
        .power(4);
  }

  /**
   * Currents at evenly spaced places of every wire of the design and of the feed line, both ends
   * included, for the feed voltages of the design.
   *
   * @param perWire number of places on each wire, at least 2
   */
  public List<CurrentSample> currents(Operation operation, int perWire) {
    if (split.isEmpty()) {
      return operation.solution().currents(perWire);
    }
    List<CurrentSample> samples = new ArrayList<>();
    for (Wire wire : wires()) {
      for (int i = 0; i < perWire; i++) {
        double at = wire.length() * i / (perWire - 1);
        samples.add(
            new CurrentSample(
                wire.name(), at, split.get().at(operation.solution()::current, wire.name(), at)));
      }
    }
    return samples;
  }

  /** The wires of the design, and the feed line where its route is given. */
  public List<Wire> wires() {
    return split.map(SplitAntenna::wires).orElse(antenna.wires());
  }

  /**
   * Current and charge along every wire of {@link #wires}, ends and bends included, at the power
   * that the feed chain delivers; with several feeds, at the transmitter's power into all of them.
   *
   * @param perWire number of steps along each wire, to which its bends come, at least 1
   */
  public List<WireState> along(Operation operation, int perWire) {
    Solution solution = operation.solution();
    double scale = Math.sqrt(deliveredWatts(operation) / solution.acceptedPower());
    List<WireState> states = new ArrayList<>();
    for (Wire wire : wires()) {
      double rim = Math.min(RIM_DIAMETERS * 2 * wire.conductor().outerRadius(), wire.length() / 4);
      for (double at : places(wire, perWire)) {
        double insideRims = Math.max(rim, Math.min(at, wire.length() - rim));
        states.add(
            new WireState(
                wire.name(),
                at,
                wire.at(at),
                at(solution::current, wire, at).multiply(scale),
                at(solution::charge, wire, insideRims).multiply(scale)));
      }
    }
    return states;
  }

  private static Iterable<Double> places(Wire wire, int steps) {
    SortedSet<Double> places = new TreeSet<>();
    for (int i = 0; i <= steps; i++) {
      places.add(wire.length() * i / steps);
    }
    double along = 0;
    for (int i = 1; i < wire.path().size() - 1; i++) {
      along += wire.path().get(i - 1).distance(wire.path().get(i));
      places.add(along);
    }
    return places;
  }

  private Complex at(SplitAntenna.Along quantity, Wire wire, double distance) {
    return split.isPresent()
        ? split.get().at(quantity, wire.name(), distance)
        : quantity.at(wire.name(), distance);
  }

  /**
   * Power in watts into the antenna at the transmitter's power: what the feed chain delivers; with
   * several feeds all of the transmitter's.
   */
  public double deliveredWatts(Operation operation) {
    return operation.chain().map(ChainState::deliveredPower).orElse(powerWatts());
  }

  private Optional<ChainState> chainOf(Solution solution) {
    return Optional.of(chain.chain().at(solution.frequencyHz(), solution.impedance()));
  }

  private SolvedFeed solvedFeed(Solution solution, Feed feed) {
    ChainState state = chain.chain().at(solution.frequencyHz(), solution.impedance(feed.name()));
    return SolvedFeed.of(solution, feed.name(), chain.planes(state));
  }
}
