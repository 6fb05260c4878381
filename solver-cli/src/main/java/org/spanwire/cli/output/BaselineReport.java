package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.Design;
import org.spanwire.result.Warning;
import org.spanwire.study.Baseline;

/**
 * The outcome of {@code spanwire baseline compare}.
 *
 * @param designs the designs in the order of the command line
 * @param version version of the program
 */
public record BaselineReport(List<Compared> designs, String version) implements Report {

  /**
   * One design.
   *
   * @param design the design
   * @param file its record
   * @param changes all results then and now
   */
  public record Compared(Design design, String file, List<Baseline.Change> changes) {
    /** Takes a copy. */
    public Compared {
      changes = List.copyOf(changes);
    }

    List<Baseline.Change> drifted() {
      return changes.stream().filter(Baseline.Change::drifted).toList();
    }
  }

  /** Takes a copy. */
  public BaselineReport {
    designs = List.copyOf(designs);
  }

  /** Whether nothing moved by more than its limit. */
  public boolean passed() {
    return designs.stream().allMatch(each -> each.drifted().isEmpty());
  }

  @Override
  public List<Warning> warnings() {
    return List.of();
  }

  @Override
  public String text(Palette palette) {
    StringBuilder out = new StringBuilder();
    for (Compared each : designs) {
      out.append(palette.heading(each.design().title()))
          .append("  (")
          .append(each.file())
          .append(")\n");
      List<Baseline.Change> drifted = each.drifted();
      if (!drifted.isEmpty()) {
        out.append(table(drifted).render());
      }
      out.append(drifted.size())
          .append(" of ")
          .append(each.changes().size())
          .append(" results moved by more than their limits\n\n");
    }
    return out.toString();
  }

  private static Table table(List<Baseline.Change> drifted) {
    Table table =
        new Table()
            .word("place")
            .word("quantity")
            .number("was")
            .number("is")
            .number("moved by")
            .number("limit");
    for (Baseline.Change change : drifted) {
      int decimals = decimals(change.limit());
      table.row(
          change.place(),
          change.quantity(),
          Numbers.fixed(change.was(), decimals),
          Numbers.fixed(change.is(), decimals),
          Numbers.fixed(moved(change), decimals),
          Numbers.significant(change.limit(), 2));
    }
    return table;
  }

  /** To a tenth of the limit. */
  private static int decimals(double limit) {
    return limit > 0 ? (int) Math.max(0, Math.min(9, 1 - Math.floor(Math.log10(limit)))) : 6;
  }

  private static OptionalDouble moved(Baseline.Change change) {
    return change.was().isPresent() && change.is().isPresent()
        ? OptionalDouble.of(change.is().getAsDouble() - change.was().getAsDouble())
        : OptionalDouble.empty();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "baseline compare");
    json.writeStringField("version", version);
    json.writeBooleanField("passed", passed());
    json.writeArrayFieldStart("designs");
    for (Compared each : designs) {
      json.writeStartObject();
      json.writeStringField("design", each.design().title());
      json.writeStringField("file", each.design().source());
      json.writeStringField("baseline", each.file());
      json.writeArrayFieldStart("results");
      for (Baseline.Change change : each.changes()) {
        json.writeStartObject();
        json.writeStringField("place", change.place());
        json.writeStringField("quantity", change.quantity());
        Json.number(json, "was", change.was());
        Json.number(json, "is", change.is());
        if (moved(change).isEmpty()) {
          Json.undefined(json);
        }
        json.writeNumberField("limit", change.limit());
        json.writeBooleanField("drifted", change.drifted());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  @Override
  public void csv(CSVPrinter csv) throws IOException {
    csv.printRecord("design", "place", "quantity", "was", "is", "limit", "drifted");
    for (Compared each : designs) {
      for (Baseline.Change change : each.changes()) {
        csv.printRecord(
            each.design().title(),
            change.place(),
            change.quantity(),
            SolveCsv.cell(change.was()),
            SolveCsv.cell(change.is()),
            change.limit(),
            change.drifted());
      }
    }
  }
}
