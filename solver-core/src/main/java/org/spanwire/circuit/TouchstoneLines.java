package org.spanwire.circuit;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Optional;

/** The lines of a Touchstone file that say something; information blocks are passed over. */
final class TouchstoneLines {

  private final String file;
  private final String text;
  private final Deque<TouchstoneLine> pushedBack = new ArrayDeque<>();
  private int position;
  private int lineNumber;

  TouchstoneLines(String file, String text) {
    this.file = file;
    this.text = text;
  }

  /** The next line, empty at the end of the file. */
  Optional<TouchstoneLine> next() {
    if (!pushedBack.isEmpty()) {
      return Optional.of(pushedBack.remove());
    }
    while (position < text.length()) {
      TouchstoneLine line = new TouchstoneLine(file, ++lineNumber, cutLine());
      if (line.keyword().equals("begin information")) {
        skipInformation(line);
      } else if (!line.isBlank()) {
        return Optional.of(line);
      }
    }
    return Optional.empty();
  }

  /** Lets a line come next once more. */
  void pushBack(TouchstoneLine line) {
    pushedBack.add(line);
  }

  private String cutLine() {
    int end = position;
    while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
      end++;
    }
    String line = text.substring(position, end);
    position = text.startsWith("\r\n", end) ? end + 2 : end + 1;
    return line;
  }

  private void skipInformation(TouchstoneLine begin) {
    while (position < text.length()) {
      lineNumber++;
      if (cutLine().strip().toLowerCase(Locale.ROOT).startsWith("[end information]")) {
        return;
      }
    }
    throw begin.fault(0, "information block does not end; add [End Information]");
  }
}
