package org.spanwire.cli.output;

/** Running text broken into lines that a terminal shows whole. */
final class Paragraph {

  /** Stands for a space at which no line is broken, such as one before a unit. */
  static final char TIE = '\u00a0';

  private static final int WIDTH = 110;

  private Paragraph() {}

  /**
   * Writes a text behind a label, later lines indented as deep as the text of the first.
   *
   * @param label written first, in its style
   * @param labelWidth columns that the label takes
   */
  static void write(StringBuilder out, String label, int labelWidth, String text) {
    out.append(label);
    int column = labelWidth;
    String separator = "";
    for (String word : text.split(" ")) {
      if (!separator.isEmpty() && column + 1 + word.length() > WIDTH) {
        out.append('\n').append(" ".repeat(labelWidth));
        column = labelWidth;
        separator = "";
      }
      out.append(separator).append(word.replace(TIE, ' '));
      column += separator.length() + word.length();
      separator = " ";
    }
    out.append('\n');
  }
}
