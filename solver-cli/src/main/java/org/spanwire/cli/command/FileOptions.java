package org.spanwire.cli.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanwire.cli.output.Palette;
import org.spanwire.cli.output.Replacement;
import org.spanwire.result.Warning;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Where results are written. */
class FileOptions {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--output",
      paramLabel = "FILE",
      description =
          "Write to FILE instead of the terminal. FILE changes only once the result is complete.")
  private Optional<Path> output;

  /**
   * Refuses an output file that cannot be written, before the work begins.
   *
   * @param input file that must not be overwritten
   */
  void check(Path input) {
    output.ifPresent(file -> checkTarget(file, input, "the design"));
  }

  /**
   * Refuses a file that cannot be written.
   *
   * @param target file to be written
   * @param input file that must not be overwritten
   * @param role what that file is
   */
  static void checkTarget(Path target, Path input, String role) {
    Path file = target.toAbsolutePath();
    Path directory = file.getParent();
    if (directory == null || !Files.isDirectory(directory)) {
      throw new InputException(target + ": there is no directory " + directory + "; make it first");
    }
    if (Files.isDirectory(file)) {
      throw new InputException(target + ": is a directory; name a file in it");
    }
    if (!Files.isWritable(directory)) {
      throw new InputException(target + ": the directory cannot be written to; choose another");
    }
    if (isSame(file, input)) {
      throw new InputException(target + ": is " + role + " itself; name another file");
    }
  }

  /**
   * Refuses a further file to be written in the place of the output.
   *
   * @param other the further file
   * @param option that names it
   */
  void checkApart(Path other, String option) {
    if (output.filter(file -> isAtSamePlace(file, other)).isPresent()) {
      throw new InputException(other + ": is named by --output and " + option + "; name two files");
    }
  }

  static boolean isAtSamePlace(Path a, Path b) {
    return a.toAbsolutePath().normalize().equals(b.toAbsolutePath().normalize());
  }

  /** What to say when writing failed. */
  static InputException unwritable(Path file, IOException e) {
    return new InputException(
        file
            + ": could not be written ("
            + e.getClass().getSimpleName()
            + "); check rights and free space");
  }

  Optional<Path> file() {
    return output;
  }

  /** Where results go without a file. */
  PrintWriter terminal() {
    return spec.commandLine().getOut();
  }

  Palette palette() {
    return output.isPresent() ? Palette.plain() : Palette.ofTerminal();
  }

  private static boolean isSame(Path file, Path input) {
    try {
      return Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input);
    } catch (IOException e) {
      return false;
    }
  }

  /** A CSV has room for the names of warnings only; what they say goes to standard error. */
  void explain(List<Warning> warnings) {
    PrintWriter err = spec.commandLine().getErr();
    for (Warning warning : new LinkedHashSet<>(warnings)) {
      err.println("spanwire: warning: " + warning.name() + ": " + warning.message());
    }
    err.flush();
  }

  /** Writes a text as it is. */
  void write(String text) {
    if (output.isPresent()) {
      replace(output.get(), text);
      return;
    }
    PrintWriter out = terminal();
    out.print(text);
    out.flush();
    if (out.checkError()) {
      throw new InputException(
          "standard output: could not be written to in full; check its disk or pipe");
    }
  }

  /** Writes beside the file, then moves the new one into its place. */
  static void replace(Path file, String text) {
    replace(file, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes beside the file, then moves the new one into its place. */
  static void replace(Path file, byte[] content) {
    try {
      Replacement.of(file, out -> out.write(content));
    } catch (IOException e) {
      throw unwritable(file, e);
    }
  }

  /** Writes several files, all of them or none. */
  static void replaceAll(Map<Path, String> texts) {
    try {
      Replacement.ofAll(texts);
    } catch (IOException e) {
      throw unwritable(texts.keySet().iterator().next().toAbsolutePath().getParent(), e);
    }
  }
}
