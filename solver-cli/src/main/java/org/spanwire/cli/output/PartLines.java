package org.spanwire.cli.output;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** Lines of a part of a sweep, read with their ends so that torn ones show. */
final class PartLines {

  /** No row is as long; what is longer is no sweep. */
  private static final int LONGEST = 1 << 16;

  private PartLines() {}

  /**
   * The next line with its end; without one if the file ends in it, empty at the end of the file.
   */
  static String next(InputStream in) throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int b = in.read(); b >= 0 && line.size() < LONGEST; b = in.read()) {
      line.write(b);
      if (b == '\n') {
        break;
      }
    }
    return line.toString(StandardCharsets.UTF_8);
  }

  static long bytes(String line) {
    return line.getBytes(StandardCharsets.UTF_8).length;
  }

  /** Whether a line is whole and has as many cells as the header row; no cell holds a comma. */
  static boolean isRow(String line, String columns) {
    return line.endsWith("\n") && commas(line) == commas(columns);
  }

  private static long commas(String line) {
    return line.chars().filter(c -> c == ',').count();
  }
}
