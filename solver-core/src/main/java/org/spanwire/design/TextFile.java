package org.spanwire.design;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads text files of limited size, strictly as UTF-8. */
final class TextFile {

  /**
   * Largest file read, in bytes: designs are some kilobytes, and memory must not depend on luck.
   */
  static final int LARGEST = 4 << 20;

  private TextFile() {}

  /** A file that a document names; a missing one is the fault of the line that names it. */
  static String read(Item item) {
    try {
      return read(item.path());
    } catch (DesignException e) {
      throw e.line() > 0 ? e : item.fault(e.getMessage());
    }
  }

  static String read(Path path) {
    String name = path.toString();
    if (!Files.exists(path)) {
      throw whole(name, "no such file; check the path");
    }
    if (Files.isDirectory(path)) {
      throw whole(name, "is a directory; name a file in it");
    }
    try (InputStream in = Files.newInputStream(path)) {
      if (Files.size(path) > LARGEST) {
        throw tooLarge(name, Files.size(path) + " bytes");
      }
      byte[] bytes = in.readNBytes(LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw tooLarge(name, "more than " + LARGEST + " bytes");
      }
      return decode(name, bytes);
    } catch (IOException e) {
      throw whole(
          name, "cannot be read (" + e.getClass().getSimpleName() + "); check its access rights");
    }
  }

  static DesignException tooLarge(String name, String size) {
    return whole(name, "file has " + size + ", limit " + LARGEST + " bytes; is it the right file?");
  }

  static DesignException whole(String name, String problem) {
    return new DesignException(name, 0, 0, problem);
  }

  private static String decode(String name, byte[] bytes) {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    out.flip();
    String text = out.toString();
    if (result.isError()) {
      int[] place = end(text);
      throw new DesignException(
          name,
          place[0],
          place[1],
          String.format(
              "byte 0x%02x is not UTF-8; save the file as UTF-8", bytes[in.position()] & 0xff));
    }
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  /** Line and column after the last character of a text, both from 1. */
  static int[] end(String text) {
    int line = 1;
    int start = 0;
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '\n' || (text.charAt(i) == '\r' && !text.startsWith("\n", i + 1))) {
        line++;
        start = i + 1;
      }
    }
    return new int[] {line, text.codePointCount(start, text.length()) + 1};
  }
}
