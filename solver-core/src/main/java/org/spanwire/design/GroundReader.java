package org.spanwire.design;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.medium.SoilLayer;
import org.spanwire.medium.SoilTable;
import org.spanwire.medium.Soils;
import org.spanwire.unit.Dimension;

/** Reads what lies below the wires. */
final class GroundReader {

  static final String EXAMPLE =
      "{soil: medium-dry}, {permittivity: 13, conductivity: 5 mS/m}, {table: soil.csv}, perfect,"
          + " or free-space";

  private static final String HEADER = "frequency_hz,relative_permittivity,conductivity_s_per_m";

  private final Evaluator evaluator;

  GroundReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  Ground read(Item item) {
    if (item.isText()) {
      return switch (item.text()) {
        case "perfect" -> Ground.perfect();
        case "free-space" -> Ground.freeSpace();
        default ->
            throw item.fault(
                "unknown ground " + Words.quote(item.text()) + "; expected " + EXAMPLE);
      };
    }
    Fields fields = item.fields("soil", "permittivity", "conductivity", "table", "snow", "beneath");
    Soil soil = soil(item, fields);
    List<SoilLayer> layers = new ArrayList<>();
    fields.optional("snow").map(this::snow).ifPresent(layers::add);
    fields.optional("beneath").map(this::beneath).ifPresent(layers::add);
    return soil.withLayers(layers);
  }

  private Soil soil(Item item, Fields fields) {
    boolean named = fields.optional("soil").isPresent();
    boolean tabulated = fields.optional("table").isPresent();
    boolean constants =
        fields.optional("permittivity").or(() -> fields.optional("conductivity")).isPresent();
    if (named && constants || named && tabulated || tabulated && constants) {
      throw item.fault(
          item.name()
              + " has more than one of a soil name, constants and a table; keep one, "
              + EXAMPLE);
    }
    if (named) {
      Item name = fields.required("soil", "medium-dry");
      return Soils.find(name.text())
          .orElseThrow(() -> name.unknown("soil", Soils.all().stream().map(Soil::name).toList()));
    }
    if (tabulated) {
      return table(fields.required("table", "soil.csv"));
    }
    double permittivity =
        evaluator.positive(fields.required("permittivity", "13"), Dimension.NUMBER);
    double conductivity =
        evaluator.notNegative(fields.required("conductivity", "5 mS/m"), Dimension.CONDUCTIVITY);
    return item.checked(() -> Soil.of(permittivity, conductivity));
  }

  private static Soil table(Item item) {
    List<SoilTable.Row> rows = new ArrayList<>();
    for (double[] row : NumberTable.read(item, HEADER)) {
      rows.add(item.checked(() -> new SoilTable.Row(row[0], row[1], row[2])));
    }
    String file = Path.of(item.text()).getFileName().toString();
    return Soil.of(
        file, new SoilTable(rows), "given by the user, linear in log frequency between rows");
  }

  private SoilLayer snow(Item item) {
    Fields fields = item.fields("depth", "permittivity");
    double depth = evaluator.positive(fields.required("depth", "0.8 m"), Dimension.LENGTH);
    double permittivity =
        fields
            .optional("permittivity")
            .map(value -> evaluator.positive(value, Dimension.NUMBER))
            .orElse(SoilLayer.DRY_SNOW_PERMITTIVITY);
    return item.checked(() -> new SoilLayer(SoilLayer.Place.ON_THE_SOIL, depth, permittivity, 0));
  }

  private SoilLayer beneath(Item item) {
    Fields fields = item.fields("depth", "permittivity", "conductivity");
    double depth = evaluator.positive(fields.required("depth", "3 m"), Dimension.LENGTH);
    double permittivity =
        evaluator.positive(fields.required("permittivity", "30"), Dimension.NUMBER);
    double conductivity =
        evaluator.notNegative(fields.required("conductivity", "10 mS/m"), Dimension.CONDUCTIVITY);
    return item.checked(
        () -> new SoilLayer(SoilLayer.Place.BENEATH_THE_SOIL, depth, permittivity, conductivity));
  }
}
