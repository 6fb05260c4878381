package org.spanwire.cli.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.spanwire.cli.output.Numbers;

/**
 * How a map shades the values of a quantity: in steps, darker for more.
 *
 * @param quantity its name
 * @param unit its unit, empty for none
 * @param from where the steps begin, rising; the first shade counts for what lies below too
 * @param number writes a value in a cell
 * @param text writes a value where there is more room
 */
public record MapScale(
    String quantity,
    String unit,
    List<Double> from,
    DoubleFunction<String> number,
    DoubleFunction<String> text) {

  /** One hue from light to dark: told apart in grey and by all eyes. */
  private static final List<Color> SHADES =
      List.of(
          new Color(238, 245, 251),
          new Color(203, 224, 241),
          new Color(143, 190, 224),
          new Color(74, 139, 192),
          new Color(28, 92, 150),
          new Color(11, 44, 84));

  private static final int FIRST_DARK = 3;
  private static final double[] ROUND = {1, 2, 2.5, 5, 10};
  private static final int DIGITS = 4;

  /** What there is room for in a cell. */
  private static final int CELL_DIGITS = 3;

  /** Takes a copy. */
  public MapScale {
    from = List.copyOf(from);
  }

  /** SWR, in steps that matter to a transmitter. */
  public static MapScale swr() {
    return new MapScale(
        "SWR", "", List.of(1.0, 1.5, 2.0, 3.0, 5.0, 10.0), Numbers::swr, Numbers::swr);
  }

  /** Even, round steps over a range of values. */
  public static MapScale over(String quantity, String unit, double low, double high) {
    double step = step(high - low);
    double first = Math.floor(low / step) * step;
    List<Double> from = new ArrayList<>();
    for (int i = 0; i < SHADES.size() && (i == 0 || first + i * step < high); i++) {
      from.add(first + i * step);
    }
    return new MapScale(
        quantity,
        unit,
        from,
        value -> Numbers.significant(value, CELL_DIGITS),
        value -> Numbers.significant(value, DIGITS));
  }

  /** The smallest round step of which all shades together cover a width wherever it begins. */
  private static double step(double width) {
    double least = width / (SHADES.size() - 1);
    if (!(least > 0)) {
      return 1;
    }
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double round : ROUND) {
      if (round * power >= least) {
        return round * power;
      }
    }
    return ROUND[ROUND.length - 1] * power;
  }

  /** Index of the shade of a value; a limit itself still has the shade below it. */
  private int index(double value) {
    int index = 0;
    while (index + 1 < from.size() && value > from.get(index + 1)) {
      index++;
    }
    return index;
  }

  Color shade(double value) {
    return shadeOf(index(value));
  }

  /** Shade of a step. */
  Color shadeOf(int step) {
    return SHADES.get(step);
  }

  boolean isDark(double value) {
    return index(value) >= FIRST_DARK;
  }

  /** A value with its unit. */
  public String text(double value) {
    return withUnit(text.apply(value));
  }

  private String withUnit(String text) {
    return unit.isEmpty() ? text : text + " " + unit;
  }

  /** What a step of the scale stands for; the last one says the unit. */
  String step(int index) {
    String begin = Numbers.significant(from.get(index), DIGITS);
    return index + 1 < from.size()
        ? begin + " to " + Numbers.significant(from.get(index + 1), DIGITS)
        : withUnit("over " + begin);
  }
}
