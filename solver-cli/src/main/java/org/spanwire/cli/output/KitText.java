package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.Design;
import org.spanwire.design.Stage;
import org.spanwire.medium.Cladding;
import org.spanwire.medium.Conductor;
import org.spanwire.practice.KitList;

/**
 * The kit list in words, JSON and CSV.
 *
 * @param design whose kit it is
 * @param kit its parts
 */
public record KitText(Design design, KitList kit) {

  /** Columns of the list, the first of which names the rows. */
  public static final List<String> COLUMNS =
      List.of("part", "count", "length, m", "mass, kg", "hangs, kg", "what");

  /** The list as rows of cells. */
  public List<List<String>> rows() {
    return kit.parts().stream()
        .map(
            part ->
                List.of(
                    part.name(),
                    Integer.toString(part.count()),
                    cell(part.metres(), 2),
                    cell(part.kilograms(), 3),
                    part.hangingShare() == 0 ? "" : cell(part.hangingKilograms(), 3),
                    what(part)))
        .toList();
  }

  private static String cell(OptionalDouble value, int decimals) {
    return value.isEmpty() ? "-" : Numbers.fixed(value.getAsDouble(), decimals);
  }

  /** What it comes to. */
  public String sums() {
    String text =
        "All parts "
            + kilograms(kit.knownKilograms())
            + ", of which "
            + kilograms(kit.knownHangingKilograms())
            + " hang on wires and supports.";
    return kit.unknown().isEmpty()
        ? text
        : text
            + " Not in these sums, since the design gives no mass: "
            + String.join(", ", kit.unknown())
            + ".";
  }

  /** What wires and supports carry, in short; a sum that misses parts is a lower bound. */
  public String hanging() {
    return (kit.unknownHanging().isEmpty() ? "" : "more than ")
        + kilograms(kit.knownHangingKilograms());
  }

  private static String kilograms(double value) {
    return Numbers.fixed(value, value < 1 ? 3 : 2) + " kg";
  }

  /** Make and size of a part with its note; empty if the design says nothing. */
  String what(KitList.Part part) {
    String make =
        switch (part.kind()) {
          case WIRE -> wire(part);
          case STAGE -> stage(KitList.stage(design, part));
          case FITTING, ITEM -> "";
        };
    return make + (make.isEmpty() || part.note().isEmpty() ? "" : "; ") + part.note();
  }

  private String wire(KitList.Part part) {
    Conductor wire = KitList.conductor(design, part);
    String text = wire.material().name() + ", " + millimetres(2 * wire.radius());
    if (wire.cladding().isPresent()) {
      Cladding layer = wire.cladding().get();
      text += ", of it " + millimetres(layer.thickness()) + " " + layer.material().name();
    }
    if (wire.insulation().isPresent()) {
      text += ", coat " + millimetres(wire.insulation().get().thickness());
    }
    OptionalDouble metal = wire.metalMassPerMetre();
    return part.kilograms().isPresent() || metal.isEmpty()
        ? text
        : text
            + "; its metal alone "
            + kilograms(metal.getAsDouble() * part.metres().orElse(0))
            + ", the density of its coat is not given";
  }

  private static String millimetres(double metres) {
    return Numbers.significant(1000 * metres, 3) + " mm";
  }

  private static String stage(Stage stage) {
    return stage instanceof Stage.Transformer transformer
        ? Numbers.significant(transformer.ratio(), 4) + ":1, " + StageText.make(transformer)
        : StageText.of(stage).orElse("");
  }

  void text(StringBuilder out, Palette palette) {
    out.append(palette.heading("Kit list")).append('\n');
    Table table =
        new Table()
            .word("part")
            .number("count")
            .number("length", "m")
            .number("mass", "kg")
            .number("hangs", "kg");
    rows().forEach(row -> table.row(row.subList(0, COLUMNS.size() - 1).toArray(new String[0])));
    out.append(table.render());
    Paragraph.write(out, "", 0, sums());
    out.append('\n');
    kit.parts().stream()
        .filter(part -> !what(part).isEmpty())
        .forEach(part -> Paragraph.write(out, "  " + part.name() + ": ", 6, what(part)));
    out.append('\n');
  }

  void json(JsonGenerator json) throws IOException {
    json.writeObjectFieldStart("kit");
    json.writeArrayFieldStart("parts");
    for (KitList.Part part : kit.parts()) {
      json.writeStartObject();
      json.writeStringField("kind", part.kind().name().toLowerCase(Locale.ROOT));
      json.writeStringField("part", part.name());
      json.writeStringField("what", what(part));
      json.writeNumberField("count", part.count());
      nullable(json, "length_m", part.metres());
      nullable(json, "mass_kg", part.kilograms());
      nullable(json, "hanging_mass_kg", part.hangingKilograms());
      json.writeStringField("note", part.note());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeNumberField("known_mass_kg", kit.knownKilograms());
    json.writeNumberField("known_hanging_mass_kg", kit.knownHangingKilograms());
    json.writeArrayFieldStart("unknown_mass");
    for (String name : kit.unknown()) {
      json.writeString(name);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void nullable(JsonGenerator json, String name, OptionalDouble value)
      throws IOException {
    if (value.isEmpty()) {
      json.writeNullField(name);
    } else {
      json.writeNumberField(name, value.getAsDouble());
    }
  }

  void csv(CSVPrinter csv) throws IOException {
    csv.printRecord(
        "kind", "part", "what", "count", "length_m", "mass_kg", "hanging_mass_kg", "note");
    for (KitList.Part part : kit.parts()) {
      csv.printRecord(
          part.kind().name().toLowerCase(Locale.ROOT),
          part.name(),
          what(part),
          part.count(),
          number(part.metres()),
          number(part.kilograms()),
          number(part.hangingKilograms()),
          part.note());
    }
  }

  private static Object number(OptionalDouble value) {
    return value.isEmpty() ? "" : value.getAsDouble();
  }
}
