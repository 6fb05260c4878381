package org.spanwire.design;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A line of the kit list. If it has the name of a part that the design holds anyway, such as {@code
 * transformer}, {@code line} or the name of a fitting, it completes that part; otherwise it is
 * something else that is packed.
 *
 * @param name what it is
 * @param count how many, at least 1
 * @param mass kilograms of one of them, positive, if known
 * @param hangs whether wires and supports carry it; without meaning for parts of the design
 * @param note free text, may be empty
 */
public record KitItem(String name, int count, OptionalDouble mass, boolean hangs, String note) {

  /** Checks the ranges. */
  public KitItem {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(note, "note");
    if (count < 1) {
      throw new IllegalArgumentException("count " + count + " must be at least 1");
    }
    double kilograms = mass.orElse(1);
    if (!(kilograms > 0) || Double.isInfinite(kilograms)) {
      throw new IllegalArgumentException("mass " + kilograms + " kg must be positive and finite");
    }
  }
}
