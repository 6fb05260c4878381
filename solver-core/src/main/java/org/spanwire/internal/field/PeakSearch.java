package org.spanwire.internal.field;

/**
 * Climbs from a direction to the local maximum of the radiation intensity. Coordinates are those of
 * the plane that touches the sphere at the best direction so far, so that zenith and horizon are
 * points like any other. Newton steps from central differences where the surface is curved
 * downward, steps to the best of eight neighbours where it is not (compass search, Kolda, Lewis and
 * Torczon 2003); the stencil shrinks until the intensity is level to rounding.
 */
final class PeakSearch {

  /**
   * The stencil ends at this fraction of the pattern's finest detail; an error of 1e-8 of the
   * intensity needs 1e-4.
   */
  private static final double SMALLEST = 2e-5;

  private static final int MOST_STEPS = 400;

  /** A smaller relative rise is rounding; along a level crest it leads nowhere. */
  private static final double ROUNDING = 1e-13;

  /** Share of the curvatures by which both are enlarged (Levenberg 1944). */
  private static final double DAMPING = 1e-5;

  /** Longest Newton step over the stencil's size. */
  private static final double LONGEST = 2;

  private final FarField field;
  private final double[] work = new double[FarField.WORK];
  private final double[] around = new double[9];

  /** Best direction so far as a unit vector. */
  private double x;

  private double y;
  private double z;
  private double best;

  PeakSearch(FarField field) {
    this.field = field;
  }

  /**
   * Climbs from a unit vector.
   *
   * @param detail angle in radians over which the pattern changes little, the start of the search
   */
  void climb(double fromX, double fromY, double fromZ, double detail) {
    x = fromX;
    y = fromY;
    z = fromZ;
    best = intensity(x, y, z);
    double h = 0.5 * detail;
    for (int step = 0; step < MOST_STEPS && h > SMALLEST * detail; step++) {
      h *= advance(h);
    }
  }

  /** One step; returns the factor for the size of the next stencil. */
  private double advance(double h) {
    double[] across = tangent();
    double level = best;
    int top = 4;
    for (int i = 0; i < 9; i++) {
      around[i] = i == 4 ? level : at(across, (i / 3 - 1) * h, (i % 3 - 1) * h);
      if (around[i] > around[top]) {
        top = i;
      }
    }
    double ga = 0.5 * (around[7] - around[1]);
    double gb = 0.5 * (around[5] - around[3]);
    double haa = around[7] - 2 * level + around[1];
    double hbb = around[5] - 2 * level + around[3];
    double hab = 0.25 * (around[8] - around[6] - around[2] + around[0]);
    // Along a level crest the curvature is rounding only; damping keeps the search from drifting.
    double damping = DAMPING * (Math.abs(haa) + Math.abs(hbb));
    haa -= damping;
    hbb -= damping;
    double determinant = haa * hbb - hab * hab;
    if (haa < 0 && determinant > 1e-6 * haa * haa) {
      double a = clip((hab * gb - hbb * ga) / determinant);
      double b = clip((hab * ga - haa * gb) / determinant);
      double there = at(across, h * a, h * b);
      if (there >= around[top] && there > level * (1 + ROUNDING)) {
        moveTo(across, h * a, h * b);
        // A step that was cut short has not arrived; the next one must not be shorter.
        return Math.max(Math.abs(a), Math.abs(b)) < LONGEST ? 0.25 : 1;
      }
    }
    if (top == 4 || around[top] <= level * (1 + ROUNDING)) {
      return 0.25;
    }
    moveTo(across, (top / 3 - 1) * h, (top % 3 - 1) * h);
    return 1;
  }

  private static double clip(double steps) {
    return Math.max(-LONGEST, Math.min(LONGEST, steps));
  }

  /** Two unit vectors across the present direction. */
  private double[] tangent() {
    double rho = Math.hypot(x, y);
    if (rho < 1e-3) {
      double norm = Math.hypot(x, z);
      double ax = z / norm;
      double az = -x / norm;
      return new double[] {ax, 0, az, y * az, z * ax - x * az, -y * ax};
    }
    double cos = x / rho;
    double sin = y / rho;
    return new double[] {z * cos, z * sin, -rho, -sin, cos, 0};
  }

  private double at(double[] across, double a, double b) {
    double px = x + a * across[0] + b * across[3];
    double py = y + a * across[1] + b * across[4];
    double pz = z + a * across[2] + b * across[5];
    return intensity(px, py, pz);
  }

  private void moveTo(double[] across, double a, double b) {
    double px = x + a * across[0] + b * across[3];
    double py = y + a * across[1] + b * across[4];
    double pz = z + a * across[2] + b * across[5];
    double norm = Math.sqrt(px * px + py * py + pz * pz);
    x = px / norm;
    y = py / norm;
    z = pz / norm;
    best = intensity(x, y, z);
  }

  /**
   * Over a ground the pattern is continued below the horizon as its mirror image, which is smooth
   * for the field's square.
   */
  private double intensity(double px, double py, double pz) {
    double rho = Math.hypot(px, py);
    double norm = Math.hypot(rho, pz);
    double up = field.hasGround() ? Math.abs(pz) : pz;
    double cos = rho == 0 ? 1 : px / rho;
    double sin = rho == 0 ? 0 : py / rho;
    return field.intensity(up / norm, rho / norm, cos, sin, work);
  }

  double intensity() {
    return best;
  }

  double elevationDegrees() {
    double up = field.hasGround() ? Math.abs(z) : z;
    return Math.toDegrees(Math.atan2(up, Math.hypot(x, y)));
  }

  double azimuthDegrees() {
    return Math.toDegrees(Math.atan2(y, x));
  }
}
