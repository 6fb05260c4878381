package org.spanwire.design;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** A mapping whose keys are names given by the user, in the order of the file. */
final class Names {

  private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}_][\\p{L}\\p{N} _.-]{0,63}");

  private final Map<String, Item> keys = new LinkedHashMap<>();
  private final Map<String, Item> values = new LinkedHashMap<>();

  Names(Document document, Item owner, MappingNode mapping, String kind) {
    for (NodeTuple tuple : mapping.getValue()) {
      Item key = new Item(document, tuple.getKeyNode(), "a key of " + owner.name());
      if (!(tuple.getKeyNode() instanceof ScalarNode scalar)) {
        throw key.fault("a key of " + owner.name() + " is no text; expected the name of a " + kind);
      }
      String name = scalar.getValue();
      if (!NAME.matcher(name).matches()) {
        throw key.fault(
            kind
                + " name "
                + Words.quote(name)
                + " is not allowed; expected up to 64 letters, digits, blanks, and _ . -");
      }
      if (keys.put(name, key) != null) {
        throw key.fault(
            "duplicate " + kind + " name " + Words.quote(name) + "; rename one of them");
      }
      values.put(name, new Item(document, tuple.getValueNode(), kind + " " + Words.quote(name)));
    }
  }

  Set<String> all() {
    return values.keySet();
  }

  Item key(String name) {
    return keys.get(name);
  }

  Item value(String name) {
    return values.get(name);
  }

  /** Every value read, under its name. */
  <T> Map<String, T> map(BiFunction<String, Item, T> reader) {
    Map<String, T> result = new LinkedHashMap<>();
    values.forEach((name, item) -> result.put(name, reader.apply(name, item)));
    return result;
  }
}
