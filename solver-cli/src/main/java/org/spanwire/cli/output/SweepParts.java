package org.spanwire.cli.output;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Puts the shards of a sweep together: what a single run would have written, byte for byte. */
public final class SweepParts {

  private final List<Part> parts;
  private final String columns;

  private record Part(Path file, PartHeader header, String columns) {

    static Part read(Path file) throws IOException {
      try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
        PartHeader header =
            PartHeader.parse(PartLines.next(in))
                .orElseThrow(
                    () ->
                        new SweepPart.UnfitException(
                            file + ": is no part of a sweep; name files that sweep --shard wrote"));
        return new Part(file, header, PartLines.next(in));
      }
    }

    /** Copies the rows after checking that all are there and whole. */
    void copy(OutputStream out) throws IOException {
      try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
        PartLines.next(in);
        PartLines.next(in);
        long rows = 0;
        for (String row = PartLines.next(in); !row.isEmpty(); row = PartLines.next(in)) {
          if (rows == header.rows().count() || !PartLines.isRow(row, columns)) {
            throw incomplete(rows);
          }
          out.write(row.getBytes(StandardCharsets.UTF_8));
          rows++;
        }
        if (rows < header.rows().count()) {
          throw incomplete(rows);
        }
      }
    }

    private SweepPart.UnfitException incomplete(long rows) {
      return new SweepPart.UnfitException(
          file
              + ": holds "
              + rows
              + " whole rows, expected "
              + header.rows().count()
              + "; run its shard again with --resume");
    }
  }

  private SweepParts(List<Part> parts) {
    this.parts = parts;
    this.columns = parts.get(0).columns();
  }

  /**
   * Reads what the files are parts of.
   *
   * @param files at least one, in any order
   * @throws SweepPart.UnfitException if they are not all shards of one sweep
   */
  public static SweepParts read(List<Path> files) throws IOException {
    List<Part> parts = new ArrayList<>();
    for (Path file : files) {
      parts.add(Part.read(file));
    }
    parts.sort(Comparator.comparingInt(part -> part.header().shard()));
    Part first = parts.get(0);
    for (Part part : parts) {
      if (!part.header().fingerprint().equals(first.header().fingerprint())
          || part.header().shards() != first.header().shards()
          || !part.columns().equals(first.columns())) {
        throw new SweepPart.UnfitException(
            part.file() + ": is of another sweep than " + first.file() + "; merge them apart");
      }
    }
    requireAll(parts, first.header().shards());
    return new SweepParts(parts);
  }

  private static void requireAll(List<Part> parts, int shards) throws IOException {
    List<Integer> found = parts.stream().map(part -> part.header().shard()).toList();
    List<Integer> missing =
        IntStream.rangeClosed(1, shards).filter(k -> !found.contains(k)).boxed().toList();
    if (!missing.isEmpty()) {
      throw new SweepPart.UnfitException(
          "shards " + missing + " of " + shards + " are missing; name all parts");
    }
    for (int i = 1; i < parts.size(); i++) {
      if (found.get(i).equals(found.get(i - 1))) {
        throw new SweepPart.UnfitException(
            parts.get(i).file()
                + ": is shard "
                + found.get(i)
                + " once more, like "
                + parts.get(i - 1).file()
                + "; name each shard once");
      }
      if (parts.get(i).header().rows().first() != parts.get(i - 1).header().rows().end()) {
        throw new SweepPart.UnfitException(
            parts.get(i).file() + ": its rows do not follow those of the shard before");
      }
    }
  }

  /** Writes the merged file; it changes only once all rows are there. */
  public void write(Path target) throws IOException {
    Replacement.of(
        target,
        out -> {
          out.write(columns.getBytes(StandardCharsets.UTF_8));
          for (Part part : parts) {
            part.copy(out);
          }
        });
  }
}
