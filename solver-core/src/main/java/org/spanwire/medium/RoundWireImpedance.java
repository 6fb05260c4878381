package org.spanwire.medium;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.ModifiedBesselRatio;
import org.spanwire.internal.math.ScaledModifiedBessel;
import org.spanwire.unit.PhysicalConstants;

/**
 * Axial field over circular magnetic field, E/H in ohms, at the surface of a round wire of one or
 * two metals (Schelkunoff, Bell System Technical Journal 13, 1934, section on the surface impedance
 * of cylindrical conductors and laminated conductors; Ramo, Whinnery and Van Duzer 1994, section
 * 3.16). With γ² = jωμσ the field in a metal is E = A I0(γr) + B K0(γr), H = (σ/γ)(A I1(γr) − B
 * K1(γr)), time convention exp(+jωt).
 */
final class RoundWireImpedance {

  private RoundWireImpedance() {}

  /** Solid wire of a radius in metres: (γ/σ) I0(γa)/I1(γa). */
  static Complex solid(Material metal, double radius, double frequencyHz) {
    if (metal.isPerfect()) {
      return Complex.ZERO;
    }
    Complex gamma = propagation(metal, frequencyHz);
    return ModifiedBesselRatio.zeroOverOne(gamma.multiply(radius))
        .multiply(gamma)
        .divide(metal.conductivity());
  }

  /**
   * A layer of metal around something whose E/H is known at the layer's inner radius.
   *
   * @param core E/H in ohms at the inner radius
   * @param metal the layer's metal
   * @param inner inner radius in metres, positive
   * @param outer outer radius in metres, above the inner one
   */
  static Complex clad(
      Complex core, Material metal, double inner, double outer, double frequencyHz) {
    if (metal.isPerfect()) {
      return Complex.ZERO;
    }
    Complex gamma = propagation(metal, frequencyHz);
    Complex intrinsic = gamma.divide(metal.conductivity());
    ScaledModifiedBessel in = ScaledModifiedBessel.at(gamma.multiply(inner));
    ScaledModifiedBessel out = ScaledModifiedBessel.at(gamma.multiply(outer));
    Complex s = core.divide(intrinsic);
    // B/A from E = core H at the inner radius, its exponential e^(2 γ inner) joined with
    // e^(−2 γ outer) of K/I at the outer one, so that a thick layer decays instead of overflowing.
    Complex reflected =
        s.multiply(in.i1())
            .subtract(in.i0())
            .divide(s.multiply(in.k1()).add(in.k0()))
            .multiply(gamma.multiply(2 * (inner - outer)).exp());
    Complex e = out.i0().add(reflected.multiply(out.k0()));
    Complex h = out.i1().subtract(reflected.multiply(out.k1()));
    return intrinsic.multiply(e).divide(h);
  }

  private static Complex propagation(Material metal, double frequencyHz) {
    double permeability = PhysicalConstants.MAGNETIC_CONSTANT * metal.relativePermeability();
    double half = Math.sqrt(Math.PI * frequencyHz * permeability * metal.conductivity());
    return new Complex(half, half);
  }
}
