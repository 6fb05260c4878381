package org.spanwire.design;

import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Reads designs written in YAML 1.2 or JSON. Files of more than 4 MiB, aliases, anchors, tags and
 * deep nesting are refused. The format is that of {@link Schemas#design()}.
 */
public final class DesignReader {

  /**
   * Least frequency in hertz that is read without a unit. Smaller bare numbers are refused: they
   * are kilohertz or megahertz whose unit was left out.
   */
  public static final double LEAST_BARE_HERTZ = 1e5;

  /** What a design of this version begins with, under the key {@code format}. */
  public static final String FORMAT = "spanwire-design/1";

  private DesignReader() {}

  /**
   * Reads a design file. Files that it names are looked for beside it.
   *
   * @throws DesignException if the file cannot be read or is no design
   */
  public static Design read(Path file) {
    Objects.requireNonNull(file, "file");
    Path directory = Optional.ofNullable(file.getParent()).orElse(Path.of(""));
    String text = TextFile.read(file);
    return new Design(Document.parse(text, file.toString(), Optional.of(directory)), Map.of());
  }

  /**
   * Reads a design from a text. Files that it names are looked for in the working directory.
   *
   * @param text YAML or JSON
   * @param sourceName stands for the file's name in messages
   * @throws DesignException if the text is no design
   */
  public static Design read(String text, String sourceName) {
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(sourceName, "sourceName");
    return new Design(Document.parse(text, sourceName, Optional.empty()), Map.of());
  }
}
