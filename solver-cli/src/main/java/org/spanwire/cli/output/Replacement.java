package org.spanwire.cli.output;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
    Path fresh = beside(file, UUID.randomUUID() + ".new");
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

  /**
   * Puts new files in the place of all targets, or leaves everything as it was: every one lies
   * whole beside its place before the first is moved there, and what was there comes back if a move
   * fails.
   *
   * @param texts what each target is to hold
   */
  public static void ofAll(Map<Path, String> texts) throws IOException {
    String mark = UUID.randomUUID().toString();
    List<Path> moved = new ArrayList<>();
    boolean done = false;
    try {
      for (Map.Entry<Path, String> text : texts.entrySet()) {
        Path fresh = beside(text.getKey(), mark + ".new");
        Files.writeString(fresh, text.getValue(), StandardOpenOption.CREATE_NEW);
      }
      for (Path target : texts.keySet()) {
        if (Files.exists(target)) {
          Files.copy(target, beside(target, mark + ".old"));
        }
        move(beside(target, mark + ".new"), target);
        moved.add(target);
      }
      done = true;
    } finally {
      for (Path target : texts.keySet()) {
        if (!done && moved.contains(target)) {
          restore(beside(target, mark + ".old"), target);
        }
        Files.deleteIfExists(beside(target, mark + ".new"));
        Files.deleteIfExists(beside(target, mark + ".old"));
      }
    }
  }

  private static void restore(Path old, Path target) throws IOException {
    if (Files.exists(old)) {
      move(old, target);
    } else {
      Files.deleteIfExists(target);
    }
  }

  private static Path beside(Path target, String ending) {
    Path file = target.toAbsolutePath();
    return file.resolveSibling("." + file.getFileName() + "." + ending);
  }

  private static void move(Path fresh, Path file) throws IOException {
    try {
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
