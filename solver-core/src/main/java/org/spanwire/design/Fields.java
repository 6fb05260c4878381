package org.spanwire.design;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** A mapping with fixed keys. */
final class Fields {

  private final Item owner;
  private final Map<String, Item> values = new LinkedHashMap<>();

  Fields(Document document, Item owner, MappingNode mapping, String... allowed) {
    this.owner = owner;
    List<String> known = Arrays.asList(allowed);
    for (NodeTuple tuple : mapping.getValue()) {
      Item key = new Item(document, tuple.getKeyNode(), "a key of " + owner.name());
      if (!(tuple.getKeyNode() instanceof ScalarNode scalar)) {
        throw key.fault(key.name() + " is no text; " + Words.remedy("", known));
      }
      String name = scalar.getValue();
      if (!known.contains(name)) {
        throw key.fault(
            "unknown key "
                + Words.quote(name)
                + " in "
                + owner.name()
                + "; "
                + Words.remedy(name, known));
      }
      Item value = new Item(document, tuple.getValueNode(), name + " of " + owner.name());
      if (values.put(name, value) != null) {
        throw key.fault(
            "duplicate key " + Words.quote(name) + " in " + owner.name() + "; remove one of them");
      }
    }
  }

  Optional<Item> optional(String key) {
    return Optional.ofNullable(values.get(key));
  }

  Item required(String key, String example) {
    return optional(key)
        .orElseThrow(
            () ->
                owner.fault(
                    owner.name() + " has no " + key + "; add one such as " + key + ": " + example));
  }

  /** The only one of several keys that is there. */
  String only(String... keys) {
    List<String> present = Arrays.stream(keys).filter(values::containsKey).toList();
    if (present.size() != 1) {
      throw owner.fault(
          owner.name()
              + " has "
              + (present.isEmpty() ? "none" : String.join(" and ", present))
              + "; expected exactly one of "
              + String.join(", ", keys));
    }
    return present.get(0);
  }
}
