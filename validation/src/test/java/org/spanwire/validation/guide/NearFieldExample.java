package org.spanwire.validation.guide;

import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;
import org.spanwire.result.NearField;

public final class NearFieldExample {
  public static void main(String[] args) {
    Antenna dipole =
        Antenna.builder()
            .wire(
                "dipole",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(-10, 0, 6),
                new Point(10, 0, 6))
            .feed("middle", "dipole", Position.fraction(0.5))
            .ground(Soil.of(13, 0.005))
            .build();
    Solution solution = new Solver().solve(dipole, 7.1e6);
    // Fields are those of the feed voltages, 1 V here; they grow with the root of power.
    double scale = Math.sqrt(100 / solution.powerBudget().accepted());
    for (double x : new double[] {0, 5, 10}) {
      NearField field = solution.nearField(new Point(x, 0, 2));
      System.out.printf(
          "2 m above ground, %.0f m from the middle: %.0f V/m and %.2f A/m at 100 W%n",
          x, scale * field.electric(), scale * field.magnetic());
    }
    System.out.println("an estimate for planning, no proof that exposure limits are kept");
  }
}
