package org.spanwire.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.spanwire.unit.Dimension;

/** Reads what is packed besides what the model holds. */
final class KitReader {

  private static final double MOST = 10_000;

  private final Evaluator evaluator;

  KitReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  List<KitItem> read(Item item) {
    List<KitItem> kit = new ArrayList<>();
    for (Item each : item.items("a list such as [{item: end insulator, count: 2, mass: 40 g}]")) {
      KitItem read = kitItem(each);
      if (kit.stream().anyMatch(other -> other.name().equals(read.name()))) {
        throw each.fault(
            "item "
                + Words.quote(read.name())
                + " is in the kit twice; write it once with its count");
      }
      kit.add(read);
    }
    return List.copyOf(kit);
  }

  private KitItem kitItem(Item item) {
    Fields fields = item.fields("item", "count", "mass", "hangs", "note");
    String name = Words.oneLine(fields.required("item", "end insulator").text());
    int count = fields.optional("count").map(this::count).orElse(1);
    OptionalDouble mass =
        fields
            .optional("mass")
            .map(m -> OptionalDouble.of(evaluator.positive(m, Dimension.MASS)))
            .orElse(OptionalDouble.empty());
    boolean hangs =
        fields
            .optional("hangs")
            .map(h -> h.choice(Map.of("true", true, "false", false)))
            .orElse(false);
    String note = fields.optional("note").map(n -> Words.oneLine(n.text())).orElse("");
    return item.checked(() -> new KitItem(name, count, mass, hangs, note));
  }

  private int count(Item item) {
    double number = evaluator.positive(item, Dimension.NUMBER);
    if (number != Math.rint(number) || number > MOST) {
      throw item.fault(
          item.name() + " is " + number + "; expected a whole number such as 2, up to 10000");
    }
    return (int) number;
  }
}
