package org.spanwire.internal.field;

import java.util.List;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.math.SphericalBesselSum;
import org.spanwire.internal.mesh.Piece;

/**
 * The current moment N(k) = ∫ I(r') û e^{+j k·r'} ds' of a current along straight pieces, in ampere
 * metres rms, for wave vectors k = k0 (s_x, s_y, s_z). Exact on each piece: ∫_{−1}^{1} P_n(t)
 * e^{jxt} dt = 2 jⁿ j_n(x) (DLMF 10.54.2). For directions of propagation each piece is the tube
 * that the impedance matrix knows: its current lies evenly around the radius a, which multiplies
 * its share by J_0(k0 a sin ψ), ψ the angle to the wire. Fading waves take the current on the axis;
 * the difference is of order (a/height)². Immutable; the arrays of results belong to the caller, so
 * that several threads may evaluate at once and nothing is allocated per direction.
 */
final class CurrentSpectrum {

  /**
   * Length of the array that {@link #pair} writes: two vectors of three complex numbers and two
   * places of scratch.
   */
  static final int WORK = 16;

  /** Place of the second vector of {@link #pair}. */
  static final int REFLECTED = 6;

  private static final int SCRATCH = 12;

  /** Attenuation beyond which a piece is below every rounding error. */
  private static final double DEAD = 700;

  private final int count;

  /** Centres and half lengths times k0, lengths in metres; three coordinates for each piece. */
  private final double[] centre;

  private final double[] half;
  private final double[] moment;

  /** 1/(k0 h/2) and −(k0 a)²/4 for each piece of length h and radius a. */
  private final double[] inverseHalf;

  private final double[] tube;

  /** Legendre coefficients times jⁿ. */
  private final double[][] re;

  private final double[][] im;

  CurrentSpectrum(CurrentExpansion current, double wavenumber) {
    List<Piece> pieces = current.pieces();
    count = pieces.size();
    centre = new double[3 * count];
    half = new double[3 * count];
    moment = new double[3 * count];
    inverseHalf = new double[count];
    tube = new double[count];
    re = new double[count][];
    im = new double[count][];
    for (int i = 0; i < count; i++) {
      Piece p = pieces.get(i);
      double[] point = {p.x(0), p.y(0), p.z(0)};
      double[] unit = {p.ux(), p.uy(), p.uz()};
      for (int axis = 0; axis < 3; axis++) {
        centre[3 * i + axis] = wavenumber * point[axis];
        half[3 * i + axis] = 0.5 * wavenumber * p.length() * unit[axis];
        moment[3 * i + axis] = p.length() * unit[axis];
      }
      inverseHalf[i] = 2 / (wavenumber * p.length());
      tube[i] = -0.25 * wavenumber * wavenumber * p.radius() * p.radius();
      rotate(current.re()[i], current.im()[i], i);
    }
  }

  private void rotate(double[] cRe, double[] cIm, int piece) {
    re[piece] = new double[cRe.length];
    im[piece] = new double[cRe.length];
    for (int n = 0; n < cRe.length; n++) {
      boolean even = n % 2 == 0;
      double sign = n % 4 < 2 ? 1 : -1;
      re[piece][n] = even ? sign * cRe[n] : -sign * cIm[n];
      im[piece][n] = even ? sign * cIm[n] : sign * cRe[n];
    }
  }

  /**
   * N for the real vector (sx, sy, sz): work[0..5] = N_x, N_y, N_z as pairs of real and imaginary
   * part; with {@code both} also for (sx, sy, −sz) from {@link #REFLECTED} on.
   */
  void evaluate(double sx, double sy, double sz, boolean both, double[] work) {
    for (int i = 0; i < SCRATCH; i++) {
      work[i] = 0;
    }
    for (int i = 0; i < count; i++) {
      double across = sx * half[3 * i] + sy * half[3 * i + 1];
      double along = sz * half[3 * i + 2];
      double phase = sx * centre[3 * i] + sy * centre[3 * i + 1];
      double lift = sz * centre[3 * i + 2];
      SphericalBesselSum.real(re[i], im[i], across + along, work, SCRATCH);
      add(i, phase + lift, aroundTube(i, across + along), work, 0);
      if (both) {
        if (along != 0) {
          SphericalBesselSum.real(re[i], im[i], across - along, work, SCRATCH);
        }
        add(i, phase - lift, aroundTube(i, across - along), work, REFLECTED);
      }
    }
  }

  /** J_0(k0 a sin ψ) by its power series (DLMF 10.2.2), to 1e-10 for k0 a below 0.5. */
  private double aroundTube(int piece, double phaseOfHalf) {
    double cosine = phaseOfHalf * inverseHalf[piece];
    double q = tube[piece] * (1 - cosine * cosine);
    return 1 + q * (1 + q / 4 * (1 + q / 9 * (1 + q / 16)));
  }

  /**
   * N for the vector (sx, sy, +j decay), decay positive: a wave that fades like e^{−k0 decay z} as
   * seen from the ground.
   */
  void evaluateEvanescent(double sx, double sy, double decay, double[] work) {
    for (int i = 0; i < REFLECTED; i++) {
      work[i] = 0;
    }
    for (int i = 0; i < count; i++) {
      double attenuation = decay * bottom(i);
      if (attenuation > DEAD) {
        continue;
      }
      double across = sx * half[3 * i] + sy * half[3 * i + 1];
      SphericalBesselSum.scaledComplex(
          re[i], im[i], across, decay * half[3 * i + 2], work, SCRATCH);
      add(i, sx * centre[3 * i] + sy * centre[3 * i + 1], Math.exp(-attenuation), work, 0);
    }
  }

  private void add(int piece, double phase, double scale, double[] work, int at) {
    double cos = scale * Math.cos(phase);
    double sin = scale * Math.sin(phase);
    double sumRe = work[SCRATCH] * cos - work[SCRATCH + 1] * sin;
    double sumIm = work[SCRATCH] * sin + work[SCRATCH + 1] * cos;
    for (int axis = 0; axis < 3; axis++) {
      work[at + 2 * axis] += moment[3 * piece + axis] * sumRe;
      work[at + 2 * axis + 1] += moment[3 * piece + axis] * sumIm;
    }
  }

  private double bottom(int piece) {
    return centre[3 * piece + 2] - Math.abs(half[3 * piece + 2]);
  }

  /** Σ ∫ |I| ds, or a little more, in ampere metres: no |N| is larger. */
  double largestMoment() {
    double sum = 0;
    for (int i = 0; i < count; i++) {
      double size = 0;
      for (int n = 0; n < re[i].length; n++) {
        size += Math.hypot(re[i][n], im[i][n]);
      }
      double length = Math.hypot(moment[3 * i], Math.hypot(moment[3 * i + 1], moment[3 * i + 2]));
      sum += length * size;
    }
    return sum;
  }

  /** Smallest height above z = 0, times k0. */
  double lowest() {
    double lowest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      lowest = Math.min(lowest, bottom(i));
    }
    return lowest;
  }

  /** Half the extent along an axis (0, 1, 2) of all pieces that reach below a height, times k0. */
  private double halfExtent(int axis, double height) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      if (bottom(i) <= height) {
        low = Math.min(low, centre[3 * i + axis] - Math.abs(half[3 * i + axis]));
        high = Math.max(high, centre[3 * i + axis] + Math.abs(half[3 * i + axis]));
      }
    }
    return high > low ? 0.5 * (high - low) : 0;
  }

  /**
   * Radius of an upright cylinder about all pieces that reach below a height (times k0), times k0.
   */
  double horizontalRadius(double height) {
    return Math.hypot(halfExtent(0, height), halfExtent(1, height));
  }

  /** Radius of an upright cylinder about all pieces, times k0. */
  double horizontalRadius() {
    return horizontalRadius(Double.POSITIVE_INFINITY);
  }

  /** Half the vertical extent, times k0. */
  double halfHeight() {
    return halfExtent(2, Double.POSITIVE_INFINITY);
  }

  /** Largest distance from the origin in any coordinate, times k0. */
  double reach() {
    double reach = 0;
    for (int i = 0; i < 3 * count; i++) {
      reach = Math.max(reach, Math.abs(centre[i]) + Math.abs(half[i]));
    }
    return reach;
  }

  /** Largest height above z = 0, times k0. */
  double highest() {
    double highest = 0;
    for (int i = 0; i < count; i++) {
      highest = Math.max(highest, centre[3 * i + 2] + Math.abs(half[3 * i + 2]));
    }
    return highest;
  }
}
