package org.spanwire.design;

import java.util.Objects;
import java.util.Optional;
import org.spanwire.geometry.SpanShape;
import org.spanwire.medium.MechanicalProperties;

/**
 * How a wire hangs between its two supports in still air, without stretch: its shape is the path
 * that the antenna has.
 *
 * @param wire name of the wire
 * @param mechanical what the wire weighs and bears
 * @param shape the shape it takes; empty for a sag of 0, the straight line
 */
public record Hang(String wire, MechanicalProperties mechanical, Optional<SpanShape> shape) {

  /**
   * Largest distance in metres of a hanging wire from the straight lines that stand for it in the
   * antenna: a five-thousandth of the wavelength at 30 MHz. They are together shorter than a wire
   * of length L and a sag f by 8/3 of it times f/L, half a millimetre at f/L = 1/10.
   */
  public static final double CHORD_ERROR = 0.002;

  /** Refuses null. */
  public Hang {
    Objects.requireNonNull(wire, "wire");
    Objects.requireNonNull(mechanical, "mechanical");
    Objects.requireNonNull(shape, "shape");
  }
}
