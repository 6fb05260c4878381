package org.spanwire.internal.moment;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.halfspace.KernelRegion;
import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.halfspace.ReflectedKernelTable;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * Tables of reflected kernels, kept for the next structure at the same frequency over the same
 * soil. The region of a table is rounded outward to a fixed grid and the table built for that
 * region alone, so that a result does not depend on what was solved before. Safe for use by several
 * threads.
 */
public final class SoilKernels {

  /** Error allowed to a table relative to 1/R', over the accuracy of the integrals. */
  static final double SHARE = 10;

  private static final int MOST_TABLES = 64;

  /** Ratio of the grid to which regions are rounded. */
  private static final double GRID = 1.25;

  private final Map<Key, ReflectedKernelTable> tables =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, ReflectedKernelTable> eldest) {
          return size() > MOST_TABLES;
        }
      };

  private record Key(
      double frequencyHz, Complex permittivity, KernelRegion region, double tolerance) {}

  /**
   * The kernel for a mesh over soil.
   *
   * @param soil the soil below z = 0
   * @param frequencyHz frequency in hertz
   * @param mesh pieces above z = 0
   * @param tolerance error of the kernel relative to 1/R'
   */
  ReflectedKernel kernel(Soil soil, double frequencyHz, Mesh mesh, double tolerance) {
    return kernel(soil, frequencyHz, rounded(region(mesh)), mesh, tolerance);
  }

  /** The kernel for a region, which is taken as it is and holds the mesh. */
  ReflectedKernel kernel(
      Soil soil, double frequencyHz, KernelRegion region, Mesh mesh, double tolerance) {
    ReflectedKernelTable table = table(soil, frequencyHz, region, tolerance);
    List<Piece> pieces = mesh.pieces();
    for (int i = 0; i < pieces.size(); i++) {
      for (int j = i; j < pieces.size(); j++) {
        cover(table, pieces.get(i), pieces.get(j));
      }
    }
    return table;
  }

  private static void cover(ReflectedKernelTable table, Piece a, Piece b) {
    double centres = Math.hypot(a.x(0) - b.x(0), a.y(0) - b.y(0));
    double reach =
        0.5 * a.length() * Math.hypot(a.ux(), a.uy())
            + 0.5 * b.length() * Math.hypot(b.ux(), b.uy());
    table.cover(
        Math.max(0, centres - reach),
        centres + reach,
        Math.min(a.z(-1), a.z(1)) + Math.min(b.z(-1), b.z(1)),
        Math.max(a.z(-1), a.z(1)) + Math.max(b.z(-1), b.z(1)));
  }

  private ReflectedKernelTable table(
      Soil soil, double frequencyHz, KernelRegion region, double tolerance) {
    Key key = new Key(frequencyHz, soil.complexPermittivity(frequencyHz), region, tolerance);
    synchronized (tables) {
      return tables.computeIfAbsent(
          key,
          missing ->
              new ReflectedKernelTable(
                  PhysicalConstants.wavenumber(frequencyHz), key.permittivity, region, tolerance));
    }
  }

  /** The distances between the pieces of a mesh and their images. */
  static KernelRegion region(Mesh mesh) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = 0;
    double west = Double.POSITIVE_INFINITY;
    double east = Double.NEGATIVE_INFINITY;
    double south = Double.POSITIVE_INFINITY;
    double north = Double.NEGATIVE_INFINITY;
    for (Piece piece : mesh.pieces()) {
      for (int t = -1; t <= 1; t += 2) {
        lowest = Math.min(lowest, piece.z(t));
        highest = Math.max(highest, piece.z(t));
        west = Math.min(west, piece.x(t));
        east = Math.max(east, piece.x(t));
        south = Math.min(south, piece.y(t));
        north = Math.max(north, piece.y(t));
      }
    }
    double reach = Math.hypot(east - west, north - south);
    boolean level = highest - lowest < 1e-9 * highest;
    return new KernelRegion(Math.max(reach, lowest), 2 * lowest, level ? 2 * lowest : 2 * highest);
  }

  /**
   * A region for a table that serves a mesh and its neighbour, so that what it errs by is the same
   * for both; the mesh's own if both are level at different heights.
   */
  static KernelRegion region(Mesh mesh, Mesh neighbour) {
    KernelRegion own = region(mesh);
    KernelRegion other = region(neighbour);
    boolean level = own.zetaMin() == own.zetaMax() && other.zetaMin() == other.zetaMax();
    return rounded(
        new KernelRegion(
            Math.max(own.rhoMax(), other.rhoMax()),
            level ? own.zetaMin() : Math.min(own.zetaMin(), other.zetaMin()),
            level ? own.zetaMax() : Math.max(own.zetaMax(), other.zetaMax())));
  }

  /** The same or larger, with ends on a grid. */
  static KernelRegion rounded(KernelRegion region) {
    boolean level = region.zetaMin() == region.zetaMax();
    return new KernelRegion(
        roundUp(region.rhoMax()),
        level ? region.zetaMin() : 1 / roundUp(1 / region.zetaMin()),
        level ? region.zetaMax() : roundUp(region.zetaMax()));
  }

  private static double roundUp(double value) {
    return Math.pow(GRID, Math.ceil(Math.log(value) / Math.log(GRID) - 1e-9));
  }
}
