package org.spanwire.design;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the weather does to a hanging wire.
 *
 * <p>Assumptions: the wind is level, at right angles to the span, and the same all along; its force
 * per length is ½ρv²·C_d·d with {@link #AIR_DENSITY} and {@link #DRAG}. Ice lies evenly around the
 * wire with {@link #ICE_DENSITY}, and the wind takes hold of its outer diameter. Wind and ice on
 * what hangs from the wire are not counted, nor are gusts and galloping.
 *
 * @param windSpeed metres per second, not negative
 * @param iceThickness radial thickness of the ice in metres, not negative
 * @param temperatureChange kelvins above the temperature at which the wire was hung
 */
public record Weather(double windSpeed, double iceThickness, double temperatureChange) {

  /** Kilograms per cubic metre: the standard atmosphere at sea level, 15 °C (ISO 2533:1975). */
  public static final double AIR_DENSITY = 1.225;

  /**
   * Drag coefficient of a round cylinder at Reynolds numbers of about 10³ to 2·10⁵ (Hoerner,
   * Fluid-Dynamic Drag, 1965, section 3), from memory.
   */
  public static final double DRAG = 1.2;

  /** Kilograms per cubic metre: glaze (ISO 12494:2017), from memory. */
  public static final double ICE_DENSITY = 900;

  /** Still air, no ice, the temperature at which the wire was hung. */
  public static final Weather STILL = new Weather(0, 0, 0);

  /**
   * A storm, and ice with some wind, for a design that states no weather: common practice, no
   * source. The site and its code decide.
   */
  public static final Map<String, Weather> ASSUMED =
      Collections.unmodifiableMap(
          new TreeMap<>(Map.of("storm", new Weather(30, 0, 0), "ice", new Weather(10, 0.010, 0))));

  /** Checks the ranges. */
  public Weather {
    if (!(windSpeed >= 0) || !(iceThickness >= 0) || !Double.isFinite(temperatureChange)) {
      throw new IllegalArgumentException(
          "wind "
              + windSpeed
              + " m/s and ice "
              + iceThickness
              + " m must not be negative, and the temperature change "
              + temperatureChange
              + " K must be finite");
    }
  }

  /** Force of the wind in newtons per metre on a wire of a bare diameter in metres. */
  public double windForce(double diameter) {
    return 0.5 * AIR_DENSITY * windSpeed * windSpeed * DRAG * (diameter + 2 * iceThickness);
  }

  /** Kilograms of ice per metre of wire of a bare diameter in metres. */
  public double iceMass(double diameter) {
    return ICE_DENSITY * Math.PI * iceThickness * (diameter + iceThickness);
  }
}
