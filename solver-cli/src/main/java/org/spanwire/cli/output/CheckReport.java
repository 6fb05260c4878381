package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.Design;
import org.spanwire.design.Requirement;
import org.spanwire.result.Warning;
import org.spanwire.study.CheckedRequirement;

/**
 * The outcome of {@code spanwire check}.
 *
 * @param designs the designs in the order of the command line
 * @param version version of the program
 * @param tolerance wanted relative accuracy of impedances at the first look
 */
public record CheckReport(List<Checked> designs, String version, double tolerance)
    implements Report {

  /**
   * One design.
   *
   * @param design the design
   * @param requirements its requirements in the order of the file
   */
  public record Checked(Design design, List<CheckedRequirement> requirements) {
    /** Takes a copy. */
    public Checked {
      requirements = List.copyOf(requirements);
    }
  }

  /** Takes a copy. */
  public CheckReport {
    designs = List.copyOf(designs);
  }

  /** Whether all requirements of all designs are kept. */
  public boolean passed() {
    return designs.stream()
        .flatMap(each -> each.requirements().stream())
        .allMatch(CheckedRequirement::passed);
  }

  @Override
  public List<Warning> warnings() {
    return designs.stream()
        .flatMap(each -> each.requirements().stream())
        .flatMap(each -> each.warnings().stream())
        .toList();
  }

  @Override
  public String text(Palette palette) {
    return new CheckText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", Json.FORMAT);
    json.writeStringField("command", "check");
    json.writeStringField("version", version);
    json.writeNumberField("tolerance", tolerance);
    json.writeBooleanField("passed", passed());
    json.writeArrayFieldStart("designs");
    for (Checked each : designs) {
      json.writeStartObject();
      json.writeStringField("design", each.design().title());
      json.writeStringField("file", each.design().source());
      json.writeArrayFieldStart("requirements");
      for (CheckedRequirement checked : each.requirements()) {
        requirement(json, checked);
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static void requirement(JsonGenerator json, CheckedRequirement checked)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("requirement", RequirementText.whole(checked));
    if (checked.requirement().scope() instanceof Requirement.InBand in) {
      json.writeStringField("band", in.band().name());
    }
    json.writeStringField("quantity", word(checked.quantity()));
    json.writeStringField("unit", checked.quantity().unit());
    json.writeStringField("outcome", checked.outcome().label());
    json.writeStringField("side", checked.quantity().atMost() ? "at-most" : "at-least");
    json.writeNumberField("limit", checked.limit());
    Json.number(json, "value", checked.found());
    Json.number(json, "value_low", checked.low());
    Json.number(json, "value_high", checked.high());
    Json.number(json, "margin", checked.margin());
    if (!Double.isFinite(checked.low()) || !Double.isFinite(checked.high())) {
      Json.undefined(json);
    }
    Json.number(json, "frequency_hz", checked.frequencyHz());
    json.writeNumberField("tolerance", checked.tolerance());
    json.writeStringField("cause", checked.cause());
    Json.warnings(json, List.copyOf(new LinkedHashSet<>(checked.warnings())));
    json.writeEndObject();
  }

  @Override
  public void csv(CSVPrinter csv) throws IOException {
    csv.printRecord(
        "design",
        "file",
        "scope",
        "quantity",
        "unit",
        "outcome",
        "side",
        "limit",
        "value",
        "value_low",
        "value_high",
        "margin",
        "frequency_hz",
        "tolerance",
        "cause");
    for (Checked each : designs) {
      for (CheckedRequirement checked : each.requirements()) {
        csv.printRecord(
            each.design().title(),
            each.design().source(),
            RequirementText.scope(checked.requirement()),
            RequirementText.quantity(checked),
            checked.quantity().unit(),
            checked.outcome().label(),
            checked.quantity().atMost() ? "at-most" : "at-least",
            checked.limit(),
            SolveCsv.cell(checked.found()),
            SolveCsv.cell(checked.low()),
            SolveCsv.cell(checked.high()),
            SolveCsv.cell(checked.margin()),
            SolveCsv.cell(checked.frequencyHz()),
            checked.tolerance(),
            checked.cause());
      }
    }
  }
}
