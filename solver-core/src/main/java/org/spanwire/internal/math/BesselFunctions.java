package org.spanwire.internal.math;

/**
 * Bessel functions J0, J1 and Hankel functions of the second kind H0, H1 of complex argument,
 * relative error below 2e-12 in the stated regions. Small arguments: power series (Abramowitz and
 * Stegun 1964, 9.1.10–9.1.13). Large arguments: Padé approximants [8/8] and [16/16] of the
 * asymptotic series of √(2x/π) eˣ K(x), x = jz (9.7.2, 9.6.4); the function is a Stieltjes function
 * of x, so they converge everywhere off the negative real x axis. Coefficients: exact rational
 * series, 80-digit arithmetic.
 *
 * <p>Results are written as consecutive real and imaginary parts: order zero first, then order one.
 */
public final class BesselFunctions {

  private static final double EULER_GAMMA = 0.57721566490153286061;

  /**
   * Above this modulus the Hankel functions use the [16/16] approximants, above {@link #FAR} the
   * [8/8] ones.
   */
  private static final double HANKEL_NEAR = 4;

  private static final double FAR = 13;

  /** Below this modulus J0 and J1 use their power series: e^|z| costs three digits at most. */
  private static final double SERIES_OF_J = 7;

  private static final double[] P0_NEAR = {
    1.0,
    128.28163942271478,
    7232.5884616367189,
    236839.4415787004,
    5015872.943827687,
    72414987.80138076,
    732057362.67845953,
    5241654723.6944437,
    26590600640.117863,
    94668352198.300712,
    231904890315.70274,
    378381744109.72927,
    390918113819.87549,
    236039630540.39559,
    72694250459.110169,
    8722648288.0323711,
    187851423.84344377
  };
  private static final double[] Q0_NEAR = {
    1.0,
    128.40663942271478,
    7248.5689790645582,
    237736.55735143656,
    5045089.6411213373,
    73029424.881914212,
    740847935.9162603,
    5329470259.4171152,
    27209526627.321212,
    97741907012.893317,
    242530780242.08573,
    403354666486.19667,
    429278553321.99068,
    272205342395.99029,
    91543645450.119448,
    13197881155.752445,
    494237168.63853281
  };
  private static final double[] P1_NEAR = {
    1.0,
    127.33786756154759,
    7124.4842877115401,
    231465.12695103778,
    4863086.7627940654,
    69660609.666857332,
    699068353.87556158,
    4974535487.5804626,
    25134444962.367995,
    89478077330.886321,
    220710834095.23358,
    367112357168.25068,
    395266093108.43869,
    259030726795.07348,
    93655434787.822227,
    15623962641.467085,
    782868756.75640551
  };
  private static final double[] Q1_NEAR = {
    1.0,
    126.96286756154759,
    7076.9903998759598,
    228826.03147306416,
    4778093.4613462964,
    67894932.53135971,
    674145209.30232138,
    4729228645.4737852,
    23433653734.448485,
    81184142866.538765,
    192609165885.30582,
    302527437884.78983,
    298479665769.45563,
    170222052843.65617,
    48699645665.95071,
    5263878603.6224198,
    90651326.13735745
  };
  private static final double[] P0_FAR = {
    1.0,
    32.142975302884119,
    395.45105875083565,
    2380.9655488546877,
    7448.4275199830868,
    11855.614962219233,
    8698.8843480887983,
    2309.2358796151706,
    104.38042543453578
  };
  private static final double[] Q0_FAR = {
    1.0,
    32.267975302884119,
    399.41424316369616,
    2428.6967294241656,
    7726.1820221864299,
    12676.482135914213,
    9880.0411708647732,
    3020.3893470092836,
    221.77191026102195
  };
  private static final double[] P1_FAR = {
    1.0,
    31.677084079898542,
    384.67206457795967,
    2296.9140257718667,
    7209.3676240713733,
    11830.129494479665,
    9542.8476674302451,
    3278.7672552821381,
    329.01081620854064
  };
  private static final double[] Q1_FAR = {
    1.0,
    31.302084079898542,
    373.05097054799772,
    2160.5855857319806,
    6439.7994492337657,
    9634.3820725516416,
    6508.8541314424276,
    1533.8270116867388,
    54.430059885772159
  };

  private BesselFunctions() {}

  /**
   * J0(z) and J1(z) for Re z ≥ 0, Im z ≥ 0.
   *
   * @param out receives Re J0, Im J0, Re J1, Im J1 at 0…3; positions 4…7 are scratch
   */
  public static void besselJ(double re, double im, double[] out) {
    if (re * re + im * im < SERIES_OF_J * SERIES_OF_J) {
      seriesOfJ(re, im, out);
      return;
    }
    // J = (H1 + H2) / 2 with H1(z) the conjugate of H2(conj z).
    rational(re, -im, out);
    double c = Math.cos(re);
    double s = Math.sin(re);
    double decaying = 0.5 * Math.exp(-im);
    double growing = 0.5 * Math.exp(im);
    double a0r = decaying * (out[0] * c + out[1] * s);
    double a0i = decaying * (out[0] * s - out[1] * c);
    double a1r = decaying * (out[2] * c + out[3] * s);
    double a1i = decaying * (out[2] * s - out[3] * c);
    rational(re, im, out);
    double b0r = growing * (out[0] * c + out[1] * s);
    double b0i = growing * (out[1] * c - out[0] * s);
    double b1r = growing * (out[2] * c + out[3] * s);
    double b1i = growing * (out[3] * c - out[2] * s);
    out[0] = a0r + b0r;
    out[1] = a0i + b0i;
    out[2] = a1r + b1r;
    out[3] = a1i + b1i;
  }

  /**
   * Scaled Hankel functions e^{jz} H0⁽²⁾(z) and e^{jz} H1⁽²⁾(z) for −π &lt; arg z ≤ π/4, z ≠ 0.
   * Accurate for −π ≤ arg z ≤ π/12 everywhere and up to π/4 for |z| ≥ 7.
   *
   * @param out receives Re H0, Im H0, Re H1, Im H1 at 0…3; positions 4…7 are scratch
   */
  public static void hankelScaled(double re, double im, double[] out) {
    if (re * re + im * im < HANKEL_NEAR * HANKEL_NEAR) {
      seriesOfHankel(re, im, out);
    } else {
      rational(re, im, out);
    }
  }

  private static void seriesOfJ(double re, double im, double[] out) {
    double qr = -0.25 * (re * re - im * im);
    double qi = -0.5 * re * im;
    double tr = 1;
    double ti = 0;
    double s0r = 1;
    double s0i = 0;
    double s1r = 1;
    double s1i = 0;
    for (int k = 1; k < 60; k++) {
      double f = 1.0 / ((double) k * k);
      double nr = (tr * qr - ti * qi) * f;
      ti = (tr * qi + ti * qr) * f;
      tr = nr;
      s0r += tr;
      s0i += ti;
      s1r += tr / (k + 1);
      s1i += ti / (k + 1);
      if (Math.abs(tr) + Math.abs(ti) < 1e-18) {
        break;
      }
    }
    out[0] = s0r;
    out[1] = s0i;
    out[2] = 0.5 * (re * s1r - im * s1i);
    out[3] = 0.5 * (re * s1i + im * s1r);
  }

  private static void seriesOfHankel(double re, double im, double[] out) {
    double qr = -0.25 * (re * re - im * im);
    double qi = -0.5 * re * im;
    double lr = 0.5 * Math.log(0.25 * (re * re + im * im)) + EULER_GAMMA;
    double li = Math.atan2(im, re);
    double tr = 1;
    double ti = 0;
    double harmonic = 0;
    double j0r = 1;
    double j0i = 0;
    double j1r = 1;
    double j1i = 0;
    double y0r = 0;
    double y0i = 0;
    double y1r = 1;
    double y1i = 0;
    for (int k = 1; k < 60; k++) {
      double f = 1.0 / ((double) k * k);
      double nr = (tr * qr - ti * qi) * f;
      ti = (tr * qi + ti * qr) * f;
      tr = nr;
      harmonic += 1.0 / k;
      double g = 1.0 / (k + 1);
      double h = (2 * harmonic + g) * g;
      j0r += tr;
      j0i += ti;
      j1r += tr * g;
      j1i += ti * g;
      y0r += tr * harmonic;
      y0i += ti * harmonic;
      y1r += tr * h;
      y1i += ti * h;
      if ((Math.abs(tr) + Math.abs(ti)) * harmonic < 1e-18) {
        break;
      }
    }
    double b1r = 0.5 * (re * j1r - im * j1i);
    double b1i = 0.5 * (re * j1i + im * j1r);
    double twoOverPi = 2 / Math.PI;
    double n0r = twoOverPi * (lr * j0r - li * j0i - y0r);
    double n0i = twoOverPi * (lr * j0i + li * j0r - y0i);
    double norm = re * re + im * im;
    double n1r = twoOverPi * (lr * b1r - li * b1i - re / norm - 0.25 * (re * y1r - im * y1i));
    double n1i = twoOverPi * (lr * b1i + li * b1r + im / norm - 0.25 * (re * y1i + im * y1r));
    double scale = Math.exp(-im);
    double c = scale * Math.cos(re);
    double s = scale * Math.sin(re);
    double h0r = j0r + n0i;
    double h0i = j0i - n0r;
    double h1r = b1r + n1i;
    double h1i = b1i - n1r;
    out[0] = h0r * c - h0i * s;
    out[1] = h0r * s + h0i * c;
    out[2] = h1r * c - h1i * s;
    out[3] = h1r * s + h1i * c;
  }

  /**
   * Scaled Hankel functions by the rational approximants: H0 = j √(2/πx) A0(1/x), H1 = −√(2/πx)
   * A1(1/x), x = jz.
   */
  private static void rational(double re, double im, double[] out) {
    double norm = re * re + im * im;
    double vr = -im / norm;
    double vi = -re / norm;
    boolean far = norm > FAR * FAR;
    ratio(far ? P0_FAR : P0_NEAR, far ? Q0_FAR : Q0_NEAR, vr, vi, out, 4);
    ratio(far ? P1_FAR : P1_NEAR, far ? Q1_FAR : Q1_NEAR, vr, vi, out, 6);
    double modulus = Math.sqrt(vr * vr + vi * vi);
    double rr;
    double ri;
    if (vr >= 0) {
      rr = Math.sqrt(0.5 * (modulus + vr));
      ri = 0.5 * vi / rr;
    } else {
      ri = Math.copySign(Math.sqrt(0.5 * (modulus - vr)), vi);
      rr = 0.5 * vi / ri;
    }
    double f = Math.sqrt(2 / Math.PI);
    rr *= f;
    ri *= f;
    out[0] = -(rr * out[5] + ri * out[4]);
    out[1] = rr * out[4] - ri * out[5];
    out[2] = -(rr * out[6] - ri * out[7]);
    out[3] = -(rr * out[7] + ri * out[6]);
  }

  private static void ratio(double[] p, double[] q, double vr, double vi, double[] out, int at) {
    int top = p.length - 1;
    double pr = p[top];
    double pi = 0;
    double qr = q[top];
    double qi = 0;
    for (int k = top - 1; k >= 0; k--) {
      double t = pr * vr - pi * vi + p[k];
      pi = pr * vi + pi * vr;
      pr = t;
      t = qr * vr - qi * vi + q[k];
      qi = qr * vi + qi * vr;
      qr = t;
    }
    double inverse = 1 / (qr * qr + qi * qi);
    out[at] = (pr * qr + pi * qi) * inverse;
    out[at + 1] = (pi * qr - pr * qi) * inverse;
  }
}
