package org.spanwire.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Compiles and runs the Java example of the README and holds it to the output printed there. */
class ReadmeExampleTest {

  private static final Path README = Path.of("..", "README.md");

  private static String block(String readme, String language) {
    Matcher matcher =
        Pattern.compile("```" + language + "\\n(.*?)```", Pattern.DOTALL).matcher(readme);
    assertThat(matcher.find()).as("a %s block in the README", language).isTrue();
    return matcher.group(1);
  }

  @Test
  void runsAndPrintsWhatItSays(@TempDir Path directory) throws Exception {
    String whole = Files.readString(README);
    String readme = whole.substring(whole.indexOf("\n## From Java\n"));
    Path source = directory.resolve("FirstExample.java");
    Files.writeString(source, block(readme, "java"));
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    ByteArrayOutputStream problems = new ByteArrayOutputStream();
    int code =
        compiler.run(
            null,
            problems,
            problems,
            "-proc:none",
            "-cp",
            System.getProperty("java.class.path"),
            "-d",
            directory.toString(),
            source.toString());
    assertThat(code).as(problems.toString(StandardCharsets.UTF_8)).isZero();

    PrintStream usual = System.out;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    try (URLClassLoader loader = new URLClassLoader(new URL[] {directory.toUri().toURL()})) {
      System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
      loader
          .loadClass("FirstExample")
          .getMethod("main", String[].class)
          .invoke(null, (Object) new String[0]);
    } finally {
      System.setOut(usual);
    }
    assertThat(printed.toString(StandardCharsets.UTF_8)).isEqualTo(block(readme, "text"));
  }
}
