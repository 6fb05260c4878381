package org.spanwire.validation;

import java.util.List;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.PrescribedCurrent;
import org.spanwire.geometry.Wire;
import org.spanwire.unit.PhysicalConstants;

/**
 * Currents of 1 A at their maximum on the wires of a structure, in the place of a solution: what
 * closed forms assume. The parameter {@value #PARAMETER} names their course along each wire.
 */
final class Prescribed {

  /** Name of the parameter. */
  static final String PARAMETER = "current";

  private Prescribed() {}

  static boolean isAskedFor(Structure structure) {
    return structure.parameters().has(PARAMETER);
  }

  /** The currents on all wires, that of the second ahead by {@code phaseDegrees}. */
  static PrescribedCurrent of(Structure structure) {
    List<Wire> wires = structure.antenna().wires();
    PrescribedCurrent.Builder currents = start(structure);
    double phase = Math.toRadians(structure.parameters().number("phaseDegrees", 0));
    for (int i = 0; i < wires.size(); i++) {
      DoubleFunction<Complex> course = course(structure, wires.get(i));
      Complex factor = i == 1 ? new Complex(Math.cos(phase), Math.sin(phase)) : Complex.ONE;
      currents.wire(wires.get(i), s -> course.apply(s).multiply(factor));
    }
    return currents.build();
  }

  /** Induced-EMF impedance of one wire, or between two, referred to the currents at the feeds. */
  static Complex impedance(Structure structure, int one, int other) {
    Complex terminals = terminal(structure, one).multiply(terminal(structure, other));
    return of(structure, one).reaction(of(structure, other)).negate().divide(terminals);
  }

  private static PrescribedCurrent of(Structure structure, int index) {
    Wire wire = structure.antenna().wires().get(index);
    return start(structure).wire(wire, course(structure, wire)).build();
  }

  private static PrescribedCurrent.Builder start(Structure structure) {
    return PrescribedCurrent.builder(structure.frequencyHz()).ground(structure.antenna().ground());
  }

  /** The current where the wire is fed: at the foot of a monopole, else in the middle. */
  private static Complex terminal(Structure structure, int index) {
    Wire wire = structure.antenna().wires().get(index);
    double feed = structure.shape() == Shape.MONOPOLE ? 0 : 0.5 * wire.length();
    return course(structure, wire).apply(feed);
  }

  private static DoubleFunction<Complex> course(Structure structure, Wire wire) {
    double k = PhysicalConstants.wavenumber(structure.frequencyHz());
    double length = wire.length();
    String name = structure.parameters().text(PARAMETER, "");
    return switch (name) {
      case "sinusoidal" ->
          structure.shape() == Shape.MONOPOLE
              ? s -> new Complex(Math.sin(k * (length - s)))
              : s -> new Complex(Math.sin(k * (0.5 * length - Math.abs(s - 0.5 * length))));
      case "standing" -> s -> new Complex(Math.sin(k * s));
      case "travelling" -> s -> new Complex(Math.cos(k * s), -Math.sin(k * s));
      case "uniform" -> s -> Complex.ONE;
      default -> throw new IllegalArgumentException("no current is called '" + name + "'");
    };
  }
}
