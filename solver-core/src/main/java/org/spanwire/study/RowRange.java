package org.spanwire.study;

/**
 * Consecutive rows of a sweep.
 *
 * @param first first row, counted from 0
 * @param end one past the last row
 */
public record RowRange(long first, long end) {

  /** Checks the order. */
  public RowRange {
    if (first < 0 || end < first) {
      throw new IllegalArgumentException("rows " + first + " to " + end + " are no range");
    }
  }

  /** Number of rows. */
  public long count() {
    return end - first;
  }

  /**
   * One of several parts of about equal size that follow each other without gap or overlap.
   *
   * @param part 1 to the number of parts
   */
  public RowRange part(int part, int parts) {
    if (part < 1 || part > parts) {
      throw new IllegalArgumentException("part " + part + " must lie between 1 and " + parts);
    }
    return new RowRange(first + share(part - 1, parts), first + share(part, parts));
  }

  /** count·part/parts without overflow. */
  private long share(int part, int parts) {
    return count() / parts * part + count() % parts * part / parts;
  }
}
