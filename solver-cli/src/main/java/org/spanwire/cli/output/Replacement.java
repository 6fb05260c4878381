package org.spanwire.cli.output;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** A file written beside another and moved into its place once it is whole. */
public final class Replacement {

  /** What the file is to hold. */
  @FunctionalInterface
  public interface Content {

    /** Writes all of it. */
    void to(OutputStream out) throws IOException;
  }

  private Replacement() {}

  /** Puts a new file in the place of the target, or leaves everything as it was. */
  public static void of(Path target, Content content) throws IOException {
    Path file = target.toAbsolutePath();
    // Unlike a temporary file of the platform's, it has the rights that new files have here.
    Path fresh = file.resolveSibling("." + file.getFileName() + "." + UUID.randomUUID() + ".new");
    try {
      try (OutputStream out =
          new BufferedOutputStream(
              Files.newOutputStream(
                  fresh, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE))) {
        content.to(out);
      }
      move(fresh, file);
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  private static void move(Path fresh, Path file) throws IOException {
    try {
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
