package org.spanwire.validation.accuracy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.spanwire.circuit.CircuitException;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneException;

/**
 * Random Touchstone files through the reader. Each must be read, and then be written so that
 * reading it again gives the same file, or be refused with a message of one line that has its
 * place.
 */
public final class TouchstoneFuzz {

  static final long SEED = 2_718L;

  private static final int FILES = 2_000_000;

  private static final String[] ODD = {
    "",
    "nan",
    "inf",
    "1e999",
    "-1e999",
    "1e-400",
    "0",
    "-0",
    "1e308",
    "--1",
    "1,5",
    "0x1p3",
    "1d",
    "[Version] 2.0",
    "[Number of Ports] 999999999",
    "[Number of Ports] 0",
    "[Reference]",
    "[Network Data]",
    "[End]",
    "[Matrix Format] Lower",
    "[Two-Port Data Order] 21_12",
    "[Number of Frequencies] 2147483648",
    "[Noise Data]",
    "[Begin Information]",
    "!",
    "#",
    "# MHz S",
    "# MHz S MA R 0",
    "# GHz Y DB R -50",
    "# Hz H RI R 1e300",
    "\t",
    "\r",
    "é",
    "\u0000"
  };

  private static final String[] UNITS = {"Hz", "kHz", "MHz", "GHz"};
  private static final String[] KINDS = {"S", "Y", "Z", "H", "G"};
  private static final String[] FORMATS = {"RI", "MA", "DB"};

  private TouchstoneFuzz() {}

  /**
   * Runs all files and exits with 1 if one breaks the promise.
   *
   * @param arguments number of files, and the first; 2,000,000 and 0 without
   */
  public static void main(String[] arguments) {
    int files = arguments.length > 0 ? Integer.parseInt(arguments[0]) : FILES;
    int first = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 0;
    DesignFuzz.Outcome outcome = run(SEED, first, files);
    outcome.counts().forEach((name, count) -> System.out.println(count + " " + name));
    outcome.faults().forEach(System.out::println);
    System.exit(outcome.faults().isEmpty() ? 0 : 1);
  }

  /** Runs a stretch of the sequence of files. */
  static DesignFuzz.Outcome run(long seed, int first, int files) {
    Map<String, Integer> counts = new TreeMap<>();
    List<String> faults = new ArrayList<>();
    for (int i = first; i < first + files; i++) {
      SplittableRandom random = new SplittableRandom(seed * 1_000_003 + i);
      int ports = 1 + random.nextInt(4);
      String text = text(random, ports);
      String result = attempt("fuzz.s" + ports + "p", text);
      boolean fault = result.startsWith("FAULT");
      counts.merge(fault ? "FAULT" : result, 1, Integer::sum);
      if (fault) {
        faults.add("file " + i + ", " + ports + " ports: " + result + "\n" + text);
      }
    }
    return new DesignFuzz.Outcome(counts, faults);
  }

  /** A file that is sound, in two cases of three damaged in up to four places. */
  static String text(SplittableRandom random, int ports) {
    StringBuilder text = new StringBuilder();
    boolean second = random.nextBoolean();
    String kind = KINDS[random.nextInt(ports == 2 ? 5 : 3)];
    String option =
        "# " + pick(random, UNITS) + " " + kind + " " + pick(random, FORMATS) + " R 50\n";
    int count = 1 + random.nextInt(5);
    if (second) {
      text.append("[Version] 2.0\n").append(option).append("[Number of Ports] ").append(ports);
      text.append(ports == 2 ? "\n[Two-Port Data Order] 21_12" : "");
      text.append("\n[Number of Frequencies] ").append(count).append("\n[Network Data]\n");
    } else {
      text.append("! a bench\n").append(option);
    }
    for (int f = 0; f < count; f++) {
      text.append(1 + f);
      for (int i = 0; i < ports * ports; i++) {
        // Files of more than two ports begin a line with every row, four pairs on a line at most.
        text.append(ports > 2 && i > 0 && i % ports == 0 ? "\n " : "");
        text.append(' ').append(number(random)).append(' ').append(number(random));
      }
      text.append('\n');
    }
    text.append(second ? "[End]\n" : "");
    for (int damage = random.nextInt(6) - 1; damage > 0; damage--) {
      int at = random.nextInt(text.length() + 1);
      switch (random.nextInt(4)) {
        case 0 -> text.delete(at, Math.min(text.length(), at + 1 + random.nextInt(12)));
        case 1 -> text.insert(at, pick(random, ODD));
        case 2 -> text.insert(at, "\n" + pick(random, ODD) + "\n");
        default -> text.insert(at, (char) random.nextInt(1, 256));
      }
    }
    return text.toString();
  }

  private static String number(SplittableRandom random) {
    return random.nextInt(80) == 0
        ? pick(random, ODD)
        : String.valueOf(Math.rint(1e4 * (random.nextDouble() - 0.5)) / 1e4);
  }

  private static String pick(SplittableRandom random, String[] from) {
    return from[random.nextInt(from.length)];
  }

  /** One file; returns the kind of outcome, or a fault. */
  static String attempt(String name, String text) {
    try {
      Touchstone file = Touchstone.parse(name, text);
      String fault = roundTrip(name, file);
      return fault.isEmpty() ? network(file) : fault;
    } catch (TouchstoneException e) {
      boolean sound = e.getMessage().lines().count() == 1 && e.getMessage().startsWith(name + ":");
      return sound ? "refused by the reader" : "FAULT message: " + e.getMessage();
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      StackTraceElement[] trace = e.getStackTrace();
      return "FAULT " + e + (trace.length > 0 ? " at " + trace[0] : "");
    }
  }

  private static String roundTrip(String name, Touchstone file) {
    String written = file.text();
    String again = Touchstone.parse(name, written).text();
    return again.equals(written) ? "" : "FAULT written as\n" + written + "read as\n" + again;
  }

  /** Numbers that describe a network give finite waves. */
  private static String network(Touchstone file) {
    try {
      NetworkData network = file.network();
      NPort at = network.at(network.lowestHz());
      double sum =
          Arrays.stream(at.scattering())
              .flatMap(Arrays::stream)
              .mapToDouble(z -> z.getReal() + z.getImaginary())
              .sum();
      return Double.isNaN(sum) ? "FAULT the network is not a number" : "read, written and used";
    } catch (CircuitException e) {
      return e.getMessage().lines().count() == 1
          ? "read and written, no network"
          : "FAULT message: " + e.getMessage();
    }
  }
}
