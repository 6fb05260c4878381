package org.spanwire.design;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Wording of messages. */
final class Words {

  private static final int LONGEST_QUOTE = 60;
  private static final int LONGEST_LINE = 600;

  private Words() {}

  /** A text from outside between quotes, shortened, safe to print. */
  static String quote(String text) {
    String shown = text.length() > LONGEST_QUOTE ? text.substring(0, LONGEST_QUOTE) + "…" : text;
    return "'" + oneLine(shown) + "'";
  }

  /** A text without line breaks or other control characters, at most a few hundred characters. */
  static String oneLine(String text) {
    String line = text.replaceAll("[\\p{Cntrl}\\p{Cf}\u2028\u2029]+", " ");
    return line.length() > LONGEST_LINE ? line.substring(0, LONGEST_LINE) + "…" : line;
  }

  /** What to do about a word that is not among the known ones. */
  static String remedy(String word, Collection<String> known) {
    Optional<String> near =
        known.stream()
            .filter(k -> distance(word, k) <= Math.max(1, Math.min(word.length(), k.length()) / 3))
            .min(Comparator.comparingInt(k -> distance(word, k)));
    return near.map(k -> "did you mean " + k + "? ").orElse("")
        + "expected "
        + (known.isEmpty() ? "none" : list(known));
  }

  private static String list(Collection<String> known) {
    return known.size() == 1 ? known.iterator().next() : "one of " + String.join(", ", known);
  }

  // Optimal string alignment: insertions, deletions, substitutions, swaps of neighbours.
  private static int distance(String a, String b) {
    if (Math.abs(a.length() - b.length()) > LONGEST_QUOTE) {
      return Integer.MAX_VALUE;
    }
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(d[i - 1][j - 1] + change, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
