package org.spanwire.design;

import java.net.URISyntaxException;
import java.nio.file.Path;

/** Designs that the tests of this package start from. */
final class Designs {

  /** A small design in block style, to be spoilt by {@link String#replace}. */
  static final String SMALL =
      """
      format: spanwire-design/1
      title: Small
      parameters:
        span: 20 m
        height: {value: 9 m, spread: 1 m, limits: [5 m, 14 m]}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator:
          conductor: strand
          path: [[0, 0, height], [span, 0, height]]
      feeds:
        main: {wire: radiator, at: 36 %}
      ground: {soil: medium-dry}
      feed-chain:
        - transformer: {ratio: 4}
      bands: {plan: iaru-region-1, use: [40 m, 20 m]}
      frequencies: [7.1 MHz]
      requirements:
        - {band: 40 m, swr: {max: 2}}
      """;

  private Designs() {}

  /** The small design with a part replaced, which must be there. */
  static String spoilt(String part, String replacement) {
    if (!SMALL.contains(part)) {
      throw new IllegalArgumentException("no '" + part + "' in the small design");
    }
    return SMALL.replace(part, replacement);
  }

  static Path resource(String name) {
    try {
      return Path.of(Designs.class.getResource(name).toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }
}
