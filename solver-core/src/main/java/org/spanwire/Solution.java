package org.spanwire;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.Direction;
import org.spanwire.result.EffectiveLength;
import org.spanwire.result.PowerBudget;
import org.spanwire.result.Sensitivity;
import org.spanwire.result.Warning;

/**
 * An antenna solved at one frequency. Immutable and safe for use by several threads; far fields are
 * computed when asked for.
 *
 * <p>Phasors are rms with time convention exp(+jωt). Gain counts conductor and ground loss,
 * mismatch not.
 */
public interface Solution extends FieldSource {

  /** The antenna that was solved, with the voltages that drive its feeds. */
  Antenna antenna();

  /** Power in watts that all feeds together deliver to the antenna, Re Σ V·I*. */
  double acceptedPower();

  /**
   * Input impedance in ohms of the first feed with all feeds driven as stated; infinite for zero
   * current.
   */
  Complex impedance();

  /** Input impedance in ohms of a feed with all feeds driven as stated. */
  Complex impedance(String feed);

  /** Estimate of the error of |{@link #impedance(String)}| in ohms. */
  double impedanceErrorOhm(String feed);

  /**
   * Current in amperes out of a feed's generator with all feeds driven as stated: the current of
   * the wire averaged over the gap, and that of the capacitance across the terminals.
   */
  Complex feedCurrent(String feed);

  /**
   * Open-circuit impedance matrix in ohms between the feeds, in the order of the antenna's feeds;
   * symmetric. A fresh copy.
   */
  Complex[][] portMatrix();

  /**
   * Short-circuit admittance matrix in siemens between the feeds, in the order of the antenna's
   * feeds: entry (i, j) is the current into feed i for 1 V at feed j and 0 V at the others.
   * Symmetric. A fresh copy.
   */
  Complex[][] admittanceMatrix();

  /**
   * The same antenna with other voltages at its feeds, from the same factorisation.
   *
   * @param voltages rms phasors in volts, one for each feed in the antenna's order
   * @throws IllegalArgumentException if their number is not that of the feeds
   */
  Solution driven(List<Complex> voltages);

  /**
   * The same antenna with an impedance in place of its last feed's generator, from the same
   * factorisation: the feed becomes a fitting of its name.
   *
   * @param impedance what closes the feed; its gap and place stay
   * @throws IllegalArgumentException if the antenna has one feed only, or the last one has a
   *     capacitance
   */
  Solution closed(LumpedImpedance impedance);

  /**
   * How fast what the feeds show changes with a parameter of the antenna, to first order and from
   * the currents solved for: for a symmetric impedance matrix Z with currents x_p for 1 V at port
   * p, dY_pq/dt = −x_pᵀ (dZ/dt) x_q, so that one factorisation serves all parameters (adjoint
   * network sensitivity: S. W. Director and R. A. Rohrer, IEEE Trans. Circuit Theory 16, 318,
   * 1969). dZ/dt is differentiated on the pieces of this solution, moved with the antenna, whose
   * stated error therefore does not turn into jumps.
   *
   * @param changed the antenna with its parameter changed by an amount, of the same parts as this
   *     one in the same order; all that may change are places, dimensions, materials, impedances
   *     and the constants of soil
   * @param reach largest change of the parameter that is tried, to either side, positive: small
   *     enough for the antenna to keep its shape, large enough to be felt; about a hundredth of
   *     what would make it another antenna
   * @throws org.spanwire.geometry.GeometryException if a changed antenna does not consist of the
   *     same parts
   */
  Sensitivity sensitivity(DoubleFunction<Antenna> changed, double reach);

  /** Gap width in metres that was used for a feed. */
  double gap(String feed);

  /** Current in amperes at a distance in metres along a wire, with all feeds driven as stated. */
  Complex current(String wire, double distance);

  /**
   * Charge per length in coulombs per metre at a distance in metres along a wire, q = −(1/jω) dI/ds
   * by the exact derivative of the current's expansion, with all feeds driven as stated.
   *
   * <p>Toward the rim of an open end the charge of the model, a thin tube, grows without limit like
   * one over the square root of the distance; within a few radii of an end it is that of the tube,
   * not of a wire's end. As a derivative the charge at a single place is less accurate than the
   * current: about a percent where impedances are asked for to 0.1 %.
   */
  Complex charge(String wire, double distance);

  /**
   * Voltage in volts across a fitting in the sense of a generator, −Z times the current through it,
   * with all feeds driven as stated.
   */
  Complex fittingVoltage(String fitting);

  /** Currents at evenly spaced places of every wire, both ends included. */
  List<CurrentSample> currents(int perWire);

  /**
   * Effective length of a feed towards a direction, from reciprocity: what a plane wave from there
   * induces at the open feed, all other feeds open and all fittings in place (Sinclair 1950).
   */
  EffectiveLength effectiveLength(String feed, Direction direction);

  /** Power radiated into the sky over power accepted. */
  double radiationEfficiency();

  /**
   * Power radiated plus power lost over power accepted: 1 within the solver's error. Empty over
   * soil, where {@link #powerBudgetWithSoil} computes the absorbed power too.
   */
  OptionalDouble powerBalance();

  /** Where the power goes, the power absorbed by soil left out. */
  PowerBudget powerBudget();

  /**
   * Where the power goes, the power absorbed by soil computed on its own from the transmitted
   * field.
   */
  PowerBudget powerBudgetWithSoil();

  /** Number of unknowns solved for. */
  int unknowns();

  /** Named doubts about this result. */
  List<Warning> warnings();
}
