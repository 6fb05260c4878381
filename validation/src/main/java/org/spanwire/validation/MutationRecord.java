package org.spanwire.validation;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/**
 * The mutation tests as they were last run at length, in a resource of this package: small faults
 * are planted in the code, one at a time, and a test should fail.
 *
 * @param groups one for each group of classes
 */
record MutationRecord(List<Group> groups) {

  static final String FILE = "mutations.csv";

  /** What mutation tests leave in the directory of a group. */
  private static final String REPORT = "mutations.xml";

  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT
          .builder()
          .setRecordSeparator('\n')
          .setHeader("group", "mutants", "killed", "timed_out", "date", "commit")
          .get();

  /**
   * One group of classes with the tests that are held to notice.
   *
   * @param name the group's name in the build
   * @param mutants number of faults planted
   * @param killed those that a test noticed, those that ran out of time among them
   * @param timedOut those that ran out of time, as by a loop without end
   * @param date day of the run
   * @param commit revision of the sources
   */
  record Group(String name, int mutants, int killed, int timedOut, LocalDate date, String commit) {

    double score() {
      return killed / (double) mutants;
    }
  }

  MutationRecord {
    groups = List.copyOf(groups);
  }

  /** The run that is kept. */
  static MutationRecord kept() {
    try (Reader in =
        new InputStreamReader(
            MutationRecord.class.getResourceAsStream(FILE), StandardCharsets.UTF_8)) {
      return read(in);
    } catch (IOException e) {
      throw new UncheckedIOException(FILE, e);
    }
  }

  static MutationRecord read(Reader in) throws IOException {
    try (CSVParser rows = CSVParser.parse(in, FORMAT.builder().setSkipHeaderRecord(true).get())) {
      return new MutationRecord(rows.stream().map(MutationRecord::group).toList());
    }
  }

  private static Group group(CSVRecord row) {
    return new Group(
        row.get("group"),
        Integer.parseInt(row.get("mutants")),
        Integer.parseInt(row.get("killed")),
        Integer.parseInt(row.get("timed_out")),
        LocalDate.parse(row.get("date")),
        row.get("commit"));
  }

  /** Writes the record to a file. */
  void write(Path file) throws IOException {
    try (CSVPrinter out = new CSVPrinter(Files.newBufferedWriter(file), FORMAT)) {
      for (Group group : groups) {
        out.printRecord(
            group.name(),
            group.mutants(),
            group.killed(),
            group.timedOut(),
            group.date(),
            group.commit());
      }
    }
  }

  /** This record with groups of a later run in the place of their former results. */
  MutationRecord with(List<Group> later) {
    List<Group> all = new ArrayList<>(groups);
    for (Group group : later) {
      all.removeIf(former -> former.name().equals(group.name()));
      all.add(group);
    }
    return new MutationRecord(all);
  }

  /** Counts the outcomes in the report of one group. */
  static Group count(String name, InputStream xml, LocalDate date, String commit)
      throws XMLStreamException {
    int mutants = 0;
    int killed = 0;
    int timedOut = 0;
    XMLStreamReader reader = XMLInputFactory.newInstance().createXMLStreamReader(xml);
    while (reader.hasNext()) {
      if (reader.next() == XMLStreamConstants.START_ELEMENT
          && reader.getLocalName().equals("mutation")) {
        mutants++;
        killed += Boolean.parseBoolean(reader.getAttributeValue(null, "detected")) ? 1 : 0;
        timedOut += "TIMED_OUT".equals(reader.getAttributeValue(null, "status")) ? 1 : 0;
      }
    }
    return new Group(name, mutants, killed, timedOut, date, commit);
  }

  /** Counts the outcomes in all reports, of which each directory has one for each group. */
  static List<Group> count(List<Path> directories, LocalDate date, String commit)
      throws IOException, XMLStreamException {
    List<Group> groups = new ArrayList<>();
    for (Path directory : directories) {
      for (Path report : reports(directory)) {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(report))) {
          groups.add(count(report.getParent().getFileName().toString(), in, date, commit));
        }
      }
    }
    return groups;
  }

  /**
   * Takes what mutation tests have left into the kept record.
   *
   * @param arguments the directory of the resource, then one for each module, in which every group
   *     has a directory with its report
   */
  public static void main(String[] arguments) throws IOException, XMLStreamException {
    RunStamp stamp = RunStamp.now();
    LocalDate date = LocalDate.ofInstant(stamp.date(), ZoneOffset.UTC);
    List<Path> modules = Arrays.stream(arguments).skip(1).map(Path::of).toList();
    List<Group> later = count(modules, date, stamp.commit());
    kept().with(later).write(Path.of(arguments[0]).resolve(FILE));
    later.forEach(
        group ->
            System.out.printf(
                "%s: %d of %d mutants killed%n", group.name(), group.killed(), group.mutants()));
  }

  private static List<Path> reports(Path directory) throws IOException {
    if (!Files.isDirectory(directory)) {
      return List.of();
    }
    try (Stream<Path> groups = Files.list(directory)) {
      return groups.map(group -> group.resolve(REPORT)).filter(Files::exists).sorted().toList();
    }
  }
}
