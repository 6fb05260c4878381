package org.spanwire.validation;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.apache.commons.math3.complex.Complex;

/**
 * Reads the cases from their resource files.
 *
 * <p>A file holds one group: {@code group}, {@code title} and {@code sets}. The cases of a set
 * share {@code shape}, {@code quantity}, fixed {@code parameters}, {@code tolerance} with its
 * {@code reason}, {@code source} and {@code origin}. {@code columns} names what varies: first
 * {@code id}, then parameters, then {@code value} or {@code real} and {@code imaginary}, the
 * published value; {@code rows} holds one case each. A {@code reference} gives the {@code shape}
 * and the {@code parameters} in which the structure of comparison differs. Lengths are in
 * wavelengths unless the name says otherwise.
 */
final class CaseLibrary {

  private static final List<String> FILES =
      List.of(
          "01-straight-dipole.json",
          "02-mutual-impedance.json",
          "03-directivity-and-arrays.json",
          "04-loops-and-bends.json",
          "05-yagi.json",
          "06-verticals-over-perfect-ground.json",
          "07-dipole-over-perfect-ground.json",
          "08-real-ground.json",
          "09-ground-constants.json",
          "10-conductor-loss.json",
          "11-insulated-wire.json",
          "12-lines-and-mismatch.json",
          "13-near-field.json",
          "14-sag-and-tension.json",
          "15-off-centre-feed.json",
          "16-laws.json");

  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private CaseLibrary() {}

  /** All groups in order. */
  static List<CaseGroup> load() {
    List<CaseGroup> groups = FILES.stream().map(CaseLibrary::read).toList();
    Set<String> ids = new HashSet<>();
    for (CaseGroup group : groups) {
      for (ValidationCase one : group.cases()) {
        if (!ids.add(one.id())) {
          throw new IllegalArgumentException("case id '" + one.id() + "' appears twice");
        }
      }
    }
    return groups;
  }

  private static CaseGroup read(String file) {
    try (InputStream in = CaseLibrary.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalArgumentException("resource " + file + " is missing");
      }
      return located(file, () -> group(tree(in)));
    } catch (IOException e) {
      throw new UncheckedIOException(file, e);
    }
  }

  private static JsonNode tree(InputStream in) {
    try {
      return JSON.readTree(in);
    } catch (IOException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  /** Parses one group. */
  static CaseGroup group(JsonNode root) {
    int number = required(root, "group").intValue();
    List<ValidationCase> cases = new ArrayList<>();
    for (JsonNode set : required(root, "sets")) {
      cases.addAll(set(number, set));
    }
    return new CaseGroup(number, required(root, "title").textValue(), cases);
  }

  private static List<ValidationCase> set(int group, JsonNode set) {
    List<String> columns = new ArrayList<>();
    required(set, "columns").forEach(c -> columns.add(c.textValue()));
    List<ValidationCase> cases = new ArrayList<>();
    for (JsonNode row : required(set, "rows")) {
      cases.add(located("row " + row.path(0).asText(), () -> oneCase(group, set, columns, row)));
    }
    return cases;
  }

  private static ValidationCase oneCase(
      int group, JsonNode set, List<String> columns, JsonNode row) {
    if (row.size() != columns.size()) {
      throw new IllegalArgumentException(
          "has " + row.size() + " entries, its columns are " + columns.size());
    }
    Map<String, JsonNode> cells = new TreeMap<>();
    for (int i = 0; i < columns.size(); i++) {
      cells.put(columns.get(i), row.get(i));
    }
    String id = cells.remove("id").textValue();
    Complex expected =
        cells.containsKey("value")
            ? new Complex(cells.remove("value").doubleValue())
            : new Complex(
                cells.remove("real").doubleValue(), cells.remove("imaginary").doubleValue());
    Shape shape = constant(Shape.class, set, "shape");
    Parameters parameters = parameters(set.path("parameters")).with(parameters(cells));
    Structure structure = checked(new Structure(shape, parameters));
    return new ValidationCase(
        id,
        group,
        structure,
        set.has("reference") ? reference(structure, set.get("reference")) : structure,
        constant(Quantity.class, set, "quantity"),
        expected,
        tolerance(required(set, "tolerance")),
        required(set, "source").textValue(),
        constant(Origin.class, set, "origin"));
  }

  /** The structure of comparison: another shape, other parameters, or both. */
  private static Structure reference(Structure structure, JsonNode node) {
    Shape shape = node.has("shape") ? constant(Shape.class, node, "shape") : structure.shape();
    Parameters others = parameters(node.path("parameters"));
    checked(new Structure(shape, others));
    return new Structure(shape, structure.parameters().with(others));
  }

  private static Structure checked(Structure structure) {
    Set<String> unknown = new HashSet<>(structure.parameters().values().keySet());
    unknown.removeAll(structure.shape().parameterNames());
    unknown.removeAll(Quantity.parameterNames());
    if (!unknown.isEmpty()) {
      throw new IllegalArgumentException("parameters nobody reads: " + unknown);
    }
    return structure;
  }

  private static Tolerance tolerance(JsonNode node) {
    boolean relative = node.has("relative");
    double limit = required(node, relative ? "relative" : "absolute").doubleValue();
    return new Tolerance(limit, relative, required(node, "reason").textValue());
  }

  private static Parameters parameters(JsonNode object) {
    Map<String, JsonNode> nodes = new TreeMap<>();
    object.properties().forEach(e -> nodes.put(e.getKey(), e.getValue()));
    return parameters(nodes);
  }

  private static Parameters parameters(Map<String, JsonNode> nodes) {
    Map<String, Object> values = new TreeMap<>();
    nodes.forEach((name, node) -> values.put(name, plain(name, node)));
    return new Parameters(values);
  }

  private static Object plain(String name, JsonNode node) {
    if (node.isNumber()) {
      return node.doubleValue();
    }
    if (node.isTextual()) {
      return node.textValue();
    }
    if (node.isBoolean()) {
      return node.booleanValue();
    }
    if (node.isArray()) {
      List<Double> numbers = new ArrayList<>();
      node.forEach(n -> numbers.add(n.doubleValue()));
      return List.copyOf(numbers);
    }
    throw new IllegalArgumentException("parameter '" + name + "' cannot be " + node);
  }

  private static <E extends Enum<E>> E constant(Class<E> type, JsonNode set, String key) {
    String text = required(set, key).textValue();
    return Enum.valueOf(type, text.toUpperCase(Locale.ROOT).replace('-', '_').replace(' ', '_'));
  }

  private static JsonNode required(JsonNode object, String key) {
    JsonNode value = object.get(key);
    if (value == null) {
      throw new IllegalArgumentException("'" + key + "' is missing");
    }
    return value;
  }

  private static <T> T located(String place, Supplier<T> reading) {
    try {
      return reading.get();
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(place + ": " + e.getMessage(), e);
    }
  }
}
