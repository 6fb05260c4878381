package org.spanwire.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One line of a Touchstone file without its comment, cut into words. */
final class TouchstoneLine {

  private static final Pattern WORD = Pattern.compile("\\S+");
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,9})?");
  private static final int LONGEST_WORD = 60;

  private final String file;
  private final int number;
  private final String keyword;
  private final List<String> words = new ArrayList<>();
  private final List<Integer> columns = new ArrayList<>();

  TouchstoneLine(String file, int number, String text) {
    this.file = file;
    this.number = number;
    int comment = text.indexOf('!');
    String content = comment < 0 ? text : text.substring(0, comment);
    int start = 0;
    if (content.stripLeading().startsWith("[")) {
      int open = content.indexOf('[');
      int close = content.indexOf(']');
      if (close < 0) {
        throw new TouchstoneException(file, number, open + 1, "keyword has no closing bracket");
      }
      keyword =
          content
              .substring(open + 1, close)
              .strip()
              .replaceAll("\\s+", " ")
              .toLowerCase(Locale.ROOT);
      start = close + 1;
    } else {
      keyword = "";
    }
    Matcher matcher = WORD.matcher(content);
    for (int from = start; matcher.find(from); from = matcher.end()) {
      words.add(matcher.group());
      columns.add(matcher.start() + 1);
    }
  }

  boolean isBlank() {
    return keyword.isEmpty() && words.isEmpty();
  }

  /** The keyword in lower case, without brackets; empty for a line of data. */
  String keyword() {
    return keyword;
  }

  /** Whether this is an option line. */
  boolean isOptions() {
    return !words.isEmpty() && words.get(0).startsWith("#");
  }

  /** The words after the keyword. */
  List<String> words() {
    return words;
  }

  int number() {
    return number;
  }

  int size() {
    return words.size();
  }

  /** A word as a finite number. */
  double value(int index) {
    String word = words.get(index);
    if (NUMBER.matcher(word).matches()) {
      double value = Double.parseDouble(word);
      if (Double.isFinite(value)) {
        return value;
      }
    }
    throw fault(index, quoted(index) + " is no finite number; expected one such as 0.25 or -3e-4");
  }

  /** The only word as a whole number within limits. */
  int count(int smallest, int largest) {
    if (size() != 1 || !words.get(0).matches("\\d{1,9}")) {
      throw fault(0, "[" + keyword + "] needs one whole number");
    }
    int value = Integer.parseInt(words.get(0));
    if (value < smallest || value > largest) {
      throw fault(0, "[%s] is %d; expected %d to %d".formatted(keyword, value, smallest, largest));
    }
    return value;
  }

  String quoted(int index) {
    String word = words.get(index);
    return "'"
        + (word.length() > LONGEST_WORD ? word.substring(0, LONGEST_WORD) + "…" : word)
        + "'";
  }

  /** A fault at a word, or after the last one. */
  TouchstoneException fault(int index, String problem) {
    int column =
        index < size()
            ? columns.get(index)
            : size() == 0 ? 1 : columns.get(size() - 1) + words.get(size() - 1).length();
    return new TouchstoneException(file, number, column, problem);
  }
}
