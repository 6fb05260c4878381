package org.spanwire.cli.output;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * The rows of a sweep, or of one shard, on their way to a file. They are appended to a file beside
 * it, so that what is solved survives the end of the process; once complete it takes the place of
 * the file. A shard keeps its first line, which says what it is a part of; the whole sweep is left
 * as plain CSV.
 */
public final class SweepPart implements Closeable {

  private final Path target;
  private final Path part;
  private final PartHeader header;
  private final FileChannel channel;
  private long next;

  private SweepPart(Path target, PartHeader header, FileChannel channel, long next) {
    this.target = target;
    this.part = beside(target);
    this.header = header;
    this.channel = channel;
    this.next = next;
  }

  /** The file in which the rows are gathered. */
  public static Path beside(Path target) {
    return target.resolveSibling(target.getFileName() + ".part");
  }

  /** The file holds something else than what was to be gone on with; the message says what. */
  public static final class UnfitException extends IOException {
    private static final long serialVersionUID = 1L;

    UnfitException(String message) {
      super(message);
    }
  }

  /**
   * Begins, or goes on where an earlier run was interrupted.
   *
   * @param target the file in the end
   * @param columns header row of the CSV, with its line end
   * @throws UnfitException if there is something of another sweep
   */
  public static SweepPart open(Path target, PartHeader header, String columns) throws IOException {
    Path part = beside(target);
    FileChannel channel =
        FileChannel.open(
            part, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    try {
      if (channel.tryLock() == null) {
        throw new UnfitException(part + ": another run writes it; wait for its end");
      }
      Kept kept = kept(part, header, columns);
      channel.truncate(kept.bytes());
      channel.position(kept.bytes());
      SweepPart open = new SweepPart(target, header, channel, header.rows().first() + kept.rows());
      if (kept.bytes() == 0) {
        open.write(header.line() + columns);
      }
      return open;
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  /** What of an interrupted run can be kept. */
  private record Kept(long bytes, long rows) {}

  /** Counts whole rows; a torn last line, or what is no row, is dropped with what follows it. */
  private static Kept kept(Path part, PartHeader header, String columns) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(part))) {
      String first = PartLines.next(in);
      if (!first.endsWith("\n") && header.line().startsWith(first)) {
        return new Kept(0, 0);
      }
      if (!first.equals(header.line())) {
        throw new UnfitException(
            part
                + ": is of another sweep (other design, options or version); delete it or name"
                + " another --output");
      }
      String second = PartLines.next(in);
      if (!second.equals(columns)) {
        return new Kept(0, 0);
      }
      long bytes = PartLines.bytes(first) + PartLines.bytes(second);
      long rows = 0;
      for (String row = PartLines.next(in);
          rows < header.rows().count() && PartLines.isRow(row, columns);
          row = PartLines.next(in)) {
        bytes += PartLines.bytes(row);
        rows++;
      }
      return new Kept(bytes, rows);
    }
  }

  /** Whether a file is a shard with all its rows, as {@link #complete} leaves it. */
  public static boolean isComplete(Path file, PartHeader header) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
      if (!PartLines.next(in).equals(header.line())) {
        return false;
      }
      String columns = PartLines.next(in);
      long rows = 0;
      for (String row = PartLines.next(in);
          PartLines.isRow(row, columns);
          row = PartLines.next(in)) {
        rows++;
      }
      return rows == header.rows().count();
    }
  }

  /** The first row that is still missing. */
  public long next() {
    return next;
  }

  /** Appends the next row. */
  public void append(String line) throws IOException {
    write(line);
    next++;
  }

  private void write(String text) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  /** Puts the complete rows in the place of the file. */
  public void complete() throws IOException {
    if (next != header.rows().end()) {
      throw new IllegalStateException("rows " + next + " to " + header.rows().end() + " missing");
    }
    channel.force(true);
    if (!header.isWhole()) {
      channel.close();
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
      return;
    }
    Replacement.of(
        target,
        out -> {
          channel.position(PartLines.bytes(header.line()));
          Channels.newInputStream(channel).transferTo(out);
        });
    channel.close();
    Files.delete(part);
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
