package org.spanwire.geometry;

import java.util.Objects;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;

/**
 * A generator whose field is spread evenly over a gap of physical width centred at a place of a
 * wire. The port current is the current averaged over the gap, so that V·I* is exactly the complex
 * power delivered.
 *
 * @param name unique name within an antenna
 * @param wire name of the wire
 * @param at where the gap's centre lies
 * @param gap gap width in metres along the wire; empty for two wire diameters
 * @param voltage rms voltage phasor in volts; positive drives current toward increasing distance
 * @param capacitance capacitance in farads across the terminals, in parallel with the gap: of an
 *     insulator, a connection box, a transformer's winding; 0 for none. It belongs to the feed, so
 *     that the feed's current and impedance and the port matrix contain it: Z = 1/(Y + jωC) for a
 *     single feed that would be 1/Y without it
 */
public record Feed(
    String name,
    String wire,
    Position at,
    OptionalDouble gap,
    Complex voltage,
    double capacitance) {

  /** Checks the ranges. */
  public Feed {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(wire, "wire");
    Objects.requireNonNull(at, "at");
    Objects.requireNonNull(gap, "gap");
    Objects.requireNonNull(voltage, "voltage");
    if (gap.isPresent() && !(gap.getAsDouble() > 0)) {
      throw new IllegalArgumentException(
          "feed '" + name + "': gap " + gap.getAsDouble() + " m must be positive");
    }
    if (!(capacitance >= 0) || Double.isInfinite(capacitance)) {
      throw new IllegalArgumentException(
          "feed '" + name + "': capacitance " + capacitance + " F must be at least 0 and finite");
    }
  }

  /** A feed without capacitance across its terminals. */
  public Feed(String name, String wire, Position at, OptionalDouble gap, Complex voltage) {
    this(name, wire, at, gap, voltage, 0);
  }

  /** A feed of 1 V with the default gap. */
  public static Feed of(String name, String wire, Position at) {
    return new Feed(name, wire, at, OptionalDouble.empty(), Complex.ONE);
  }

  /** The same feed elsewhere on its wire. */
  public Feed withPlace(Position place) {
    return new Feed(name, wire, place, gap, voltage, capacitance);
  }

  /** The same feed with a gap width in metres. */
  public Feed withGap(double metres) {
    return new Feed(name, wire, at, OptionalDouble.of(metres), voltage, capacitance);
  }

  /** The same feed with another rms voltage phasor in volts. */
  public Feed withVoltage(Complex volts) {
    return new Feed(name, wire, at, gap, volts, capacitance);
  }

  /** The same feed with a capacitance in farads across its terminals. */
  public Feed withCapacitance(double farads) {
    return new Feed(name, wire, at, gap, voltage, farads);
  }

  /** Admittance jωC in siemens of the capacitance across the terminals. */
  public Complex shuntAdmittance(double frequencyHz) {
    return new Complex(0, 2 * Math.PI * frequencyHz * capacitance);
  }
}
