package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ParagraphTest {

  private static String write(String text) {
    StringBuilder out = new StringBuilder();
    Paragraph.write(out, "  label  ", 9, text);
    return out.toString();
  }

  @Test
  void keepsEveryWordWithinTheWidth() {
    String text = "word ".repeat(200).strip();
    String written = write(text);
    assertThat(written.lines()).allMatch(line -> line.length() <= 110).hasSizeGreaterThan(5);
    assertThat(written.lines().skip(1)).allMatch(line -> line.startsWith(" ".repeat(9) + "w"));
    assertThat(written.substring(9).replaceAll("\\s+", " ").strip()).isEqualTo(text);
  }

  @Test
  void leavesAWordThatIsTooLongWhole() {
    String word = "x".repeat(150);
    assertThat(write(word + " y")).isEqualTo("  label  " + word + "\n" + " ".repeat(9) + "y\n");
  }
}
