package org.spanwire;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.field.AbsorbedPower;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.moment.PortSolution;
import org.spanwire.internal.moment.SoilKernels;
import org.spanwire.medium.Soil;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.Direction;
import org.spanwire.result.EffectiveLength;
import org.spanwire.result.PowerBudget;
import org.spanwire.result.Sensitivity;
import org.spanwire.result.Warning;

/** A solution on one mesh. */
final class SolvedAntenna extends KnownCurrent implements Solution {

  /**
   * At open ends and gap edges the error falls algebraically with the order p, so what is left
   * after the last step grows against that step in proportion to p. The largest ratio seen over
   * random structures is 0.5 (p − 1).
   */
  private static final double ERROR_PER_ORDER = 0.52;

  /** Error over the accuracy of the integrals. */
  static final double PER_ACCURACY = 10;

  private final Antenna antenna;
  private final double frequencyHz;
  private final double integralAccuracy;
  private final SoilKernels tables;
  private final PortSolution ports;
  private final PortNetwork network;
  private final Complex[] feedVoltages;
  private final Complex[] feedCurrents;
  private final Complex[] coarseFeedCurrents;
  private final Complex[] portVoltages;
  private final CurrentExpansion current;
  private final List<Warning> warnings;
  private final CurrentFields fields;

  SolvedAntenna(
      Antenna antenna,
      double frequencyHz,
      PortSolution ports,
      double integralAccuracy,
      SoilKernels tables,
      List<Warning> warnings) {
    this.antenna = antenna;
    this.frequencyHz = frequencyHz;
    this.ports = ports;
    this.integralAccuracy = integralAccuracy;
    this.tables = tables;
    this.warnings = List.copyOf(warnings);
    List<Complex> shunts =
        antenna.feeds().stream().map(f -> f.shuntAdmittance(frequencyHz)).toList();
    List<Complex> loads =
        antenna.fittings().stream().map(f -> f.impedance().at(frequencyHz)).toList();
    network = new PortNetwork(shunts, loads, ports::admittance);
    feedVoltages = antenna.feeds().stream().map(Feed::voltage).toArray(Complex[]::new);
    feedCurrents = network.currents(feedVoltages);
    coarseFeedCurrents =
        new PortNetwork(shunts, loads, ports::coarseAdmittance).currents(feedVoltages);
    portVoltages = network.voltages(feedVoltages);
    current = ports.currents(portVoltages);
    fields = new CurrentFields(ports.mesh().pieces(), current, frequencyHz, antenna.ground());
  }

  private int feedIndex(String name) {
    return IntStream.range(0, antenna.feeds().size())
        .filter(i -> antenna.feeds().get(i).name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "there is no feed '"
                        + name
                        + "'; the feeds are "
                        + antenna.feeds().stream().map(Feed::name).toList()));
  }

  private Complex impedance(int feed, Complex[] currents) {
    return currents[feed].equals(Complex.ZERO)
        ? Complex.INF
        : feedVoltages[feed].divide(currents[feed]);
  }

  /** Error over the change that the highest bubbles make. */
  static double errorPerOrder(int lowestOrder) {
    return ERROR_PER_ORDER * (lowestOrder - 1);
  }

  /** Largest relative error estimate over the feeds. */
  double relativeError() {
    double worst = 0;
    for (Feed feed : antenna.feeds()) {
      Complex z = impedance(feed.name());
      if (!z.isInfinite() && z.abs() > 0) {
        worst = Math.max(worst, impedanceErrorOhm(feed.name()) / z.abs());
      }
    }
    return worst;
  }

  @Override
  public Antenna antenna() {
    return antenna;
  }

  @Override
  public double frequencyHz() {
    return frequencyHz;
  }

  @Override
  public Complex impedance() {
    return impedance(0, feedCurrents);
  }

  @Override
  public Complex impedance(String feed) {
    return impedance(feedIndex(feed), feedCurrents);
  }

  @Override
  public double impedanceErrorOhm(String feed) {
    int index = feedIndex(feed);
    Complex z = impedance(index, feedCurrents);
    double change = impedance(index, coarseFeedCurrents).subtract(z).abs();
    return errorPerOrder(ports.mesh().lowestOrder()) * change
        + PER_ACCURACY * integralAccuracy * z.abs();
  }

  @Override
  public Complex feedCurrent(String feed) {
    return feedCurrents[feedIndex(feed)];
  }

  @Override
  public Complex[][] portMatrix() {
    return network.impedanceMatrix();
  }

  @Override
  public Complex[][] admittanceMatrix() {
    return network.admittanceMatrix();
  }

  @Override
  public Solution driven(List<Complex> voltages) {
    if (voltages.size() != antenna.feeds().size()) {
      throw new IllegalArgumentException(
          "number of voltages "
              + voltages.size()
              + " must be that of the feeds, "
              + antenna.feeds().size());
    }
    Antenna.Builder builder = Antenna.builder().ground(antenna.ground());
    antenna.wires().forEach(builder::wire);
    antenna.fittings().forEach(builder::fitting);
    for (int i = 0; i < voltages.size(); i++) {
      builder.feed(antenna.feeds().get(i).withVoltage(voltages.get(i)));
    }
    return new SolvedAntenna(
        builder.build(), frequencyHz, ports, integralAccuracy, tables, warnings);
  }

  @Override
  public Solution closed(LumpedImpedance impedance) {
    int last = antenna.feeds().size() - 1;
    Feed feed = antenna.feeds().get(last);
    if (last == 0 || feed.capacitance() > 0) {
      throw new IllegalArgumentException(
          "feed '" + feed.name() + "' must be one of several, without a capacitance, to be closed");
    }
    // Ports run through the feeds, then the fittings: the closed one stays where it is.
    Antenna.Builder builder = Antenna.builder().ground(antenna.ground());
    antenna.wires().forEach(builder::wire);
    antenna.feeds().subList(0, last).forEach(builder::feed);
    builder.fitting(new Fitting(feed.name(), feed.wire(), feed.at(), feed.gap(), impedance));
    antenna.fittings().forEach(builder::fitting);
    return new SolvedAntenna(
        builder.build(), frequencyHz, ports, integralAccuracy, tables, warnings);
  }

  @Override
  public Sensitivity sensitivity(DoubleFunction<Antenna> changed, double reach) {
    return new AdmittanceSlopes(antenna, frequencyHz, ports, network, integralAccuracy, tables)
        .of(changed, reach);
  }

  @Override
  public double gap(String feed) {
    return ports.mesh().gaps().get(feedIndex(feed)).nominal();
  }

  @Override
  public Complex current(String wire, double distance) {
    return expansion(wire, distance, LegendrePolynomials::fill, piece -> 1);
  }

  @Override
  public Complex charge(String wire, double distance) {
    Mesh mesh = ports.mesh();
    Complex slope =
        expansion(
            wire,
            distance,
            LegendrePolynomials::fillDerivatives,
            piece -> 2 / mesh.pieces().get(piece).length());
    return slope.multiply(Complex.I).divide(2 * Math.PI * frequencyHz);
  }

  @Override
  public Complex fittingVoltage(String fitting) {
    int index =
        IntStream.range(0, antenna.fittings().size())
            .filter(i -> antenna.fittings().get(i).name().equals(fitting))
            .findFirst()
            .orElseThrow(
                () -> new IllegalArgumentException("there is no fitting '" + fitting + "'"));
    return portVoltages[antenna.feeds().size() + index];
  }

  /** Writes functions of degree 0 to an order at an argument in [−1, 1], times a factor. */
  @FunctionalInterface
  private interface Basis {
    void fill(double t, int order, double factor, double[] out, int offset);
  }

  /** Sum of the current's coefficients times functions of the place within its piece. */
  private Complex expansion(String wire, double distance, Basis basis, IntToDoubleFunction factor) {
    int piece = pieceAt(wire, distance);
    Mesh mesh = ports.mesh();
    double t = 2 * (distance - mesh.distance()[piece]) / mesh.pieces().get(piece).length() - 1;
    int order = mesh.order()[piece];
    double[] p = new double[order + 1];
    basis.fill(Math.max(-1, Math.min(1, t)), order, factor.applyAsDouble(piece), p, 0);
    double re = 0;
    double im = 0;
    for (int n = 0; n <= order; n++) {
      re += p[n] * current.re()[piece][n];
      im += p[n] * current.im()[piece][n];
    }
    return new Complex(re, im);
  }

  private int pieceAt(String wire, double distance) {
    Mesh mesh = ports.mesh();
    Wire found =
        antenna
            .wire(wire)
            .orElseThrow(() -> new IllegalArgumentException("there is no wire '" + wire + "'"));
    double length = found.length();
    if (!(distance >= 0 && distance <= length * (1 + 1e-12))) {
      throw new IllegalArgumentException(
          "distance " + distance + " m must lie on wire '" + wire + "', 0 to " + length + " m");
    }
    int index = antenna.wires().indexOf(found);
    int piece = -1;
    for (int i = 0; i < mesh.size(); i++) {
      if (mesh.wire()[i] == index && (piece < 0 || mesh.distance()[i] <= distance)) {
        piece = i;
      }
    }
    return piece;
  }

  @Override
  public List<CurrentSample> currents(int perWire) {
    if (perWire < 2) {
      throw new IllegalArgumentException(
          "current samples per wire " + perWire + ", needs at least 2");
    }
    List<CurrentSample> samples = new ArrayList<>();
    for (Wire wire : antenna.wires()) {
      double length = wire.length();
      for (int i = 0; i < perWire; i++) {
        double distance = length * i / (perWire - 1);
        samples.add(new CurrentSample(wire.name(), distance, current(wire.name(), distance)));
      }
    }
    return samples;
  }

  @Override
  public double acceptedPower() {
    double power = 0;
    for (int i = 0; i < feedVoltages.length; i++) {
      power += feedVoltages[i].multiply(feedCurrents[i].conjugate()).getReal();
    }
    return power;
  }

  @Override
  double gainPower() {
    return acceptedPower();
  }

  @Override
  CurrentFields fields() {
    return fields;
  }

  @Override
  public EffectiveLength effectiveLength(String feed, Direction direction) {
    int index = feedIndex(feed);
    Complex[][] impedances = network.impedanceMatrix();
    CurrentExpansion unit = ports.currents(network.voltages(impedances[index]));
    return new CurrentFields(ports.mesh().pieces(), unit, frequencyHz, antenna.ground())
        .effectiveLength(direction, Complex.ONE, impedances[index][index]);
  }

  private double radiated() {
    return fields.radiated().watts();
  }

  @Override
  public double radiationEfficiency() {
    return radiated() / acceptedPower();
  }

  private double fittingLoss() {
    double loss = 0;
    for (int f = 0; f < antenna.fittings().size(); f++) {
      Fitting fitting = antenna.fittings().get(f);
      Complex z = fitting.impedance().at(frequencyHz);
      Complex v = portVoltages[antenna.feeds().size() + f];
      if (z.equals(Complex.ZERO) || z.isInfinite()) {
        continue;
      }
      double magnitude = z.abs();
      loss += v.abs() / magnitude * (v.abs() / magnitude) * z.getReal();
    }
    return loss;
  }

  @Override
  public OptionalDouble powerBalance() {
    if (antenna.ground() instanceof Soil) {
      return OptionalDouble.empty();
    }
    PowerBudget budget = powerBudget();
    return OptionalDouble.of(
        (budget.radiated() + budget.conductorLoss() + budget.fittingLoss()) / budget.accepted());
  }

  @Override
  public PowerBudget powerBudget() {
    return new PowerBudget(
        acceptedPower(),
        radiated(),
        ports.distributedLoss(current),
        fittingLoss(),
        OptionalDouble.empty());
  }

  @Override
  public PowerBudget powerBudgetWithSoil() {
    PowerBudget budget = powerBudget();
    if (!(antenna.ground() instanceof Soil soil)) {
      return budget;
    }
    double absorbed =
        AbsorbedPower.of(current, frequencyHz, soil, CurrentFields.POWER_TOLERANCE).watts();
    return new PowerBudget(
        budget.accepted(),
        budget.radiated(),
        budget.conductorLoss(),
        budget.fittingLoss(),
        OptionalDouble.of(absorbed));
  }

  @Override
  public int unknowns() {
    return ports.unknowns();
  }

  @Override
  public List<Warning> warnings() {
    return warnings;
  }
}
