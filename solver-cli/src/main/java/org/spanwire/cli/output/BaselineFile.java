package org.spanwire.cli.output;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.spanwire.study.Baseline;

/** The file of a baseline: CSV with comments, one line per result, short enough for a review. */
public final class BaselineFile {

  private static final String FORMAT = "spanwire-baseline/1";
  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final String[] COLUMNS = {"place", "quantity", "value", "limit"};

  private static final CSVFormat CSV =
      CSVFormat.RFC4180
          .builder()
          .setRecordSeparator('\n')
          .setHeader(COLUMNS)
          .setSkipHeaderRecord(true)
          .setIgnoreEmptyLines(true)
          .setCommentMarker('#')
          .get();

  /** Digits of a value; what they leave out is far below its limit. */
  private static final int DIGITS = 7;

  private BaselineFile() {}

  /** A file that is no record of this format. */
  public static final class UnfitException extends Exception {

    private static final long serialVersionUID = 1L;

    UnfitException(Path file, long line, String problem) {
      super(file + (line > 0 ? ":" + line : "") + ": " + problem);
    }
  }

  /** The text of the file. */
  public static String text(Baseline baseline, String title, String version, double tolerance) {
    StringWriter out = new StringWriter();
    CSVFormat format =
        CSV.builder()
            .setSkipHeaderRecord(false)
            .setHeaderComments(
                FORMAT, title, "recorded by Spanwire " + version + ", tolerance " + tolerance)
            .get();
    try (CSVPrinter csv = new CSVPrinter(out, format)) {
      for (Baseline.Entry entry : baseline.entries()) {
        csv.printRecord(
            entry.place(),
            entry.quantity(),
            Numbers.significant(entry.value(), DIGITS),
            Numbers.significant(entry.limit(), 2));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  /**
   * Reads a file.
   *
   * @throws UnfitException if it is no record
   */
  public static Baseline read(Path file) throws IOException, UnfitException {
    List<Baseline.Entry> entries = new ArrayList<>();
    Map<List<String>, Long> lines = new HashMap<>();
    CSVFormat withHeader = CSV.builder().setSkipHeaderRecord(false).get();
    try (CSVParser parser = CSVParser.parse(content(file), withHeader)) {
      boolean header = true;
      for (CSVRecord row : parser) {
        if (header) {
          checkHeader(file, row);
          header = false;
        } else {
          long line = parser.getCurrentLineNumber();
          Baseline.Entry entry = entry(file, line, row);
          Long before = lines.putIfAbsent(List.of(entry.place(), entry.quantity()), line);
          if (before != null) {
            throw new UnfitException(
                file,
                line,
                entry.quantity()
                    + " at "
                    + entry.place()
                    + " stands in line "
                    + before
                    + " already; remove one of them");
          }
          entries.add(entry);
        }
      }
      if (header) {
        throw new UnfitException(file, 0, "is empty; record it again");
      }
      return new Baseline(entries);
    } catch (UncheckedIOException e) {
      throw new UnfitException(file, 0, "has a quotation mark left open; record it again");
    }
  }

  /** The text without the mark of its byte order that some editors put first. */
  private static String content(Path file) throws IOException, UnfitException {
    try {
      String text = Files.readString(file, StandardCharsets.UTF_8);
      return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new UnfitException(file, 0, "is no UTF-8 text; record it again");
    }
  }

  private static void checkHeader(Path file, CSVRecord row) throws UnfitException {
    String comment = row.getComment();
    if (comment == null || !comment.lines().findFirst().orElse("").strip().equals(FORMAT)) {
      throw new UnfitException(file, 1, "expected # " + FORMAT + "; is it the right file?");
    }
    if (!Arrays.equals(row.values(), COLUMNS)) {
      throw new UnfitException(
          file, row.getParser().getCurrentLineNumber(), "expected " + String.join(",", COLUMNS));
    }
  }

  private static Baseline.Entry entry(Path file, long line, CSVRecord row) throws UnfitException {
    if (row.size() != COLUMNS.length) {
      throw new UnfitException(file, line, "expected " + String.join(",", COLUMNS));
    }
    try {
      return new Baseline.Entry(
          row.get(0), row.get(1), Double.parseDouble(row.get(2)), Double.parseDouble(row.get(3)));
    } catch (IllegalArgumentException e) {
      throw new UnfitException(
          file, line, "value must be a number, limit a number not below 0; record it again");
    }
  }
}
