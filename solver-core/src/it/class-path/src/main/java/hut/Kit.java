package hut;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soils;

/** A wire over meadow. */
public final class Kit {

  private Kit() {}

  /** Its impedance in ohms at a frequency in hertz. */
  public static Complex impedance(double frequencyHz) {
    Antenna antenna =
        Antenna.builder()
            .wire(
                "radiator",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(0, 0, 9),
                new Point(20.2, 0, 9))
            .feed("main", "radiator", Position.fraction(0.5))
            .ground(Soils.find("medium-dry").orElseThrow())
            .build();
    return new Solver().solve(antenna, frequencyHz).impedance();
  }
}
