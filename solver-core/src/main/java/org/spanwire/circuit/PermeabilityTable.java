package org.spanwire.circuit;

import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;

/**
 * Complex relative permeability μ′ − jμ″ of a core material against frequency, at small signal.
 * Between rows ln μ′ and ln μ″ are linear in ln f; outside the table there is no answer. Immutable.
 */
public final class PermeabilityTable {

  private static final String HEADER = "frequency_hz,mu_real,mu_imaginary";
  private static final int LARGEST_TEXT = 1 << 20;

  private final String provenance;
  private final double[] frequencies;
  private final Complex[] permeabilities;

  private PermeabilityTable(String provenance, SortedMap<Double, Complex> rows) {
    this.provenance = provenance;
    frequencies = rows.keySet().stream().mapToDouble(Double::doubleValue).toArray();
    permeabilities = rows.values().toArray(new Complex[0]);
  }

  /**
   * From rows.
   *
   * @param provenance where the values come from, not blank
   * @param rows μ′ − jμ″ by frequency in hertz; μ′ and μ″ positive
   */
  public static PermeabilityTable of(String provenance, SortedMap<Double, Complex> rows) {
    if (Objects.requireNonNull(provenance, "provenance").isBlank()) {
      throw new IllegalArgumentException("permeability table needs a provenance");
    }
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("permeability table needs at least one row");
    }
    rows.forEach(
        (f, mu) -> {
          boolean lossy = mu.getReal() > 0 && mu.getImaginary() < 0;
          if (!(f > 0) || !lossy || !Double.isFinite(f + mu.abs())) {
            throw new IllegalArgumentException(
                "permeability at %s Hz: mu' and mu'' must be positive numbers".formatted(f));
          }
        });
    return new PermeabilityTable(provenance, rows);
  }

  /**
   * Reads a text: comment lines, which start with # and make up the provenance and of which there
   * must be one, then the header {@code frequency_hz,mu_real,mu_imaginary}, then rows with rising
   * frequency.
   *
   * @param name of the file, for messages
   * @throws IllegalArgumentException naming file and line if it cannot be understood
   */
  public static PermeabilityTable parse(String name, String text) {
    if (text.length() > LARGEST_TEXT) {
      throw new IllegalArgumentException(
          name + ": has " + text.length() + " characters, limit " + LARGEST_TEXT);
    }
    StringBuilder provenance = new StringBuilder();
    TreeMap<Double, Complex> rows = new TreeMap<>();
    boolean headed = false;
    String[] lines = text.split("\\R", -1);
    for (int i = 0; i < lines.length; i++) {
      String line = lines[i].strip();
      if (line.startsWith("#")) {
        provenance.append(provenance.isEmpty() ? "" : " ").append(line.substring(1).strip());
      } else if (!line.isEmpty() && !headed) {
        if (!line.equals(HEADER)) {
          throw fault(name, i, "expected the header " + HEADER);
        }
        headed = true;
      } else if (!line.isEmpty()) {
        row(name, i, line, rows);
      }
    }
    if (rows.isEmpty() || provenance.toString().isBlank()) {
      throw fault(
          name, 0, "table needs rows, and a comment line '# …' that says where they come from");
    }
    return of(provenance.toString(), rows);
  }

  private static void row(String name, int index, String line, TreeMap<Double, Complex> rows) {
    String[] cells = line.split(",", -1);
    double[] values = new double[3];
    try {
      for (int i = 0; i < 3 && cells.length == 3; i++) {
        values[i] = Double.parseDouble(cells[i].strip());
      }
    } catch (NumberFormatException e) {
      throw fault(name, index, "row holds a word that is no number");
    }
    boolean positive = Arrays.stream(values).allMatch(v -> v > 0 && Double.isFinite(v));
    if (!positive) {
      throw fault(name, index, "expected three positive numbers: " + HEADER);
    }
    if (!rows.isEmpty() && !(values[0] > rows.lastKey())) {
      throw fault(name, index, "frequency is not above the one before; sort the rows");
    }
    rows.put(values[0], new Complex(values[1], -values[2]));
  }

  private static IllegalArgumentException fault(String name, int index, String problem) {
    return new IllegalArgumentException(name + ":" + (index + 1) + ":1: " + problem);
  }

  /** A generic nickel-zinc ferrite, initial permeability 800, relaxing at 5 MHz. Not a product. */
  public static PermeabilityTable genericNickelZinc() {
    return relaxation("generic nickel-zinc ferrite", 800, 5e6);
  }

  /** A generic manganese-zinc ferrite, initial permeability 4000, relaxing at 0.8 MHz. */
  public static PermeabilityTable genericManganeseZinc() {
    return relaxation("generic manganese-zinc ferrite", 4000, 0.8e6);
  }

  /**
   * Simple relaxation, μ = 1 + (μ_i − 1)/(1 + jf/f_r), as a table from 10 kHz to 100 MHz.
   *
   * <p>Form: E. C. Snelling, Soft Ferrites, 2nd edition, 1988, chapter 2 (from memory).
   */
  private static PermeabilityTable relaxation(String name, double initial, double relaxationHz) {
    TreeMap<Double, Complex> rows = new TreeMap<>();
    for (int k = 0; k <= 80; k++) {
      double f = 1e4 * Math.pow(10, k / 20.0);
      rows.put(f, new Complex(initial - 1, 0).divide(new Complex(1, f / relaxationHz)).add(1));
    }
    return of(
        String.format(
            Locale.ROOT,
            "%s, initial permeability %.0f relaxing at %.1f MHz; invented for examples, no maker's"
                + " data",
            name,
            initial,
            relaxationHz / 1e6),
        rows);
  }

  /** Where the values come from. */
  public String provenance() {
    return provenance;
  }

  /**
   * Relative permeability μ′ − jμ″.
   *
   * @throws CircuitException outside the table
   */
  public Complex at(double frequencyHz) {
    int last = frequencies.length - 1;
    if (!(frequencyHz >= frequencies[0] && frequencyHz <= frequencies[last])) {
      throw new CircuitException(
          "frequency %s Hz lies outside the permeability table, which runs from %s Hz to %s Hz; extend it"
              .formatted(frequencyHz, frequencies[0], frequencies[last]));
    }
    int found = Arrays.binarySearch(frequencies, frequencyHz);
    if (found >= 0) {
      return permeabilities[found];
    }
    int above = -found - 1;
    Complex low = permeabilities[above - 1];
    Complex high = permeabilities[above];
    double t =
        Math.log(frequencyHz / frequencies[above - 1])
            / Math.log(frequencies[above] / frequencies[above - 1]);
    return new Complex(
        low.getReal() * Math.pow(high.getReal() / low.getReal(), t),
        low.getImaginary() * Math.pow(high.getImaginary() / low.getImaginary(), t));
  }
}
