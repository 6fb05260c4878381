package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Point;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.halfspace.ReflectedFieldKernel;
import org.spanwire.internal.halfspace.ReflectedFieldTable;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.medium.PerfectGround;
import org.spanwire.medium.Soil;
import org.spanwire.result.NearField;
import org.spanwire.unit.PhysicalConstants;

/**
 * Electric and magnetic field of a current at any distance, over any ground: the direct field,
 * exact for tubes that carry their current evenly around (for lines where the radius is 0), plus
 * that of the image in perfect ground or the Sommerfeld integrals over soil, the wave along the
 * surface included. Immutable and safe for use by several threads.
 */
public final class FieldAtPoint {

  private static final double DIRECT_ACCURACY = 1e-11;
  private static final double FINEST_KERNEL = 1e-12;

  /** Radius over distance from which tubes are lines, over the tolerance. */
  private static final double TUBE_SHARE = 5;

  private final double k;
  private final Ground ground;
  private final Complex permittivity;
  private final double smoothing2;
  private final double tolerance;
  private final boolean tabulated;
  private final List<SourcePiece> direct = new ArrayList<>();
  private final List<Terminal> terminals;
  private final List<Stretch> stretches;
  private final List<Terminal> charges;
  private final Optional<ReflectedFieldTable> table;

  /**
   * Prepares the field of a current.
   *
   * @param current the current, rms amperes; over a ground all pieces lie at z ≥ 0, over soil at z
   *     &gt; 0
   * @param frequencyHz frequency in hertz, positive
   * @param ground what lies below z = 0
   * @param relativeTolerance wanted error relative to the field's magnitude, for example 1e-6; over
   *     soil where direct and reflected field cancel, not below 1e-12 of either
   */
  public FieldAtPoint(
      CurrentExpansion current, double frequencyHz, Ground ground, double relativeTolerance) {
    this(current, frequencyHz, ground, relativeTolerance, 0, false);
  }

  /** The same with a distance in metres over which the field of line currents is smoothed. */
  FieldAtPoint(
      CurrentExpansion current,
      double frequencyHz,
      Ground ground,
      double relativeTolerance,
      double smoothing) {
    this(current, frequencyHz, ground, relativeTolerance, smoothing, false);
  }

  /**
   * The same for very many points: away from the tubes their currents count as lines, and over soil
   * the Sommerfeld integrals come from a table that grows with the places looked at. The error of
   * direct and reflected field each is the tolerance; where the two cancel it is more against their
   * sum.
   */
  public static FieldAtPoint tabulated(
      CurrentExpansion current, double frequencyHz, Ground ground, double relativeTolerance) {
    return new FieldAtPoint(current, frequencyHz, ground, relativeTolerance, 0, true);
  }

  private FieldAtPoint(
      CurrentExpansion current,
      double frequencyHz,
      Ground ground,
      double relativeTolerance,
      double smoothing,
      boolean tabulated) {
    this.k = PhysicalConstants.wavenumber(frequencyHz);
    this.ground = ground;
    this.tolerance = relativeTolerance;
    this.tabulated = tabulated;
    this.smoothing2 = smoothing * smoothing;
    double largest = 0;
    List<SourcePiece> sources = new ArrayList<>();
    for (int i = 0; i < current.pieces().size(); i++) {
      Piece piece = current.pieces().get(i);
      double[] re = current.re()[i];
      double[] im = current.im()[i];
      sources.add(SourcePiece.of(piece, re, im, 1));
      for (int n = 0; n < re.length; n++) {
        largest = Math.max(largest, Math.hypot(re[n], im[n]));
      }
    }
    direct.addAll(sources);
    if (ground instanceof PerfectGround) {
      for (int i = 0; i < sources.size(); i++) {
        Piece image = current.pieces().get(i).image();
        direct.add(SourcePiece.of(image, current.re()[i], current.im()[i], -1));
      }
    }
    terminals = Terminal.alongAxes(direct, largest);
    permittivity =
        ground instanceof Soil soil ? soil.complexPermittivity(frequencyHz) : Complex.ONE;
    stretches = Stretch.of(direct);
    charges = Terminal.charges(direct, largest);
    table =
        tabulated && ground instanceof Soil
            ? Optional.of(new ReflectedFieldTable(k, permittivity, 0.1 * relativeTolerance))
            : Optional.empty();
  }

  /**
   * Field at a point outside the conductors, over a ground at z ≥ 0.
   *
   * @throws IllegalArgumentException below a ground
   */
  public NearField at(Point point) {
    double[] field = new double[DirectField.VALUES];
    evaluate(point.x(), point.y(), point.z(), field);
    return new NearField(
        point,
        new Complex(field[0], field[1]),
        new Complex(field[2], field[3]),
        new Complex(field[4], field[5]),
        new Complex(field[6], field[7]),
        new Complex(field[8], field[9]),
        new Complex(field[10], field[11]));
  }

  /** Writes E in V/m and H in A/m, rms, as pairs of real and imaginary part. */
  void evaluate(double x, double y, double z, double[] out) {
    if (!(ground instanceof FreeSpace) && z < 0) {
      throw new IllegalArgumentException(
          "the point ("
              + x
              + ", "
              + y
              + ", "
              + z
              + ") m lies below the ground surface, where fields are not computed; choose z of at"
              + " least 0 m");
    }
    java.util.Arrays.fill(out, 0, DirectField.VALUES, 0);
    if (tabulated && isFarFromTubes(x, y, z)) {
      add(new PotentialField.Direct(k), x, y, z, out);
    } else {
      double accuracy = tabulated ? 0.1 * tolerance : DIRECT_ACCURACY;
      new DirectField(direct, terminals, k, smoothing2, accuracy).add(x, y, z, out);
    }
    if (table.isPresent()) {
      add(new PotentialField.Reflected(table.get()::evaluate), x, y, z, out);
    } else if (ground instanceof Soil) {
      addReflected(x, y, z, out);
    }
    scale(out);
  }

  /** Whether tubes act as lines: at bends and ends their rims are as wide as the tube. */
  private boolean isFarFromTubes(double x, double y, double z) {
    for (SourcePiece source : direct) {
      Piece piece = source.piece();
      if (piece.radius() > TUBE_SHARE * tolerance * piece.distance(x, y, z)) {
        return false;
      }
    }
    return true;
  }

  private void add(
      PotentialField.Potentials potentials, double x, double y, double z, double[] out) {
    new PotentialField(stretches, charges, k, potentials, tolerance)
        .add(x, y, z, out, new double[2]);
  }

  private void addReflected(double x, double y, double z, double[] out) {
    double[] directOnly = out.clone();
    double accuracy = Math.max(FINEST_KERNEL, 0.1 * tolerance);
    double[] gross = reflect(x, y, z, accuracy, out);
    gross[0] += size(directOnly, 0);
    gross[1] += size(directOnly, 6);
    double worst = Math.max(accuracy * gross[0] / size(out, 0), accuracy * gross[1] / size(out, 6));
    if (worst > tolerance && accuracy > FINEST_KERNEL) {
      System.arraycopy(directOnly, 0, out, 0, out.length);
      reflect(x, y, z, Math.max(FINEST_KERNEL, 0.3 * accuracy * tolerance / worst), out);
    }
  }

  private double[] reflect(double x, double y, double z, double accuracy, double[] out) {
    double[] gross = new double[2];
    ReflectedFieldKernel kernel = new ReflectedFieldKernel(k, permittivity, accuracy);
    new PotentialField(
            stretches, charges, k, new PotentialField.Reflected(kernel::evaluate), 10 * accuracy)
        .add(x, y, z, out, gross);
    return gross;
  }

  private static double size(double[] field, int from) {
    double sum = 0;
    for (int i = from; i < from + 6; i++) {
      sum += field[i] * field[i];
    }
    return Math.sqrt(sum);
  }

  /** E takes the factor 1/(4πjωε0) = −jη/(4πk), H the factor 1/(4π). */
  private void scale(double[] out) {
    double electric = PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / (4 * Math.PI * k);
    for (int i = 0; i < 6; i += 2) {
      double re = out[i];
      out[i] = electric * out[i + 1];
      out[i + 1] = -electric * re;
    }
    for (int i = 6; i < DirectField.VALUES; i++) {
      out[i] /= 4 * Math.PI;
    }
  }
}
