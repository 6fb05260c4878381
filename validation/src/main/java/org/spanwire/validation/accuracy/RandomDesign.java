package org.spanwire.validation.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * The text of a random design: mostly sound, often impossible in its geometry or values, and in one
 * case of five damaged in its text. The same seed and number give the same text.
 */
final class RandomDesign {

  private static final double WAVELENGTH_M = 10;

  private static final String[] ODD_VALUES = {
    "0",
    "-1 m",
    "1e308 m",
    "1e-300 m",
    "NaN",
    ".inf",
    "-.inf",
    "",
    "null",
    "~",
    "true",
    "[]",
    "{}",
    "span",
    "span * span",
    "span / 0",
    "(",
    "1 m + 1 s",
    "1e999",
    "50 %",
    "30 deg",
    "0x10",
    "'",
    "\"",
    "1_000 m",
    "1,5 m",
    "−3 m",
    "λ",
    "3 ft",
    "AWG 12",
    "&a 1",
    "*a",
    "!!str 1",
    "1 m 1 m",
    "3 dB"
  };

  private static final String[] CHARACTERS = {
    ":", "{", "}", "[", "]", ",", "\n", "\t", " ", "-", "#", "'", "\"", "é", "0", "e", "m", "*", "&"
  };

  private final SplittableRandom random;
  private final StringBuilder text = new StringBuilder();

  private RandomDesign(SplittableRandom random) {
    this.random = random;
  }

  static String of(long seed, int number) {
    RandomDesign design = new RandomDesign(new SplittableRandom(seed + 1_000_003L * number));
    design.write();
    String whole = design.text.toString();
    return design.random.nextInt(5) == 0 ? design.damage(whole) : whole;
  }

  private void write() {
    text.append("format: spanwire-design/1\ntitle: Fuzz\n");
    text.append("parameters: {span: {value: ").append(length(0.2)).append("}}\n");
    text.append("conductors:\n");
    int conductors = 1 + random.nextInt(2);
    for (int c = 0; c < conductors; c++) {
      conductor(c);
    }
    int wires = 1 + random.nextInt(4);
    text.append("wires:\n");
    List<String> points = new ArrayList<>();
    boolean grounded = random.nextBoolean();
    for (int w = 0; w < wires; w++) {
      wire(w, conductors, points, grounded);
    }
    text.append("feeds:\n");
    int feeds = 1 + random.nextInt(2);
    for (int f = 0; f < feeds; f++) {
      feed(f, wires);
    }
    if (random.nextInt(3) == 0) {
      fitting(wires);
    }
    text.append("ground: ").append(odd(grounded ? ground() : "free-space")).append('\n');
    text.append("frequencies: [").append(frequency()).append("]\n");
  }

  private void conductor(int c) {
    String material =
        pick("copper", "aluminium", "perfect", "steel", "{conductivity: 10 MS/m, permeability: 1}");
    text.append("  c").append(c).append(": {material: ").append(material);
    text.append(", diameter: ").append(diameter());
    if (random.nextInt(4) == 0) {
      text.append(", insulation: {thickness: ").append(diameter());
      text.append(", permittivity: ").append(number(1, 6)).append('}');
    }
    text.append("}\n");
  }

  private void wire(int w, int conductors, List<String> points, boolean above) {
    text.append("  w").append(w).append(": {conductor: c").append(random.nextInt(conductors));
    text.append(", path: [");
    int count = 2 + random.nextInt(3);
    int known = points.size();
    for (int i = 0; i < count; i++) {
      boolean joins = (i == 0 && known > 0 && random.nextInt(3) > 0) || random.nextInt(40) == 0;
      String point =
          joins && !points.isEmpty() ? points.get(random.nextInt(points.size())) : point(above);
      points.add(point);
      text.append(i == 0 ? "" : ", ").append(point);
    }
    text.append("]}\n");
  }

  private String point(boolean above) {
    String height = random.nextInt(10) == 0 ? "0" : above ? number(0.01, 4) : number(-3, 3);
    String x = random.nextInt(8) == 0 ? "span" : random.nextInt(4) == 0 ? "0" : number(-3, 3);
    return "["
        + odd(x)
        + ", "
        + (random.nextBoolean() ? "0" : number(-3, 3))
        + ", "
        + odd(height)
        + "]";
  }

  private void feed(int f, int wires) {
    text.append("  f").append(f).append(": {wire: w").append(random.nextInt(wires));
    text.append(", at: ").append(odd(position()));
    if (random.nextInt(3) == 0) {
      text.append(", gap: ").append(diameter());
    }
    if (random.nextInt(3) == 0) {
      text.append(", voltage: {magnitude: ").append(odd(number(0, 3) + " V"));
      text.append(", phase: ").append(odd(number(-180, 180) + " deg")).append('}');
    }
    text.append("}\n");
  }

  private void fitting(int wires) {
    text.append("fittings:\n  p0: {wire: w").append(random.nextInt(wires));
    text.append(", at: ").append(odd(position()));
    text.append(", ").append(pick("series", "parallel")).append(": {");
    text.append("r: ").append(odd(number(0, 100) + " ohm"));
    text.append(", l: ").append(odd(number(0, 10) + " uH"));
    text.append(", c: ").append(odd(number(0, 100) + " pF")).append("}}\n");
  }

  /** Tables of kernels over soil take long: few of them. */
  private String ground() {
    String soil = pick("{soil: medium-dry}", "{permittivity: 13, conductivity: 0.005 S/m}");
    return random.nextInt(12) == 0 ? soil : "perfect";
  }

  private String position() {
    return pick(number(5, 95) + " %", number(0, 1), number(0, 3) + " m", "50 %", "30 %", "0");
  }

  private String frequency() {
    return odd(random.nextInt(10) == 0 ? number(0.001, 1) + " MHz" : number(10, 40) + " MHz");
  }

  private String diameter() {
    double metres = WAVELENGTH_M * 2e-5 * Math.pow(1000, random.nextDouble());
    return odd(String.format(Locale.ROOT, "%.5g mm", 1000 * metres));
  }

  private String length(double least) {
    return odd(number(least, 3) + " m");
  }

  private String number(double from, double to) {
    return String.format(Locale.ROOT, "%.4f", from + (to - from) * random.nextDouble());
  }

  /** Now and then something that does not belong. */
  private String odd(String sound) {
    return random.nextInt(150) == 0 ? pick(ODD_VALUES) : sound;
  }

  private String pick(String... choices) {
    return choices[random.nextInt(choices.length)];
  }

  /** Cuts, doubles or overwrites a few places. */
  private String damage(String whole) {
    StringBuilder damaged = new StringBuilder(whole);
    int edits = 1 + random.nextInt(3);
    for (int e = 0; e < edits && damaged.length() > 10; e++) {
      int at = random.nextInt(damaged.length());
      int end = Math.min(damaged.length(), at + 1 + random.nextInt(12));
      switch (random.nextInt(4)) {
        case 0 -> damaged.delete(at, end);
        case 1 -> damaged.insert(at, pick(CHARACTERS));
        case 2 -> damaged.insert(at, damaged.substring(at, end));
        default -> damaged.replace(at, end, pick(ODD_VALUES));
      }
    }
    return damaged.toString();
  }
}
