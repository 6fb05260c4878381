package org.spanwire.internal.halfspace;

/**
 * Spectral factors of the four kernels, lengths in units of 1/k0: with w = k_z0/k0 and q = k_z1/k0
 * = √(ε − 1 + w²) it writes Γh, −Γe + w² D, Γe − D and D as real and imaginary parts. No factor is
 * divided by the transverse wavenumber.
 */
final class ReflectionSpectrum {

  final double epsRe;
  final double epsIm;

  ReflectionSpectrum(double epsRe, double epsIm) {
    this.epsRe = epsRe;
    this.epsIm = epsIm;
  }

  /** √|ε − 1|. */
  double rootOfContrast() {
    return Math.sqrt(Math.hypot(epsRe - 1, epsIm));
  }

  void at(double wr, double wi, double qr, double qi, double[] f) {
    double ar = epsRe * wr - epsIm * wi;
    double ai = epsRe * wi + epsIm * wr;
    double er = qr + ar; // q + εw
    double ei = qi + ai;
    double hr = qr + wr; // q + w
    double hi = qi + wi;
    double dr = er * hr - ei * hi;
    double di = er * hi + ei * hr;
    double norm = 1 / (dr * dr + di * di);
    double vr = dr * norm; // 1/[(q + εw)(q + w)]
    double vi = -di * norm;
    double gr = qr - ar;
    double gi = qi - ai;
    double tr = gr * hr - gi * hi;
    double ti = gr * hi + gi * hr;
    double geR = tr * vr - ti * vi; // Γe
    double geI = tr * vi + ti * vr;
    gr = wr - qr;
    gi = wi - qi;
    tr = gr * er - gi * ei;
    ti = gr * ei + gi * er;
    f[0] = tr * vr - ti * vi;
    f[1] = tr * vi + ti * vr;
    finish(
        wr,
        wi,
        geR,
        geI,
        2 * ((epsRe - 1) * vr - epsIm * vi),
        2 * ((epsRe - 1) * vi + epsIm * vr),
        f);
  }

  /**
   * The values for +q less those for −q, in closed form: ΔΓh = 4qw/(ε − 1), ΔΓe = 4qεw/N, ΔD =
   * 4qw(ε + 1)/N with N = (ε − 1)[(ε + 1)w² − 1].
   */
  void jump(double wr, double wi, double qr, double qi, double[] f) {
    double br = epsRe - 1;
    double norm = 4 / (br * br + epsIm * epsIm);
    double tr = (qr * wr - qi * wi) * norm;
    double ti = (qr * wi + qi * wr) * norm;
    double hr = tr * br + ti * epsIm; // 4qw/(ε − 1)
    double hi = ti * br - tr * epsIm;
    double w2r = wr * wr - wi * wi;
    double w2i = 2 * wr * wi;
    double nr = (epsRe + 1) * w2r - epsIm * w2i - 1;
    double ni = (epsRe + 1) * w2i + epsIm * w2r;
    norm = 1 / (nr * nr + ni * ni);
    double xr = (hr * nr + hi * ni) * norm; // 4qw/N
    double xi = (hi * nr - hr * ni) * norm;
    f[0] = hr;
    f[1] = hi;
    double er = epsRe * xr - epsIm * xi;
    double ei = epsRe * xi + epsIm * xr;
    finish(wr, wi, er, ei, er + xr, ei + xi, f);
  }

  private static void finish(
      double wr, double wi, double er, double ei, double dr, double di, double[] f) {
    double w2r = wr * wr - wi * wi;
    double w2i = 2 * wr * wi;
    f[2] = w2r * dr - w2i * di - er;
    f[3] = w2r * di + w2i * dr - ei;
    f[4] = er - dr;
    f[5] = ei - di;
    f[6] = dr;
    f[7] = di;
  }
}
