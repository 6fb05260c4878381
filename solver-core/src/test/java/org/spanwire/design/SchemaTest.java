package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.spanwire.medium.Material;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;
import org.spanwire.medium.Soils;

/** The published schema and the reader must take the same designs. */
class SchemaTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final SchemaRegistry REGISTRY =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
  private static final Schema DESIGN = REGISTRY.getSchema(Schemas.design(), InputFormat.JSON);
  private static final Schema RESULT = REGISTRY.getSchema(Schemas.result(), InputFormat.JSON);
  private static final Set<String> NAMED =
      Set.of("/parameters", "/conductors", "/wires", "/feeds", "/fittings");

  @TempDir Path directory;

  private JsonNode complete;

  @BeforeEach
  void readTheCompleteDesign() throws IOException {
    Files.copy(Designs.resource("table.csv"), directory.resolve("table.csv"));
    String text = Files.readString(Designs.resource("complete.yaml"));
    complete = JSON.valueToTree(new Load(LoadSettings.builder().build()).loadFromString(text));
  }

  private boolean readerTakes(JsonNode design) throws IOException {
    Path file = directory.resolve("design.json");
    Files.writeString(file, JSON.writeValueAsString(design));
    try {
      DesignReader.read(file);
      return true;
    } catch (DesignException e) {
      return false;
    }
  }

  @Test
  void schemasAreValidSchemas() {
    Schema meta =
        REGISTRY.getSchema(
            com.networknt.schema.SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    assertThat(meta.validate(Schemas.design(), InputFormat.JSON)).isEmpty();
    assertThat(meta.validate(Schemas.result(), InputFormat.JSON)).isEmpty();
  }

  @Test
  void bothTakeTheCompleteDesign() throws IOException {
    assertThat(DESIGN.validate(complete)).isEmpty();
    assertThat(readerTakes(complete)).isTrue();
  }

  /**
   * Every key that the schema knows occurs in the complete design, so the tests below miss none.
   */
  @Test
  void theCompleteDesignIsComplete() throws IOException {
    Set<String> known = new TreeSet<>();
    collectProperties(JSON.readTree(Schemas.design()), known);
    Set<String> used = new TreeSet<>();
    collectKeys(complete, used);
    // The two forms of the ground that exclude the one used there.
    used.add("soil");
    assertThat(used).containsAll(known);
    assertThat(known).hasSizeGreaterThan(50);
  }

  @Test
  void bothRefuseAnUnknownKeyAnywhere() throws IOException {
    List<String> taken = new ArrayList<>();
    int tried = 0;
    for (String pointer : objects(complete, "", new ArrayList<>())) {
      JsonNode changed = complete.deepCopy();
      ((ObjectNode) changed.at(pointer)).put("unknown-key", "1");
      tried++;
      if (DESIGN.validate(changed).isEmpty() || readerTakes(changed)) {
        taken.add(pointer);
      }
    }
    assertThat(taken).isEmpty();
    assertThat(tried).isGreaterThan(30);
  }

  @Test
  void bothNeedTheSameKeys() throws IOException {
    List<String> disagreements = new ArrayList<>();
    int needed = 0;
    for (String pointer : objects(complete, "", new ArrayList<>())) {
      if (NAMED.contains(pointer)) {
        continue;
      }
      for (String key : keys(complete.at(pointer))) {
        JsonNode changed = complete.deepCopy();
        ((ObjectNode) changed.at(pointer)).remove(key);
        if (pointer.isEmpty() && (key.equals("parameters") || key.equals("bands"))
            || key.equals("mechanical")) {
          // Optional by themselves, but used elsewhere in this design.
          continue;
        }
        boolean valid = DESIGN.validate(changed).isEmpty();
        needed += valid ? 0 : 1;
        if (valid != readerTakes(changed)) {
          disagreements.add(
              pointer
                  + "/"
                  + key
                  + (valid ? ": only the schema can do without" : ": only the reader"));
        }
      }
    }
    assertThat(disagreements).isEmpty();
    assertThat(needed).isGreaterThan(25);
  }

  @Test
  void bothRefuseTheSameTypes() throws IOException {
    List<String> disagreements = new ArrayList<>();
    for (String pointer :
        List.of(
            "/title",
            "/wires",
            "/wires/radiator/path",
            "/feed-chain",
            "/frequencies",
            "/bands/use")) {
      for (JsonNode wrong :
          List.of(JSON.createArrayNode(), JSON.createObjectNode(), JSON.nullNode())) {
        JsonNode changed = complete.deepCopy();
        int slash = pointer.lastIndexOf('/');
        ((ObjectNode) changed.at(pointer.substring(0, slash)))
            .set(pointer.substring(slash + 1), wrong);
        boolean valid = DESIGN.validate(changed).isEmpty();
        if (valid != readerTakes(changed)) {
          disagreements.add(
              pointer
                  + " = "
                  + wrong
                  + (valid ? ": only the schema takes it" : ": only the reader"));
        }
      }
    }
    assertThat(disagreements).isEmpty();
  }

  @Test
  void theSchemaListsWhatTheProgramKnows() throws IOException {
    JsonNode defs = JSON.readTree(Schemas.design()).get("$defs");
    assertThat(texts(defs.at("/material/oneOf/0/enum")))
        .isEqualTo(Materials.all().stream().map(Material::name).toList());
    assertThat(texts(defs.at("/ground/oneOf/1/properties/soil/enum")))
        .isEqualTo(Soils.all().stream().map(Soil::name).toList());
    assertThat(texts(defs.at("/bands/properties/plan/enum")))
        .isEqualTo(BandPlan.all().stream().map(BandPlan::name).toList());
  }

  @Test
  void theResultSchemaIsClosed() throws IOException {
    ObjectNode result =
        (ObjectNode)
            JSON.readTree(
                """
                {"format": "spanwire-result/1", "command": "solve", "design": "d", "version": "v",
                 "conditions": {"ground": {"kind": "perfect"}, "lowest_m": 1, "highest_m": 2,
                   "feeds": [{"name": "main", "wire": "radiator", "distance_m": 3, "gap_m": 0.004}],
                   "transformer_ratio": 4, "power_w": 100, "power_assumed": true, "tolerance": 0.001,
                   "largest_relative_error": 1e-4},
                 "solutions": [{"frequency_hz": 7.1e6,
                   "feeds": [{"name": "main", "impedance_ohm": {"re": 1, "im": 2}, "impedance_error_ohm": 0.2,
                     "gap_m": 0.004,
                     "swr": [{"plane": "feedpoint", "reference_ohm": 200, "value": null, "status": "open"}]}],
                   "port_matrix_ohm": [[{"re": 1, "im": 2}]],
                   "gain": {"peak_dbi": 1, "elevation_deg": 90, "azimuth_deg": null, "status": "undefined"},
                   "gain_samples": [], "radiation_efficiency": 0.5, "power_balance": null, "currents": [],
                   "unknowns": 34, "warnings": []}]}
                """);
    assertThat(RESULT.validate(result)).isEmpty();
    ObjectNode swr = (ObjectNode) result.at("/solutions/0/feeds/0/swr/0");
    swr.remove("status");
    assertThat(RESULT.validate(result)).as("null without status").isNotEmpty();
    swr.put("status", "open");
    for (String pointer : objects(result, "", new ArrayList<>())) {
      JsonNode changed = result.deepCopy();
      ((ObjectNode) changed.at(pointer)).put("unknown_key", 1);
      assertThat(RESULT.validate(changed)).as("unknown key at '%s'", pointer).isNotEmpty();
    }
  }

  private static List<String> objects(JsonNode node, String pointer, List<String> found) {
    if (node instanceof ObjectNode) {
      found.add(pointer);
      node.properties().forEach(e -> objects(e.getValue(), pointer + "/" + e.getKey(), found));
    } else if (node instanceof ArrayNode) {
      for (int i = 0; i < node.size(); i++) {
        objects(node.get(i), pointer + "/" + i, found);
      }
    }
    return found;
  }

  private static List<String> keys(JsonNode node) {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  private static void collectKeys(JsonNode node, Set<String> found) {
    found.addAll(keys(node));
    node.forEach(child -> collectKeys(child, found));
  }

  private static void collectProperties(JsonNode node, Set<String> found) {
    JsonNode properties = node.get("properties");
    if (properties != null) {
      found.addAll(keys(properties));
    }
    node.forEach(child -> collectProperties(child, found));
  }

  private static List<String> texts(JsonNode array) {
    List<String> texts = new ArrayList<>();
    array.forEach(each -> texts.add(each.asText()));
    return texts;
  }
}
