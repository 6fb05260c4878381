package org.spanwire.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** One run of the command with captured output. */
record Run(int code, String out, String err) {

  /** The designs shipped with the command. */
  static final Path EXAMPLES = Path.of("examples");

  static Run of(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Spanwire.run(new PrintWriter(out), new PrintWriter(err), args);
    return new Run(code, out.toString(), err.toString());
  }

  static List<Path> examples() throws IOException {
    try (Stream<Path> files = Files.list(EXAMPLES)) {
      return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList();
    }
  }
}
