package org.spanwire.internal.halfspace;

/**
 * Kernels of the mixed potentials reflected by the ground, source and observer in air above z = 0
 * (formulation C of Michalski and Zheng 1990; Michalski and Mosig 1997). Time convention exp(+jωt).
 * All kernels are in 1/m and leave out the factor 1/(4π) of the free-space kernel exp(−jk0R)/(4πR).
 * With k_z0 = √(k0² − kρ²), k_z1 = √(εk0² − kρ²), Γe = (k_z1 − εk_z0)/(k_z1 + εk_z0), Γh = (k_z0 −
 * k_z1)/(k_z0 + k_z1), D = 2(ε − 1)/[(k_z1 + εk_z0)(k_z0 + k_z1)] and K[f] = ∫ f kρ/(jk_z0) J0(kρρ)
 * exp(−jk_z0ζ) dkρ over 0…∞ they are
 *
 * <ul>
 *   <li>horizontal, of A_x from J_x: K[Γh], over perfect ground −exp(−jk0R')/R';
 *   <li>vertical, of A_z from J_z: K[−Γe + k_z0² D], over perfect ground +exp(−jk0R')/R';
 *   <li>scalar potential: K[Γe − k0² D], over perfect ground −exp(−jk0R')/R';
 *   <li>cross C = ∫ kρ² D J1(kρρ) exp(−jk_z0ζ) dkρ: A_z = +cosφ C from J_x and A_x = −cosφ C from
 *       J_z, φ the azimuth from source to observer; over perfect ground 0;
 * </ul>
 *
 * with R' = √(ρ² + ζ²) the distance from the image. The field of a current moment p at r' is E =
 * −jωμ0 G_A·p/(4π) − ∇(p·∇'G_φ)/(4πjωε0). Implementations are immutable and safe for use by several
 * threads.
 */
public interface ReflectedKernel {

  /** Number of doubles that {@link #evaluate} writes. */
  int VALUES = 8;

  /**
   * Position of the real part of the kernel of the horizontal vector potential; the imaginary part
   * follows.
   */
  int HORIZONTAL = 0;

  /** Position of the kernel of the vertical vector potential. */
  int VERTICAL = 2;

  /** Position of the kernel of the scalar potential. */
  int SCALAR = 4;

  /** Position of the cross kernel. */
  int CROSS = 6;

  /**
   * Writes all four kernels, real and imaginary parts in turn.
   *
   * @param rho horizontal distance ρ of source and observer in metres, not negative
   * @param zeta sum ζ = z + z' of their heights in metres, positive
   * @param out receives {@value #VALUES} values in 1/m from {@code offset} on
   * @throws IllegalArgumentException when ρ or ζ lies outside what the implementation covers
   */
  void evaluate(double rho, double zeta, double[] out, int offset);

  /**
   * Writes only the horizontal and the scalar kernel, at the positions {@link #evaluate} gives
   * them, and leaves the other positions alone: all that horizontal currents need.
   */
  default void evaluateHorizontal(double rho, double zeta, double[] out, int offset) {
    double vr = out[offset + VERTICAL];
    double vi = out[offset + VERTICAL + 1];
    double cr = out[offset + CROSS];
    double ci = out[offset + CROSS + 1];
    evaluate(rho, zeta, out, offset);
    out[offset + VERTICAL] = vr;
    out[offset + VERTICAL + 1] = vi;
    out[offset + CROSS] = cr;
    out[offset + CROSS + 1] = ci;
  }
}
