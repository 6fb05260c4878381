package org.spanwire.internal.mesh;

/**
 * How fine a mesh is. Next to feeds, free ends, bends and junctions pieces start at a size tied to
 * the radius and grow geometrically up to the largest size; the polynomial order grows with a
 * piece's electrical length.
 *
 * @param largest largest piece over wavelength
 * @param growth ratio of neighbouring pieces, above 1
 * @param smallest size of the pieces next to a singular place, over the radius
 * @param order polynomial order of electrically short pieces, at least 2
 */
public record MeshDensity(double largest, double growth, double smallest, int order) {

  /** Largest growth and smallest piece of each level. */
  private static final double[] GROWTH = {20, 20, 10, 8, 6, 5, 5, 4, 4};

  private static final double[] SMALLEST = {2, 1, 0.5, 0.12, 0.03, 0.01, 0.003, 0.001, 0.0003};

  private static final int LOWEST_ORDER = 3;

  /** Typical relative error of the input impedance of dipoles, Vs and junctions at each level. */
  private static final double[] TYPICAL_ERROR = {
    5e-4, 2e-4, 4e-5, 8e-6, 1e-6, 3e-7, 1e-7, 3e-8, 1e-8
  };

  /** The finest refinement level. */
  public static final int FINEST_LEVEL = GROWTH.length - 1;

  /**
   * Density of a refinement level, 0 being the coarsest. Every level raises the orders by one; most
   * refine the grading too, since the error left at an open end or a gap's edge is in proportion to
   * the smallest piece.
   */
  public static MeshDensity level(int level) {
    return new MeshDensity(0.5, GROWTH[level], SMALLEST[level], LOWEST_ORDER + level);
  }

  /** The coarsest level that has a fair chance of a relative error below a tolerance. */
  public static int levelFor(double tolerance) {
    int level = 0;
    while (level < FINEST_LEVEL && 2 * TYPICAL_ERROR[level] > tolerance) {
      level++;
    }
    return level;
  }

  /** Polynomial order for a piece of electrical length kh in radians. */
  public int orderFor(double kh) {
    return order + (int) (1.1 * kh);
  }
}
