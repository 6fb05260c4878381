package org.spanwire.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.unit.PhysicalConstants;

/**
 * Voltages, currents, surface fields and heat of a solved antenna at a stated power, and the power
 * at which each part reaches its limit. Immutable.
 *
 * <p>The power is that accepted by the antenna at its feeds: loss and mismatch before them are left
 * out, which errs to the safe side. Voltages of wires are the scalar potential in the Lorenz gauge
 * against infinity, which over perfect ground is against ground too; over soil the quasi-static
 * image stands for the ground, good to some percent for wires higher than they are thick many times
 * over.
 */
public final class Ratings {

  /**
   * No nearer to a wire's end than this many diameters: there the model is a tube with a sharp rim,
   * the wire an eye in an insulator.
   */
  private static final double END_DIAMETERS = 2;

  private final Antenna antenna;
  private final Solution solution;
  private final double watts;
  private final double scale;
  private final ChargePotential potential;

  /**
   * Scales a solution to a power.
   *
   * @param antenna the antenna that was solved
   * @param solution its solution, which must accept power
   * @param watts power accepted at the feeds, positive
   */
  public Ratings(Antenna antenna, Solution solution, double watts) {
    if (!(watts > 0) || Double.isInfinite(watts)) {
      throw new IllegalArgumentException("power " + watts + " W must be positive and finite");
    }
    double accepted =
        antenna.feeds().stream()
            .mapToDouble(
                f -> f.voltage().multiply(solution.feedCurrent(f.name()).conjugate()).getReal())
            .sum();
    if (!(accepted > 0)) {
      throw new IllegalArgumentException(
          "the antenna accepts no power at "
              + solution.frequencyHz()
              + " Hz, so it cannot be rated there");
    }
    this.antenna = antenna;
    this.solution = solution;
    this.watts = watts;
    this.scale = Math.sqrt(watts / accepted);
    this.potential = new ChargePotential(antenna, solution);
  }

  /** The power in watts that the figures are for. */
  public double watts() {
    return watts;
  }

  /**
   * What a place of a wire bears.
   *
   * @param wire name of the wire
   * @param distance metres from its first point
   * @param volts rms voltage, see the class
   * @param amperes rms current
   * @param surfaceField peak field in volts per metre in the air at the wire's surface, √2 |q| /
   *     (2π ε0 b) with the outer radius b
   * @param heat watts per metre turned into heat by the conductor's resistance
   */
  public record Place(
      String wire,
      double distance,
      double volts,
      double amperes,
      double surfaceField,
      double heat) {

    /** Peak voltage: √2 times the rms voltage. */
    public double peakVolts() {
      return Math.sqrt(2) * volts;
    }
  }

  /**
   * What evenly spaced places of every wire bear, the first and last two diameters from the ends.
   */
  public List<Place> places(int perWire) {
    if (perWire < 2) {
      throw new IllegalArgumentException("places per wire " + perWire + ", needs at least 2");
    }
    List<Place> places = new ArrayList<>();
    for (Wire wire : antenna.wires()) {
      double margin = margin(wire);
      for (int i = 0; i < perWire; i++) {
        double share = i / (perWire - 1.0);
        places.add(place(wire, margin + share * (wire.length() - 2 * margin)));
      }
    }
    return places;
  }

  /** What the free ends of the wires bear, two diameters before each; may be empty. */
  public List<Place> ends() {
    List<Place> ends = new ArrayList<>();
    for (Wire wire : antenna.wires()) {
      double margin = margin(wire);
      if (isFree(wire, wire.path().get(0))) {
        ends.add(place(wire, margin));
      }
      if (isFree(wire, wire.path().get(wire.path().size() - 1))) {
        ends.add(place(wire, wire.length() - margin));
      }
    }
    return ends;
  }

  private boolean isFree(Wire wire, Point end) {
    return CutList.end(antenna, wire, end).kind() == Leg.End.Kind.FREE;
  }

  private static double margin(Wire wire) {
    return Math.min(END_DIAMETERS * 2 * wire.conductor().outerRadius(), 0.25 * wire.length());
  }

  private Place place(Wire wire, double distance) {
    Conductor conductor = wire.conductor();
    double amperes = scale * solution.current(wire.name(), distance).abs();
    double charge = scale * solution.charge(wire.name(), distance).abs();
    double field =
        Math.sqrt(2)
            * charge
            / (2 * Math.PI * PhysicalConstants.ELECTRIC_CONSTANT * conductor.outerRadius());
    double resistance = conductor.surfaceImpedance(solution.frequencyHz()).getReal();
    return new Place(
        wire.name(),
        distance,
        scale * potential.at(wire.at(distance)).abs(),
        amperes,
        field,
        amperes * amperes * resistance);
  }

  /** Rms voltage across a feed. */
  public double feedVolts(String feed) {
    Feed found =
        antenna.feeds().stream()
            .filter(f -> f.name().equals(feed))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("there is no feed '" + feed + "'"));
    return scale * found.voltage().abs();
  }

  /** Rms current through a feed. */
  public double feedAmperes(String feed) {
    return scale * solution.feedCurrent(feed).abs();
  }

  /** Rms voltage across a fitting. */
  public double fittingVolts(String fitting) {
    return scale * solution.fittingVoltage(fitting).abs();
  }

  /** Watts lost in a fitting. */
  public double fittingWatts(String fitting) {
    Fitting found =
        antenna.fittings().stream()
            .filter(f -> f.name().equals(fitting))
            .findFirst()
            .orElseThrow(
                () -> new IllegalArgumentException("there is no fitting '" + fitting + "'"));
    Complex impedance = found.impedance().at(solution.frequencyHz());
    if (impedance.isInfinite() || impedance.equals(Complex.ZERO)) {
      return 0;
    }
    double amperes = fittingVolts(fitting) / impedance.abs();
    return amperes * amperes * impedance.getReal();
  }

  /**
   * A power that a part bears.
   *
   * @param part the wire's name
   * @param cause why no more
   * @param watts power accepted by the antenna: peak envelope power for corona, average power for
   *     heat; infinite if the part sets no limit
   */
  public record Limit(String part, Cause cause, double watts) {

    /** Why a part bears no more. */
    public enum Cause {
      /** The air around the wire discharges. */
      CORONA,
      /** The wire grows too hot. */
      HEAT
    }

    /** Peak envelope power in watts that the part bears in a mode. */
    public double envelopeWatts(OperatingMode mode) {
      return cause == Cause.HEAT ? watts / mode.duty() : watts;
    }
  }

  /**
   * The limits of all wires, the lowest peak envelope power first.
   *
   * @param perWire number of places looked at on every wire
   * @param mode mode of operation, for the order
   */
  public List<Limit> limits(int perWire, Corona corona, WireCooling cooling, OperatingMode mode) {
    List<Limit> limits = new ArrayList<>();
    List<Place> places = places(perWire);
    for (Wire wire : antenna.wires()) {
      List<Place> here = places.stream().filter(p -> p.wire().equals(wire.name())).toList();
      double radius = wire.conductor().outerRadius();
      double field = here.stream().mapToDouble(Place::surfaceField).max().orElseThrow();
      double heat = here.stream().mapToDouble(Place::heat).max().orElseThrow();
      double ratio = corona.onset(radius) / field;
      limits.add(new Limit(wire.name(), Limit.Cause.CORONA, watts * ratio * ratio));
      limits.add(
          new Limit(
              wire.name(), Limit.Cause.HEAT, watts * cooling.wattsPerMetre(2 * radius) / heat));
    }
    limits.sort(Comparator.comparingDouble(limit -> limit.envelopeWatts(mode)));
    return limits;
  }
}
