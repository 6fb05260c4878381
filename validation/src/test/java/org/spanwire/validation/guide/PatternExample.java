package org.spanwire.validation.guide;

import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soils;
import org.spanwire.result.Direction;
import org.spanwire.result.Lobe;

public final class PatternExample {
  public static void main(String[] args) {
    Antenna dipole =
        Antenna.builder()
            .wire(
                "dipole",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(0, 0, 10),
                new Point(10.1, 0, 10))
            .feed("middle", "dipole", Position.fraction(0.5))
            .ground(Soils.find("medium-dry").orElseThrow())
            .build();
    Solution solution = new Solver().solve(dipole, 14.2e6);
    // Elevation above the horizon; azimuth counter-clockwise from +x, the direction of the wire.
    for (double elevation : new double[] {10, 30, 60}) {
      System.out.printf(
          "broadside at %.0f deg %.1f dBi, off the ends %.1f dBi%n",
          elevation,
          solution.gainDbi(new Direction(elevation, 90)),
          solution.gainDbi(new Direction(elevation, 0)));
    }
    Lobe highest = solution.lobes().get(0);
    System.out.printf(
        "main lobe %.1f dBi at %.0f deg elevation%n",
        highest.gainDbi(), highest.elevationDegrees());
  }
}
