package org.spanwire.cli.output;

import com.github.freva.asciitable.AsciiTable;
import com.github.freva.asciitable.Column;
import com.github.freva.asciitable.HorizontalAlign;
import com.github.freva.asciitable.Styler;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * A table of text with headings of several lines, numbers to the right, words to the left. Not
 * thread-safe.
 */
final class Table {

  /** Index of the character under the header in the border description of the table library. */
  private static final int HEADER_LINE = 8;

  private static final int BORDER_CHARACTERS = 29;

  private final List<Column> columns = new ArrayList<>();
  private final List<String[]> rows = new ArrayList<>();
  private final List<UnaryOperator<String>> styles = new ArrayList<>();

  /** Adds a column of numbers; the heading's lines hold quantity and unit. */
  Table number(String... heading) {
    return column(HorizontalAlign.RIGHT, heading);
  }

  /** Adds a column of words. */
  Table word(String... heading) {
    return column(HorizontalAlign.LEFT, heading);
  }

  private Table column(HorizontalAlign align, String... heading) {
    columns.add(
        new Column()
            .header(String.join("\n", heading))
            .headerAlign(align)
            .dataAlign(align)
            .maxWidth(200));
    return this;
  }

  void row(String... cells) {
    row(UnaryOperator.identity(), cells);
  }

  /** Adds a row whose words are styled. */
  void row(UnaryOperator<String> style, String... cells) {
    rows.add(cells);
    styles.add(style);
  }

  /** The table with a line feed after every row; headings end at the rule below them. */
  String render() {
    Character[] border = new Character[BORDER_CHARACTERS];
    border[HEADER_LINE] = '-';
    String text =
        AsciiTable.builder()
            .lineSeparator("\n")
            .border(border)
            .data(columns.toArray(new Column[0]), rows.toArray(new String[0][]))
            .styler(new WordStyler())
            .asString();
    return text.lines().map(String::stripTrailing).collect(Collectors.joining("\n", "", "\n"));
  }

  private final class WordStyler implements Styler {
    @Override
    public List<String> styleCell(Column column, int row, int col, List<String> lines) {
      boolean word = column.getDataAlign() == HorizontalAlign.LEFT;
      return word ? lines.stream().map(styles.get(row)).toList() : lines;
    }
  }
}
