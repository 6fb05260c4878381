package org.spanwire.circuit;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;

/**
 * A linear network of one or more ports at one frequency.
 *
 * <p>Held as scattering parameters S of power waves, b = S a, which exist for every passive
 * network, open and short circuits and ideal transformers included. With the reference impedance
 * Z_i of port i and R_i = Re Z_i &gt; 0,
 *
 * <pre>a_i = (V_i + Z_i I_i)/(2 √R_i)    b_i = (V_i − Z_i* I_i)/(2 √R_i)</pre>
 *
 * <p>with currents into the ports, so that |a_i|² − |b_i|² is the power into port i whatever the
 * reference (K. Kurokawa, "Power waves and the scattering matrix", IEEE Trans. MTT 13, 1965,
 * equations (1) and (4); D. M. Pozar, Microwave Engineering, 4th edition, 2012, sections 4.2 to
 * 4.4; equation numbers from memory). All voltages and currents are rms phasors, time convention
 * exp(+jωt). Ports are counted from 1, as in S21. Immutable.
 */
public final class NPort {

  private final ComplexMatrix s;
  private final Complex[] references;

  private NPort(ComplexMatrix s, Complex[] references) {
    this.s = s;
    this.references = references;
  }

  /**
   * From scattering parameters.
   *
   * @param s square matrix, row = outgoing port, column = incoming port
   * @param references reference impedance of each port in ohms, or one for all; real parts positive
   */
  public static NPort ofScattering(Complex[][] s, Complex... references) {
    return of(ComplexMatrix.of(s), references);
  }

  /** From scattering parameters that share one real reference impedance in ohms. */
  public static NPort ofScattering(Complex[][] s, double referenceOhm) {
    return ofScattering(s, new Complex(referenceOhm, 0));
  }

  /**
   * From open-circuit impedances V = Z I in ohms.
   *
   * @param z square matrix
   * @param references as in {@link #ofScattering}
   */
  public static NPort ofImpedance(Complex[][] z, Complex... references) {
    ComplexMatrix matrix = ComplexMatrix.of(z);
    ComplexMatrix one = ComplexMatrix.identity(matrix.rows());
    return ofEquations(
        one, ComplexMatrix.of(z.length, z.length, (i, j) -> z[i][j].negate()), references);
  }

  /**
   * From short-circuit admittances I = Y V in siemens.
   *
   * @param y square matrix
   * @param references as in {@link #ofScattering}
   */
  public static NPort ofAdmittance(Complex[][] y, Complex... references) {
    ComplexMatrix one = ComplexMatrix.identity(y.length);
    return ofEquations(
        ComplexMatrix.of(y.length, y.length, (i, j) -> y[i][j].negate()), one, references);
  }

  /**
   * From the chain (ABCD) parameters of a 2-port, V1 = A V2 − B I2, I1 = C V2 − D I2 (Pozar
   * (4.69)).
   *
   * @param abcd the matrix {{A, B}, {C, D}}, B in ohms, C in siemens
   * @param references as in {@link #ofScattering}
   */
  public static NPort ofChain(Complex[][] abcd, Complex... references) {
    Complex[][] m = {
      {Complex.ONE, abcd[0][0].negate()}, {Complex.ZERO, abcd[1][0].negate()},
    };
    Complex[][] n = {
      {Complex.ZERO, abcd[0][1]}, {Complex.ONE, abcd[1][1]},
    };
    return ofEquations(ComplexMatrix.of(m), ComplexMatrix.of(n), references);
  }

  static NPort ofEquations(ComplexMatrix m, ComplexMatrix n, Complex... references) {
    Complex[] z = expand(references, m.columns());
    return of(PowerWaves.ofEquations(m, n, z).scattering(), z);
  }

  static NPort of(ComplexMatrix s, Complex... references) {
    if (s.rows() == 0 || s.rows() != s.columns()) {
      throw new IllegalArgumentException(
          "matrix has "
              + s.rows()
              + " rows and "
              + s.columns()
              + " columns; expected a square one");
    }
    if (!s.isFinite()) {
      throw new IllegalArgumentException("network parameters must be finite numbers");
    }
    return new NPort(s, expand(references, s.rows()));
  }

  private static Complex[] expand(Complex[] references, int ports) {
    if (references.length != 1 && references.length != ports) {
      throw new IllegalArgumentException(
          references.length + " reference impedances for " + ports + " ports; give one or all");
    }
    for (Complex z : references) {
      if (!(z.getReal() > 0) || !Double.isFinite(z.abs())) {
        throw new IllegalArgumentException(
            "reference impedance " + z + " ohm must be finite with a positive real part");
      }
    }
    Complex[] all = new Complex[ports];
    Arrays.setAll(all, i -> references[references.length == 1 ? 0 : i]);
    return all;
  }

  /** A network of one port: an impedance in ohms, {@link Complex#INF} for an open circuit. */
  public static NPort load(Complex impedance, double referenceOhm) {
    Complex gamma = Mismatch.of(impedance, referenceOhm).reflection();
    return ofScattering(new Complex[][] {{gamma}}, referenceOhm);
  }

  /** Number of ports. */
  public int ports() {
    return references.length;
  }

  /** Scattering parameter from one port to another, ports from 1. */
  public Complex s(int to, int from) {
    return s.at(index(to), index(from));
  }

  /** Reference impedance of a port in ohms, ports from 1. */
  public Complex reference(int port) {
    return references[index(port)];
  }

  /** All scattering parameters, a copy. */
  public Complex[][] scattering() {
    return s.toArray();
  }

  /**
   * Open-circuit impedances Z in ohms, Z = V I⁻¹ (Pozar (4.25)).
   *
   * @throws CircuitException if there are none, as for an ideal transformer
   */
  public Complex[][] impedance() {
    return PowerWaves.quotient(waves().voltages(), waves().currents(), "impedance").toArray();
  }

  /**
   * Short-circuit admittances Y in siemens.
   *
   * @throws CircuitException if there are none, as for an ideal transformer
   */
  public Complex[][] admittance() {
    return PowerWaves.quotient(waves().currents(), waves().voltages(), "admittance").toArray();
  }

  /**
   * Chain parameters {{A, B}, {C, D}} of a 2-port (Pozar (4.69)).
   *
   * @throws CircuitException if port 2 tells nothing about port 1, or there are not two ports
   */
  public Complex[][] chain() {
    ComplexMatrix v = voltages();
    ComplexMatrix i = currents();
    return PowerWaves.quotient(
            pair(v.at(0, 0), v.at(0, 1), i.at(0, 0), i.at(0, 1)),
            pair(v.at(1, 0), v.at(1, 1), i.at(1, 0).negate(), i.at(1, 1).negate()),
            "chain")
        .toArray();
  }

  /** Voltages of a 2-port for each wave alone. */
  ComplexMatrix voltages() {
    requireTwoPort();
    return waves().voltages();
  }

  /** Currents of a 2-port for each wave alone. */
  ComplexMatrix currents() {
    requireTwoPort();
    return waves().currents();
  }

  static ComplexMatrix pair(Complex a, Complex b, Complex c, Complex d) {
    return ComplexMatrix.of(new Complex[][] {{a, b}, {c, d}});
  }

  /**
   * The same network with other reference impedances, one per port or one for all, in ohms with
   * positive real parts.
   */
  public NPort renormalized(Complex... newReferences) {
    Complex[] z = expand(newReferences, ports());
    return Arrays.equals(z, references) ? this : new NPort(waves().renormalized(z).scattering(), z);
  }

  /** The same network with one real reference impedance in ohms at all ports. */
  public NPort renormalized(double referenceOhm) {
    return renormalized(new Complex(referenceOhm, 0));
  }

  /** This 2-port followed by another: port 2 joined to port 1 of the next. */
  public NPort cascade(NPort next) {
    requireTwoPort();
    next.requireTwoPort();
    return join(2, next, 1);
  }

  /**
   * Joins a port to a port of another network. The ports left over keep their order, this network's
   * first.
   *
   * @throws CircuitException if nothing is left, or currents grow without limit in the loop
   */
  public NPort join(int port, NPort other, int otherPort) {
    index(port);
    other.index(otherPort);
    int own = ports();
    Complex[] all = Arrays.copyOf(references, own + other.ports());
    System.arraycopy(other.references, 0, all, own, other.ports());
    ComplexMatrix both =
        ComplexMatrix.of(
            all.length,
            all.length,
            (i, j) ->
                i < own && j < own
                    ? s.at(i, j)
                    : i >= own && j >= own ? other.s.at(i - own, j - own) : Complex.ZERO);
    return new NPort(both, all).joined(port, own + otherPort);
  }

  /**
   * Joins two ports of this network, V = V' and I = −I'. With Z' renormalized to Z* the waves that
   * leave one port enter the other.
   */
  public NPort joined(int port, int otherPort) {
    int p = index(port);
    int q = index(otherPort);
    if (p == q || ports() < 3) {
      throw new IllegalArgumentException("joining needs two different ports and one that remains");
    }
    Complex[] z = references.clone();
    z[q] = z[p].conjugate();
    ComplexMatrix all = renormalized(z).s;
    int[] inner = {p, q};
    ComplexMatrix swapped = all.part(new int[] {q, p}, range(ports()));
    // a_inner = b_swapped = S_swapped,inner a_inner + S_swapped,outer a_outer.
    ComplexMatrix loop = ComplexMatrix.identity(2).minus(swapped.part(range(2), inner));
    return reduced(all, inner, loop, swapped);
  }

  /**
   * Closes a port with an impedance in ohms, {@link Complex#INF} to leave it open, and drops it.
   *
   * @throws CircuitException if the port is the only one, or the closed loop has no unique answer
   */
  public NPort terminated(int port, Complex impedance) {
    int p = index(port);
    if (ports() < 2) {
      throw new IllegalArgumentException("a network's only port cannot be closed and dropped");
    }
    // a = Γ b with Γ = (Z_L − Z)/(Z_L + Z*), here as d a = n b with both finite.
    Complex z = references[p];
    boolean open = impedance.isInfinite();
    Complex n = open ? Complex.ONE : impedance.subtract(z);
    Complex d = open ? Complex.ONE : impedance.add(z.conjugate());
    double scale = Math.max(n.abs(), d.abs());
    ComplexMatrix driven =
        ComplexMatrix.of(1, ports(), (i, j) -> n.divide(scale).multiply(s.at(p, j)));
    ComplexMatrix loop =
        ComplexMatrix.of(1, 1, (i, j) -> d.divide(scale).subtract(driven.at(0, p)));
    return reduced(s, new int[] {p}, loop, driven);
  }

  /** Removes inner ports, whose incident waves obey loop · a_inner = driven_outer · a_outer. */
  private NPort reduced(ComplexMatrix all, int[] inner, ComplexMatrix loop, ComplexMatrix driven) {
    int[] outer =
        IntStream.range(0, ports())
            .filter(i -> Arrays.stream(inner).noneMatch(k -> k == i))
            .toArray();
    ComplexMatrix waves;
    try {
      waves = loop.solveWaves(driven.part(range(inner.length), outer));
    } catch (ArithmeticException e) {
      throw new CircuitException(
          "joined ports form a loop without a unique answer; give its parts some loss");
    }
    Complex[] kept = Arrays.stream(outer).mapToObj(i -> references[i]).toArray(Complex[]::new);
    return new NPort(all.part(outer, outer).plus(all.part(outer, inner).times(waves)), kept);
  }

  private static int[] range(int size) {
    return IntStream.range(0, size).toArray();
  }

  /**
   * The 2-port that undoes this one: its cascade with this one is a direct connection. Not passive
   * unless this one is lossless.
   */
  public NPort inverse() {
    Complex[][] abcd = chain();
    ComplexMatrix inverse = ComplexMatrix.of(abcd).inverse();
    return ofChain(inverse.toArray(), references[1].conjugate(), references[0].conjugate());
  }

  /**
   * The 2-port between two known ones, where this one is the cascade left, unknown, right as
   * measured.
   */
  public NPort deembedded(NPort left, NPort right) {
    return left.inverse().cascade(this).cascade(right.inverse());
  }

  /** The ports in another order, or some of them with the rest ended in their references. */
  public NPort select(int... order) {
    int[] chosen = Arrays.stream(order).map(this::index).toArray();
    if (Arrays.stream(chosen).distinct().count() != chosen.length) {
      throw new IllegalArgumentException("a port stands twice in " + Arrays.toString(order));
    }
    Complex[] z = Arrays.stream(chosen).mapToObj(i -> references[i]).toArray(Complex[]::new);
    return of(s.part(chosen, chosen), z);
  }

  /**
   * Two ports seen as a differential and a common mode, in the place of the first and the second:
   * V_d = V_p − V_q, I_d = (I_p − I_q)/2, V_c = (V_p + V_q)/2, I_c = I_p + I_q, with reference
   * impedances 2 Z and Z/2, so that a_d = (a_p − a_q)/√2 and a_c = (a_p + a_q)/√2.
   *
   * <p>D. E. Bockelman and W. R. Eisenstadt, "Combined differential and common-mode scattering
   * parameters", IEEE Trans. MTT 43, 1995, equations (5) to (14), numbers from memory.
   *
   * @throws IllegalArgumentException if the two ports differ in reference impedance
   */
  public NPort mixedMode(int positive, int negative) {
    int p = index(positive);
    int q = index(negative);
    if (p == q || !references[p].equals(references[q])) {
      throw new IllegalArgumentException(
          "mixed mode needs two ports of one reference impedance; renormalize them first");
    }
    double half = Math.sqrt(0.5);
    ComplexMatrix m =
        ComplexMatrix.of(
            ports(),
            ports(),
            (i, j) -> {
              if (i != p && i != q) {
                return i == j ? Complex.ONE : Complex.ZERO;
              }
              if (j != p && j != q) {
                return Complex.ZERO;
              }
              return new Complex(i == p && j == q ? -half : half, 0);
            });
    Complex[] z = references.clone();
    z[p] = references[p].multiply(2);
    z[q] = references[p].divide(2);
    return new NPort(m.times(s).times(m.transpose()), z);
  }

  /** Impedance seen into the port of a 1-port, in ohms; {@link Complex#INF} for an open circuit. */
  public Complex inputImpedance() {
    if (ports() != 1) {
      throw new IllegalArgumentException(
          "input impedance needs one port, not " + ports() + "; close the others first");
    }
    Complex gamma = s.at(0, 0);
    Complex down = Complex.ONE.subtract(gamma);
    Complex up = references[0].conjugate().add(references[0].multiply(gamma));
    return down.equals(Complex.ZERO) ? Complex.INF : up.divide(down);
  }

  /**
   * Largest power gain over all excitations, the square of the largest singular value of S: at most
   * 1 for a passive network, 1 for a lossless one.
   */
  public double largestGain() {
    return s.conjugateTranspose().times(s).largestHermitianEigenvalue();
  }

  /** Whether no excitation draws power from the network, within a tolerance of its power gain. */
  public boolean isPassive(double tolerance) {
    return largestGain() <= 1 + tolerance;
  }

  /** Largest |S_ij − S_ji|: 0 for a reciprocal network. */
  public double reciprocityError() {
    return s.minus(s.transpose()).largestMagnitude();
  }

  private void requireTwoPort() {
    if (ports() != 2) {
      throw new IllegalArgumentException("expected a 2-port, got " + ports() + " ports");
    }
  }

  private int index(int port) {
    if (port < 1 || port > references.length) {
      throw new IllegalArgumentException(
          "port " + port + " of a network whose ports are 1 to " + references.length);
    }
    return port - 1;
  }

  ComplexMatrix matrix() {
    return s;
  }

  private PowerWaves waves() {
    return PowerWaves.ofScattering(s, references);
  }

  /** Ports and reference impedances, for messages. */
  @Override
  public String toString() {
    return ports() + "-port, references " + Arrays.toString(references) + " ohm";
  }
}
