package org.spanwire.circuit;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.unit.PhysicalConstants;

/**
 * A stack of equal ring cores of rectangular section.
 *
 * @param outerDiameter metres
 * @param innerDiameter metres, positive and below the outer one
 * @param height of one ring, metres, positive
 * @param count number of rings, at least 1
 * @param material permeability
 */
public record ToroidCore(
    double outerDiameter,
    double innerDiameter,
    double height,
    int count,
    PermeabilityTable material) {

  /** Checks the ranges. */
  public ToroidCore {
    Objects.requireNonNull(material, "material");
    if (!(innerDiameter > 0) || !(outerDiameter > innerDiameter) || !(height > 0) || count < 1) {
      throw new IllegalArgumentException(
          "core of %s m outer and %s m inner diameter, %s m high, %s rings: give positive sizes, the inner smaller"
              .formatted(outerDiameter, innerDiameter, height, count));
    }
  }

  /**
   * Inductance of one turn in henries as if the core were air, (μ0/2π) h ln(OD/ID) for the whole
   * stack (closed form of the flux through a rectangular section).
   */
  public double airInductance() {
    return PhysicalConstants.MAGNETIC_CONSTANT
        / (2 * Math.PI)
        * height
        * count
        * Math.log(outerDiameter / innerDiameter);
  }

  /**
   * Impedance of a winding in ohms, jωN²L0(μ′ − jμ″) (Snelling, Soft Ferrites, 1988, chapter 2,
   * from memory), in parallel with a stray capacitance.
   *
   * @param turns number of turns, at least 1
   * @param strayCapacitance farads, not negative
   */
  public LumpedImpedance winding(int turns, double strayCapacitance) {
    if (turns < 1 || !(strayCapacitance >= 0)) {
      throw new IllegalArgumentException(
          "winding of %d turns and %s F: give at least one turn and no negative capacitance"
              .formatted(turns, strayCapacitance));
    }
    return f -> {
      double w = 2 * Math.PI * f;
      Complex z = new Complex(0, w * turns * turns * airInductance()).multiply(material.at(f));
      return z.reciprocal().add(new Complex(0, w * strayCapacitance)).reciprocal();
    };
  }

  /** Length in metres of one turn of thin line around the section of the stack. */
  public double turnLength() {
    return outerDiameter - innerDiameter + 2 * height * count;
  }

  /** Area of the section in square metres, which the flux of every turn crosses. */
  public double section() {
    return (outerDiameter - innerDiameter) / 2 * height * count;
  }

  /** Area in square metres that gives off heat: outside, inside and both faces of the stack. */
  public double surface() {
    double side = Math.PI * (outerDiameter + innerDiameter) * height * count;
    double faces = Math.PI / 2 * (outerDiameter * outerDiameter - innerDiameter * innerDiameter);
    return side + faces;
  }

  /** Volume of the stack in cubic metres. */
  public double volume() {
    return Math.PI
        / 4
        * (outerDiameter * outerDiameter - innerDiameter * innerDiameter)
        * height
        * count;
  }
}
