package org.spanwire;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.field.AbsorbedPower;
import org.spanwire.internal.field.CurrentFit;
import org.spanwire.internal.field.Reaction;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.medium.PerfectGround;
import org.spanwire.medium.Soil;
import org.spanwire.result.Direction;
import org.spanwire.result.EffectiveLength;
import org.spanwire.unit.PhysicalConstants;

/**
 * Line currents given as functions of the distance along wires, over a ground. They flow on the
 * wires' axes and are fitted by polynomials to 1e-10 of the largest current on the wire. Fields are
 * those of the currents alone; where a current does not end at zero, the charge it leaves there is
 * part of the field. Gain is relative to the power radiated and absorbed by the ground. Immutable
 * and safe for use by several threads.
 */
public final class PrescribedCurrent extends KnownCurrent {

  private static final double REACTION_TOLERANCE = 1e-7;

  private final double frequencyHz;
  private final Ground ground;
  private final CurrentExpansion wires;
  private final CurrentExpansion axes;
  private final CurrentFields fields;

  /** Computed on first use. */
  private Double absorbed;

  private PrescribedCurrent(
      double frequencyHz, Ground ground, CurrentExpansion wires, CurrentExpansion axes) {
    this.frequencyHz = frequencyHz;
    this.ground = ground;
    this.wires = wires;
    this.axes = axes;
    fields = new CurrentFields(wires.pieces(), axes, frequencyHz, ground);
  }

  /**
   * Starts currents in free space at a frequency in hertz.
   *
   * @throws IllegalArgumentException if the frequency is not positive and finite
   */
  public static Builder builder(double frequencyHz) {
    return new Builder(frequencyHz);
  }

  /** Collects currents. Not thread-safe. */
  public static final class Builder {
    private final double frequencyHz;
    private final List<Wire> wires = new ArrayList<>();
    private final List<DoubleFunction<Complex>> currents = new ArrayList<>();
    private Ground ground = Ground.freeSpace();

    private Builder(double frequencyHz) {
      if (!(frequencyHz > 0) || Double.isInfinite(frequencyHz)) {
        throw new IllegalArgumentException(
            "frequency " + frequencyHz + " Hz must be positive and finite");
      }
      this.frequencyHz = frequencyHz;
    }

    /** Sets what lies below z = 0. */
    public Builder ground(Ground value) {
      ground = Objects.requireNonNull(value, "ground");
      return this;
    }

    /**
     * Adds a wire and its current.
     *
     * @param wire the wire; of its conductor the radius counts only
     * @param current rms current phasor in amperes at a distance in metres from the wire's first
     *     point, positive toward increasing distance; smooth but for cusps, a jump needs a path
     *     point and two wires
     */
    public Builder wire(Wire wire, DoubleFunction<Complex> current) {
      wires.add(Objects.requireNonNull(wire, "wire"));
      currents.add(Objects.requireNonNull(current, "current"));
      return this;
    }

    /**
     * The currents.
     *
     * @throws IllegalArgumentException without wires, for a wire below the ground, or for a current
     *     that is not finite or jumps
     */
    public PrescribedCurrent build() {
      if (wires.isEmpty()) {
        throw new IllegalArgumentException("there is no wire; add at least one");
      }
      CurrentFit fit = new CurrentFit(0.5 * PhysicalConstants.wavelength(frequencyHz));
      for (int i = 0; i < wires.size(); i++) {
        fit.add(wires.get(i), currents.get(i));
      }
      return checked(frequencyHz, ground, fit.alongWires(), fit.alongAxes());
    }
  }

  private static PrescribedCurrent checked(
      double frequencyHz, Ground ground, CurrentExpansion wires, CurrentExpansion axes) {
    double lowest =
        wires.pieces().stream().mapToDouble(p -> Math.min(p.z(-1), p.z(1))).min().orElseThrow();
    boolean fits =
        ground instanceof FreeSpace || (ground instanceof PerfectGround ? lowest >= 0 : lowest > 0);
    if (!fits) {
      throw new IllegalArgumentException(
          "the lowest point of the wires is at z = "
              + lowest
              + " m; raise them above the ground surface at 0 m");
    }
    return new PrescribedCurrent(frequencyHz, ground, wires, axes);
  }

  /** The same currents over another ground. */
  public PrescribedCurrent over(Ground other) {
    return checked(frequencyHz, Objects.requireNonNull(other, "other"), wires, axes);
  }

  @Override
  public double frequencyHz() {
    return frequencyHz;
  }

  /** Power in watts radiated into the sky, without a ground in all directions. */
  public double radiatedPower() {
    return fields.radiated().watts();
  }

  /** Power in watts absorbed by soil, from the transmitted field; zero without soil. */
  public synchronized double absorbedPower() {
    if (absorbed == null) {
      absorbed =
          ground instanceof Soil soil
              ? AbsorbedPower.of(axes, frequencyHz, soil, CurrentFields.POWER_TOLERANCE).watts()
              : 0.0;
    }
    return absorbed;
  }

  @Override
  CurrentFields fields() {
    return fields;
  }

  @Override
  double gainPower() {
    return radiatedPower() + absorbedPower();
  }

  /**
   * Reaction ∫ E·J in volt-amperes of the field of this current with another current, over this
   * one's ground (Rumsey 1954). The impedance between them is Z = −reaction/(I1 I2), I1 and I2 the
   * currents at the terminals; with itself it is the induced-EMF impedance, the field of the axis
   * tested at the surface. Between wires the distance R is taken as √(R² + (a1² + a2²)/2), a their
   * radii.
   */
  public Complex reaction(PrescribedCurrent other) {
    if (other.frequencyHz != frequencyHz) {
      throw new IllegalArgumentException(
          "frequencies " + frequencyHz + " Hz and " + other.frequencyHz + " Hz must be the same");
    }
    return Reaction.of(wires, other.wires, frequencyHz, ground, REACTION_TOLERANCE);
  }

  /**
   * Effective length towards a direction, and the induced-EMF impedance.
   *
   * @param terminalCurrent rms current phasor in amperes at the terminals, not zero
   */
  public EffectiveLength effectiveLength(Direction direction, Complex terminalCurrent) {
    Complex impedance = reaction(this).negate().divide(terminalCurrent.multiply(terminalCurrent));
    return fields.effectiveLength(direction, terminalCurrent, impedance);
  }
}
