package org.spanwire.validation.accuracy;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.math3.complex.Complex;

/**
 * The honesty study as it was run at length, in a resource of this package. The structures follow
 * from the seed and their numbers; the file holds what was solved.
 *
 * @param date day of the run
 * @param study the run
 */
record HonestyRecord(LocalDate date, HonestyStudy study) {

  static final String FILE = "stated-error.csv";

  /** First cell of the row that tells of the run; all others are feeds. */
  private static final String RUN = "run";

  private static final String OUT_OF_REACH = "out of reach";

  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT.builder().setRecordSeparator('\n').setCommentMarker('#').get();

  /** The run that is kept. */
  static HonestyRecord kept() {
    try (Reader in =
        new InputStreamReader(
            HonestyRecord.class.getResourceAsStream(FILE), StandardCharsets.UTF_8)) {
      return read(in);
    } catch (IOException e) {
      throw new UncheckedIOException(FILE, e);
    }
  }

  /** Reads a run. */
  static HonestyRecord read(Reader in) throws IOException {
    LocalDate date = null;
    long seed = 0;
    int structures = 0;
    int refused = 0;
    List<HonestyCase> cases = new ArrayList<>();
    List<String> outOfReach = new ArrayList<>();
    try (CSVParser rows = CSVParser.parse(in, FORMAT)) {
      for (CSVRecord row : rows) {
        switch (row.get(0)) {
          case RUN -> {
            date = LocalDate.parse(row.get(1));
            seed = Long.parseLong(row.get(2));
            structures = Integer.parseInt(row.get(3));
            refused = Integer.parseInt(row.get(4));
          }
          case OUT_OF_REACH -> outOfReach.add(row.get(1));
          default -> cases.add(feed(row, RandomStructure.of(seed, (int) number(row, 0))));
        }
      }
    }
    return new HonestyRecord(date, new HonestyStudy(seed, structures, refused, cases, outOfReach));
  }

  private static HonestyCase feed(CSVRecord row, RandomStructure structure) {
    return new HonestyCase(
        structure,
        row.get(1),
        number(row, 2),
        (int) number(row, 3),
        new Complex(number(row, 4), number(row, 5)),
        new Complex(number(row, 6), number(row, 7)),
        number(row, 8),
        number(row, 9));
  }

  private static double number(CSVRecord row, int column) {
    return Double.parseDouble(row.get(column));
  }

  private static double rounded(double value, int digits) {
    return new BigDecimal(value, new MathContext(digits)).doubleValue();
  }

  /** Writes the run to a file in a directory, which is created if need be. */
  void write(Path directory) throws IOException {
    Files.createDirectories(directory);
    try (CSVPrinter out =
        new CSVPrinter(Files.newBufferedWriter(directory.resolve(FILE)), FORMAT)) {
      out.printComment("run, date, seed, structures solved, structures refused before them");
      out.printRecord(RUN, date, study.seed(), study.structures(), study.refused());
      out.printComment(
          "structure, feed, tolerance, unknowns, R and X, R and X of the tightest run, stated"
              + " error, stated error of the tightest run; ohm");
      for (HonestyCase c : study.cases()) {
        out.printRecord(
            c.structure().number(),
            c.feed(),
            c.tolerance(),
            c.unknowns(),
            rounded(c.impedance().getReal(), 10),
            rounded(c.impedance().getImaginary(), 10),
            rounded(c.reference().getReal(), 10),
            rounded(c.reference().getImaginary(), 10),
            rounded(c.statedOhm(), 4),
            rounded(c.referenceOhm(), 4));
      }
      for (String line : study.outOfReach()) {
        out.printRecord(OUT_OF_REACH, line);
      }
    }
  }
}
