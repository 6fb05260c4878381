package org.spanwire.circuit;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.TouchstoneOptions.Format;
import org.spanwire.circuit.TouchstoneOptions.Version;

/**
 * A Touchstone file (IBIS Open Forum, Touchstone File Format Specification, versions 1.1 and 2.1):
 * a network's parameters against frequency.
 *
 * <p>The numbers are kept as the file states them, in its unit and its format, so that a file that
 * is read and written again holds the same doubles to the last bit; comments and information blocks
 * are not kept. Version 1 divides impedances and multiplies admittances by the reference; version 2
 * states them in ohms and siemens. Mixed-mode files are refused. Immutable.
 */
public final class Touchstone {

  /** Largest file read, in bytes. */
  static final int LARGEST_FILE = 64 << 20;

  private final TouchstoneOptions options;
  private final double[] references;
  private final double[] frequencies;
  private final double[][] values;
  private final double[][] noise;

  /**
   * Keeps numbers as they stand in a file.
   *
   * @param references ohms, one per port
   * @param frequencies in the unit of the options, rising
   * @param values per frequency the pairs of the full matrix, row by row
   * @param noise rows of frequency, minimum noise figure in dB, magnitude and angle of the source
   *     reflection, and effective noise resistance
   */
  Touchstone(
      TouchstoneOptions options,
      double[] references,
      double[] frequencies,
      double[][] values,
      double[][] noise) {
    this.options = options;
    this.references = references;
    this.frequencies = frequencies;
    this.values = values;
    this.noise = noise;
  }

  /**
   * Reads a file of at most 64 MiB.
   *
   * @throws TouchstoneException if it cannot be read or understood
   */
  public static Touchstone read(Path path) {
    String name = path.toString();
    if (Files.isDirectory(path)) {
      throw new TouchstoneException(name, 0, 0, "is a directory; name a file in it");
    }
    if (!Files.isRegularFile(path)) {
      throw new TouchstoneException(name, 0, 0, "no such file; check the path");
    }
    try (InputStream in = Files.newInputStream(path)) {
      byte[] bytes = in.readNBytes(LARGEST_FILE + 1);
      if (bytes.length > LARGEST_FILE) {
        throw new TouchstoneException(
            name, 0, 0, "file has more than " + LARGEST_FILE + " bytes; is it the right file?");
      }
      // Only comments may leave ASCII, in whatever encoding their author had.
      return parse(name, new String(bytes, StandardCharsets.ISO_8859_1));
    } catch (IOException e) {
      throw new TouchstoneException(
          name,
          0,
          0,
          "cannot be read (" + e.getClass().getSimpleName() + "); check its access rights");
    }
  }

  /**
   * Reads a text.
   *
   * @param name name of the file, for messages; in version 1 its extension .s<i>n</i>p tells the
   *     number of ports
   * @throws TouchstoneException if it cannot be understood
   */
  public static Touchstone parse(String name, String text) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(text, "text");
    return new TouchstoneReader(name, text).read();
  }

  /**
   * Writes network data into the form of a file.
   *
   * @throws CircuitException if the form cannot hold them: complex reference impedances, different
   *     ones in version 1, a part of a matrix that is not symmetric, a zero in decibels, a kind of
   *     parameter that the network does not have
   */
  public static Touchstone of(NetworkData data, TouchstoneOptions options) {
    return TouchstoneWriter.encode(data, options);
  }

  /** How the file states its numbers. */
  public TouchstoneOptions options() {
    return options;
  }

  /** Number of ports. */
  public int ports() {
    return references.length;
  }

  /** Reference impedance of each port in ohms; a copy. */
  public double[] references() {
    return references.clone();
  }

  /** Frequencies in hertz, exact to the decimal digits of the file. */
  public double[] frequenciesHz() {
    return Arrays.stream(frequencies).map(this::hertz).toArray();
  }

  private double hertz(double frequency) {
    return BigDecimal.valueOf(frequency).scaleByPowerOfTen(options.unit().power()).doubleValue();
  }

  /**
   * Noise parameters of a 2-port, empty if there are none: rows of frequency in hertz, minimum
   * noise figure in dB, magnitude and angle in degrees of the optimum source reflection, and
   * effective noise resistance (divided by the reference in version 1, in ohms in version 2).
   */
  public List<double[]> noise() {
    return Arrays.stream(noise)
        .map(
            row -> {
              double[] copy = row.clone();
              copy[0] = hertz(row[0]);
              return copy;
            })
        .toList();
  }

  /**
   * The network that the file describes.
   *
   * @throws CircuitException if some of the numbers describe no network
   */
  public NetworkData network() {
    TreeMap<Double, NPort> samples = new TreeMap<>();
    Complex[] z =
        Arrays.stream(references).mapToObj(r -> new Complex(r, 0)).toArray(Complex[]::new);
    for (int i = 0; i < frequencies.length; i++) {
      samples.put(hertz(frequencies[i]), network(matrix(values[i]), z));
    }
    return NetworkData.of(samples);
  }

  private Complex[][] matrix(double[] pairs) {
    int n = ports();
    Complex[][] matrix = new Complex[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        int at = 2 * (i * n + j);
        matrix[i][j] = decoded(pairs[at], pairs[at + 1], options.format());
      }
    }
    return matrix;
  }

  private NPort network(Complex[][] m, Complex[] z) {
    boolean normalized = options.version() == Version.V1;
    double r = normalized ? references[0] : 1;
    return switch (options.parameter()) {
      case S -> NPort.ofScattering(m, z);
      case Z -> NPort.ofImpedance(scaled(m, r, r, r, r), z);
      case Y -> NPort.ofAdmittance(scaled(m, 1 / r, 1 / r, 1 / r, 1 / r), z);
      case H -> HybridParameters.network(scaled(m, r, 1, 1, 1 / r), z);
      case G -> HybridParameters.inverseNetwork(scaled(m, 1 / r, 1, 1, r), z);
    };
  }

  /** Entries times a factor each: of N11, N12, N21, N22 for a 2-port, the first for all others. */
  static Complex[][] scaled(Complex[][] m, double f11, double f12, double f21, double f22) {
    double[][] factors = {{f11, f12}, {f21, f22}};
    Complex[][] result = new Complex[m.length][m.length];
    for (int i = 0; i < m.length; i++) {
      for (int j = 0; j < m.length; j++) {
        result[i][j] = m[i][j].multiply(m.length == 2 ? factors[i][j] : f11);
      }
    }
    return result;
  }

  private static Complex decoded(double first, double second, Format format) {
    return switch (format) {
      case RI -> new Complex(first, second);
      case MA -> polar(first, second);
      case DB -> polar(magnitude(first), second);
    };
  }

  private static double magnitude(double decibels) {
    double magnitude = Math.pow(10, decibels / 20);
    if (Double.isInfinite(magnitude)) {
      throw new CircuitException(
          "level " + decibels + " dB is beyond what a number can hold; correct the file");
    }
    return magnitude;
  }

  /** Exact on the axes, so that a short written as 1 at 180 degrees is a short. */
  private static Complex polar(double magnitude, double degrees) {
    double angle = degrees % 360;
    if (angle % 90 == 0) {
      int quarter = Math.floorMod((int) (angle / 90), 4);
      double sign = quarter < 2 ? magnitude : -magnitude;
      return quarter % 2 == 0 ? new Complex(sign, 0) : new Complex(0, sign);
    }
    double radians = Math.toRadians(angle);
    return new Complex(magnitude * Math.cos(radians), magnitude * Math.sin(radians));
  }

  /** The text of the file; reading it again gives equal numbers. */
  public String text() {
    return TouchstoneWriter.text(options, references, frequencies, values, noise);
  }

  /**
   * Writes the file.
   *
   * @throws IOException if it cannot be written
   */
  public void write(Path path) throws IOException {
    Files.writeString(path, text(), StandardCharsets.US_ASCII);
  }
}
