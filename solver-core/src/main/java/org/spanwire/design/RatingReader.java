package org.spanwire.design;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.spanwire.unit.Dimension;

/** Reads what the parts bear. */
final class RatingReader {

  private static final List<String> PARTS =
      List.of(
          PartRating.TRANSFORMER,
          PartRating.LINE,
          PartRating.CHOKE,
          PartRating.FEEDPOINT,
          PartRating.ENDS);

  private static final String FITTINGS = "fittings";

  private final Evaluator evaluator;

  RatingReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  /**
   * Ratings by the name of the part, or of the fitting.
   *
   * @param fittings names of the design's fittings
   */
  Map<String, PartRating> ratings(Item item, Set<String> fittings) {
    Fields fields =
        item.fields(
            PartRating.TRANSFORMER,
            PartRating.LINE,
            PartRating.CHOKE,
            PartRating.FEEDPOINT,
            PartRating.ENDS,
            FITTINGS);
    Map<String, PartRating> ratings = new LinkedHashMap<>();
    for (String part : PARTS) {
      fields.optional(part).ifPresent(rating -> ratings.put(part, rating(rating)));
    }
    fields
        .optional(FITTINGS)
        .ifPresent(
            named -> {
              Names names = named.names("fitting");
              for (String name : names.all()) {
                if (!fittings.contains(name)) {
                  throw names.key(name).unknown("fitting", fittings);
                }
                ratings.put(name, rating(names.value(name)));
              }
            });
    return Collections.unmodifiableMap(ratings);
  }

  private PartRating rating(Item item) {
    Fields fields = item.fields("heat", "voltage");
    return item.checked(
        () ->
            new PartRating(
                positive(fields, "heat", Dimension.POWER),
                positive(fields, "voltage", Dimension.VOLTAGE)));
  }

  private OptionalDouble positive(Fields fields, String key, Dimension dimension) {
    return fields
        .optional(key)
        .map(item -> OptionalDouble.of(evaluator.positive(item, dimension)))
        .orElse(OptionalDouble.empty());
  }
}
