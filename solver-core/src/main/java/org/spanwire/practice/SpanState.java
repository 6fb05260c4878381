package org.spanwire.practice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.spanwire.design.Design;
import org.spanwire.design.Hang;
import org.spanwire.design.Weather;
import org.spanwire.geometry.SpanShape;

/**
 * A hanging wire in one weather. What hangs from it is part of its load; see {@link Weather} for
 * what wind and ice are taken to do.
 *
 * @param wire name of the wire
 * @param name of the weather; {@link #STILL} for still air
 * @param weather the weather
 * @param sag largest vertical distance in metres below the line between the supports
 * @param swing largest horizontal distance in metres from the vertical plane of the supports
 * @param lowest height in metres of the lowest place
 * @param largestTension largest tension anywhere in newtons
 * @param supportPull the larger of the pulls at the two supports in newtons
 * @param breakingMargin breaking strength over the largest tension, if the strength is known
 */
public record SpanState(
    String wire,
    String name,
    Weather weather,
    double sag,
    double swing,
    double lowest,
    double largestTension,
    double supportPull,
    OptionalDouble breakingMargin) {

  /** Name of the state as strung. */
  public static final String STILL = "still air";

  /**
   * All hanging wires of a design, each as strung and in all of the design's weather. A wire that
   * is drawn straight has no state.
   *
   * @throws IllegalArgumentException if a temperature changes and a wire's expansion is not known,
   *     or a wire of unknown stiffness would become too short for its span
   */
  public static List<SpanState> of(Design design) {
    Map<String, Weather> all = new LinkedHashMap<>();
    all.put(STILL, Weather.STILL);
    all.putAll(design.weather());
    List<SpanState> states = new ArrayList<>();
    for (Hang hang : design.hangs().values()) {
      if (hang.shape().isPresent()) {
        double radius = design.antenna().wire(hang.wire()).orElseThrow().conductor().outerRadius();
        SpanMechanics mechanics =
            new SpanMechanics(hang.shape().get(), hang.mechanical(), 2 * radius);
        all.forEach((name, weather) -> states.add(of(hang.wire(), mechanics, name, weather)));
      }
    }
    return states;
  }

  private static SpanState of(String wire, SpanMechanics mechanics, String name, Weather weather) {
    SpanShape shape;
    try {
      shape = weather.equals(Weather.STILL) ? mechanics.strung() : mechanics.in(weather);
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(
          "wire '" + wire + "' in weather '" + name + "': " + e.getMessage(), e);
    }
    return new SpanState(
        wire,
        name,
        weather,
        shape.sag(),
        shape.swing(),
        shape.lowest(),
        shape.largestTension(),
        shape.largestSupportTension(),
        mechanics.breakingMargin(shape));
  }
}
