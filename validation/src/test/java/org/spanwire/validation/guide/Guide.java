package org.spanwire.validation.guide;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The guide: text written by hand, sources and outputs of the examples put in where they belong.
 */
final class Guide {

  static final Path FILE = Path.of("..", "solver-core", "GUIDE.md");

  private static final Path SOURCES =
      Path.of("src", "test", "java", "org", "spanwire", "validation", "guide");

  /** A source, and what it prints. */
  private static final Pattern EXAMPLE =
      Pattern.compile(
          "(?s)```java\n([^`]*?public final class (\\w+) [^`]*?)```\n\nprints\n\n```text\n(.*?)```");

  private Guide() {}

  /** Writes the guide anew, with the sources and outputs of now. */
  public static void main(String[] args) throws Exception {
    Files.writeString(FILE, filled(Files.readString(FILE)));
  }

  /** Names of the examples in a guide, in order. */
  static List<String> examples(String guide) {
    return EXAMPLE.matcher(guide).results().map(result -> result.group(2)).toList();
  }

  /** A guide with the sources and outputs of now. */
  static String filled(String guide) throws Exception {
    StringBuilder out = new StringBuilder();
    int from = 0;
    for (MatchResult found : EXAMPLE.matcher(guide).results().toList()) {
      String name = found.group(2);
      out.append(guide, from, found.start())
          .append("```java\n")
          .append(source(name))
          .append("```\n\nprints\n\n```text\n")
          .append(output(name))
          .append("```");
      from = found.end();
    }
    return out.append(guide.substring(from)).toString();
  }

  private static String source(String name) throws IOException {
    String source = Files.readString(SOURCES.resolve(name + ".java"));
    Matcher declaration = Pattern.compile("\\Apackage .*;\n\n").matcher(source);
    return declaration.replaceFirst("");
  }

  private static String output(String name) throws Exception {
    PrintStream usual = System.out;
    Locale usualLocale = Locale.getDefault();
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
      Locale.setDefault(Locale.ROOT);
      Class.forName(Guide.class.getPackageName() + "." + name)
          .getMethod("main", String[].class)
          .invoke(null, (Object) new String[0]);
    } finally {
      System.setOut(usual);
      Locale.setDefault(usualLocale);
    }
    return printed.toString(StandardCharsets.UTF_8);
  }
}
