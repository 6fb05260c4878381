package org.spanwire.cli.output;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.spanwire.study.RowRange;

/**
 * First line of a part of a sweep: what it is a part of.
 *
 * @param fingerprint hash of everything that the sweep's rows depend on
 * @param shard which shard, counted from 1
 * @param shards number of shards; 1 for the whole sweep
 * @param rows the rows that belong to it
 */
public record PartHeader(String fingerprint, int shard, int shards, RowRange rows) {

  private static final Pattern LINE =
      Pattern.compile(
          "# spanwire-sweep-part/1 fingerprint ([0-9a-f]{64}) shard (\\d{1,9})/(\\d{1,9}) rows"
              + " (\\d{1,18}) to (\\d{1,18})\n");

  /** The line, with its end. */
  String line() {
    return "# spanwire-sweep-part/1 fingerprint "
        + fingerprint
        + " shard "
        + shard
        + "/"
        + shards
        + " rows "
        + rows.first()
        + " to "
        + rows.end()
        + "\n";
  }

  /** Reads a line, with its end. */
  static Optional<PartHeader> parse(String line) {
    Matcher found = LINE.matcher(line);
    if (!found.matches()) {
      return Optional.empty();
    }
    long first = Long.parseLong(found.group(4));
    long end = Long.parseLong(found.group(5));
    return end < first
        ? Optional.empty()
        : Optional.of(
            new PartHeader(
                found.group(1),
                Integer.parseInt(found.group(2)),
                Integer.parseInt(found.group(3)),
                new RowRange(first, end)));
  }

  boolean isWhole() {
    return shards == 1;
  }
}
