package org.spanwire.validation.accuracy;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Collectors;

/** Prints the convergence tables of the theory notes as Markdown. */
public final class ConvergenceTables {

  private ConvergenceTables() {}

  /** The table of every structure. */
  static String markdown() {
    return Arrays.stream(ConvergenceStructure.values())
        .parallel()
        .map(s -> ConvergenceTable.of(s).markdown())
        .collect(Collectors.joining("\n"));
  }

  /** Prints all tables to standard output. */
  public static void main(String[] arguments) {
    new PrintStream(System.out, true, StandardCharsets.UTF_8).print(markdown());
  }
}
