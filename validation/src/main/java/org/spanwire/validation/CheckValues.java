package org.spanwire.validation;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * The project's list of check values, row by row, with the cases that hold each or the reason why
 * none does, so that what is absent can be seen. A row of the form {@code 1-10} is held by the
 * cases whose id is that or goes on with a slash or a blank; rows of a data set name their cases.
 */
final class CheckValues {

  private static final String FILE = "check-values.csv";

  /**
   * One row of the list.
   *
   * @param row its name
   * @param given what is given, or what it is about
   * @param cases ids of the cases that hold it
   * @param reason why there is none; empty otherwise
   */
  record Row(String row, String given, List<String> cases, String reason) {

    boolean isMissing() {
      return cases.isEmpty() && reason.isEmpty();
    }
  }

  private CheckValues() {}

  /** The rows with the cases that hold them. */
  static List<Row> rows(List<CaseGroup> groups) {
    List<String> ids =
        groups.stream().flatMap(g -> g.cases().stream()).map(ValidationCase::id).toList();
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader in =
        new InputStreamReader(
            CheckValues.class.getResourceAsStream(FILE), StandardCharsets.UTF_8)) {
      return format.parse(in).stream().map(record -> row(record, ids)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(FILE, e);
    }
  }

  private static Row row(CSVRecord record, List<String> ids) {
    String name = record.get("row");
    String named = record.get("cases");
    List<String> cases =
        named.isEmpty()
            ? ids.stream()
                .filter(
                    id -> id.equals(name) || id.startsWith(name + "/") || id.startsWith(name + " "))
                .toList()
            : Arrays.asList(named.split("; "));
    return new Row(name, record.get("given"), cases, record.get("reason"));
  }

  /** The list as a section of the report; a row without case and reason is a fault. */
  static Section section(List<CaseGroup> groups) {
    List<Row> rows = rows(groups);
    Set<String> ids =
        groups.stream()
            .flatMap(g -> g.cases().stream())
            .map(ValidationCase::id)
            .collect(Collectors.toSet());
    List<String> faults = new ArrayList<>();
    for (Row row : rows) {
      if (row.isMissing()) {
        faults.add("check value " + row.row() + " has neither a case nor a reason");
      }
      row.cases().stream()
          .filter(id -> !ids.contains(id))
          .forEach(
              id -> faults.add("check value " + row.row() + " names case " + id + ", unknown"));
    }
    return new Section(markdown(rows), faults);
  }

  private static String markdown(List<Row> rows) {
    long held = rows.stream().filter(row -> !row.cases().isEmpty()).count();
    StringBuilder text = new StringBuilder("## Where each check value is held\n\n");
    text.append(
        String.format(
            Locale.ROOT,
            "%d rows: %d are held by cases, %d are not for the reason given, %d are missing.%n%n",
            rows.size(),
            held,
            rows.stream().filter(row -> row.cases().isEmpty() && !row.isMissing()).count(),
            rows.stream().filter(Row::isMissing).count()));
    text.append("| row | given | held by |\n|---|---|---|\n");
    for (Row row : rows) {
      String where =
          row.isMissing() ? "**nothing yet**" : row.cases().isEmpty() ? "not: " + row.reason() : "";
      text.append(
          String.format(
              Locale.ROOT,
              "| %s | %s | %s |%n",
              row.row(),
              row.given().replace("|", "\\|"),
              where.isEmpty() ? String.join("; ", row.cases()).replace("|", "\\|") : where));
    }
    return text.toString();
  }
}
