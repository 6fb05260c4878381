package org.spanwire.cli;

/** A design that is solved fast: a wire on two bands. */
final class SmallDesign {

  static final String TITLE = "Hut kit \"<script>alert('ridge')</script>\" & more";

  static final String YAML =
      """
      format: spanwire-design/1
      title: 'Hut kit "<script>alert(''ridge'')</script>" & more'
      parameters:
        offset: 34 %
        height: {value: 9 m, spread: 1 m, limits: [7 m, 11 m]}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [20.2 m, 0, height]]}
      feeds:
        main: {wire: radiator, at: offset, gap: 40 mm}
      ground: {permittivity: 13, conductivity: 5 mS/m}
      feed-chain:
        - transformer: {ratio: 4}
        - line: {impedance: 50 ohm, length: 10 m, velocity-factor: 0.66, loss: {frequency: 10 MHz, per: 100 m, value: 4 dB}}
      power: 100 W
      bands: {plan: iaru-region-1, use: [40 m, 20 m]}
      """;

  private SmallDesign() {}
}
