package org.spanwire.validation.guide;

import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Material;
import org.spanwire.medium.Materials;
import org.spanwire.medium.PerfectGround;
import org.spanwire.medium.Soil;

public final class CustomSoilExample {
  public static void main(String[] args) {
    Soil scree = new Soil("scree", 6, 2e-4, "measured on site");
    Material wire = Materials.PHOSPHOR_BRONZE;
    Conductor coated = Conductor.bare(wire, 0.8e-3).withInsulation(new Insulation(0.5e-3, 2.3, 0));
    for (Ground ground : new Ground[] {scree, Soil.of(30, 0.01), PerfectGround.INSTANCE}) {
      Antenna low =
          Antenna.builder()
              .wire("wire", coated, new Point(0, 0, 3), new Point(19.5, 0, 3))
              .feed("middle", "wire", Position.fraction(0.5))
              .ground(ground)
              .build();
      Solution solution = new Solver().solve(low, 7.1e6);
      System.out.printf(
          "%s: %.0f ohm, %.0f %% of the power into the sky%n",
          ground instanceof Soil soil ? soil.name() : "perfect ground",
          solution.impedance().getReal(),
          100 * solution.radiationEfficiency());
    }
  }
}
