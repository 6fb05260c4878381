package org.spanwire.circuit;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.TouchstoneOptions.Matrix;
import org.spanwire.circuit.TouchstoneOptions.Order;
import org.spanwire.circuit.TouchstoneOptions.Version;

/** Turns network data into the numbers of a Touchstone file, and those into text. */
final class TouchstoneWriter {

  /** Most pairs on one line of a matrix of three or more ports. */
  private static final int PAIRS_PER_LINE = 4;

  private TouchstoneWriter() {}

  static Touchstone encode(NetworkData data, TouchstoneOptions options) {
    int n = data.ports();
    if (options.parameter().isHybrid() && n != 2) {
      throw new CircuitException("hybrid parameters need 2 ports, not " + n + "; write S, Y or Z");
    }
    double[] references = references(data, options.version() == Version.V1);
    double[] hertz = data.frequencies();
    double[] frequencies = new double[hertz.length];
    double[][] values = new double[hertz.length][2 * n * n];
    for (int k = 0; k < hertz.length; k++) {
      frequencies[k] =
          BigDecimal.valueOf(hertz[k]).scaleByPowerOfTen(-options.unit().power()).doubleValue();
      NPort sample = data.sample(k);
      if (options.matrix() != Matrix.FULL && sample.reciprocityError() > 0) {
        throw new CircuitException(
            "network at %s Hz is not symmetric, by %s; write the full matrix"
                .formatted(hertz[k], sample.reciprocityError()));
      }
      Complex[][] m = parameters(sample, options, references[0]);
      for (int row = 0; row < n; row++) {
        for (int column : columns(options.matrix(), n, row)) {
          encode(m[row][column], options, values[k], 2 * (row * n + column));
          mirror(options, values[k], n, row, column);
        }
      }
    }
    return new Touchstone(options, references, frequencies, values, new double[0][]);
  }

  /** Fills the part of a matrix that does not stand in the file. */
  static void mirror(TouchstoneOptions options, double[] pairs, int n, int row, int column) {
    if (options.matrix() != Matrix.FULL) {
      System.arraycopy(pairs, 2 * (row * n + column), pairs, 2 * (column * n + row), 2);
    }
  }

  private static double[] references(NetworkData data, boolean one) {
    NPort first = data.sample(0);
    double[] references = new double[data.ports()];
    for (int i = 0; i < references.length; i++) {
      Complex z = first.reference(i + 1);
      if (z.getImaginary() != 0 || (one && !z.equals(first.reference(1)))) {
        throw new CircuitException(
            "reference impedance %s ohm of port %d cannot be written; renormalize to %s"
                .formatted(z, i + 1, one ? "one real reference" : "a real reference"));
      }
      references[i] = z.getReal();
    }
    return references;
  }

  private static Complex[][] parameters(NPort sample, TouchstoneOptions options, double reference) {
    double r = options.version() == Version.V1 ? reference : 1;
    return switch (options.parameter()) {
      case S -> sample.scattering();
      case Z -> Touchstone.scaled(sample.impedance(), 1 / r, 1 / r, 1 / r, 1 / r);
      case Y -> Touchstone.scaled(sample.admittance(), r, r, r, r);
      case H -> Touchstone.scaled(HybridParameters.of(sample), 1 / r, 1, 1, r);
      case G -> Touchstone.scaled(HybridParameters.inverseOf(sample), r, 1, 1, 1 / r);
    };
  }

  private static void encode(Complex value, TouchstoneOptions options, double[] to, int at) {
    double angle = Math.toDegrees(Math.atan2(value.getImaginary(), value.getReal()));
    switch (options.format()) {
      case RI -> {
        to[at] = value.getReal();
        to[at + 1] = value.getImaginary();
      }
      case MA -> {
        to[at] = value.abs();
        to[at + 1] = angle;
      }
      case DB -> {
        if (value.equals(Complex.ZERO)) {
          throw new CircuitException("zero has no level in decibels; write the format RI or MA");
        }
        to[at] = 20 * Math.log10(value.abs());
        to[at + 1] = angle;
      }
    }
  }

  static String text(
      TouchstoneOptions options,
      double[] references,
      double[] frequencies,
      double[][] values,
      double[][] noise) {
    StringBuilder out = new StringBuilder();
    boolean v2 = options.version() != Version.V1;
    if (v2) {
      out.append("[Version] ").append(options.version().word()).append('\n');
    }
    out.append("# %s %s %s".formatted(options.unit(), options.parameter(), options.format()));
    boolean equal = Arrays.stream(references).allMatch(r -> r == references[0]);
    out.append(" R ").append(equal || v2 ? references[0] + "" : joined(references)).append('\n');
    if (v2) {
      keywords(out, options, references, frequencies.length, noise.length);
    }
    for (int k = 0; k < frequencies.length; k++) {
      out.append(frequencies[k]);
      matrix(out, options, references.length, values[k]);
    }
    if (v2 && noise.length > 0) {
      out.append("[Noise Data]\n");
    }
    for (double[] row : noise) {
      out.append(joined(row)).append('\n');
    }
    return v2 ? out.append("[End]\n").toString() : out.toString();
  }

  private static void keywords(
      StringBuilder out, TouchstoneOptions options, double[] references, int count, int noise) {
    out.append("[Number of Ports] ").append(references.length).append('\n');
    if (references.length == 2) {
      out.append("[Two-Port Data Order] ").append(options.order().word()).append('\n');
    }
    out.append("[Number of Frequencies] ").append(count).append('\n');
    if (noise > 0) {
      out.append("[Number of Noise Frequencies] ").append(noise).append('\n');
    }
    out.append("[Reference] ").append(joined(references)).append('\n');
    String matrix = options.matrix().name();
    out.append("[Matrix Format] ")
        .append(matrix.charAt(0))
        .append(matrix.substring(1).toLowerCase(Locale.ROOT))
        .append('\n');
    out.append("[Network Data]\n");
  }

  private static String joined(double[] values) {
    StringBuilder out = new StringBuilder();
    for (double value : values) {
      out.append(out.isEmpty() ? "" : " ").append(value);
    }
    return out.toString();
  }

  /** One line for up to two ports, else one or more for every row of the matrix. */
  private static void matrix(StringBuilder out, TouchstoneOptions options, int n, double[] pairs) {
    for (int row = 0; row < n; row++) {
      int[] columns = columns(options.matrix(), n, row);
      for (int k = 0; k < columns.length; k++) {
        boolean wrapped = n > 2 && k % PAIRS_PER_LINE == 0 && (row > 0 || k > 0);
        out.append(wrapped ? "\n " : " ");
        int at = 2 * position(options, n, row, columns[k]);
        out.append(pairs[at]).append(' ').append(pairs[at + 1]);
      }
    }
    out.append('\n');
  }

  /** Columns of a row that stand in the file. */
  static int[] columns(Matrix matrix, int n, int row) {
    return switch (matrix) {
      case FULL -> IntStream.range(0, n).toArray();
      case LOWER -> IntStream.rangeClosed(0, row).toArray();
      case UPPER -> IntStream.range(row, n).toArray();
    };
  }

  /** Place in the full matrix, row by row, of what the file writes for a row and a column. */
  static int position(TouchstoneOptions options, int n, int row, int column) {
    boolean swapped =
        n == 2 && options.matrix() == Matrix.FULL && options.order() == Order.ORDER_21_12;
    return swapped ? column * n + row : row * n + column;
  }
}
