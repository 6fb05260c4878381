package org.spanwire.validation.guide;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Materials;

public final class DipoleExample {
  public static void main(String[] args) {
    Antenna dipole =
        Antenna.builder()
            .wire(
                "dipole",
                Conductor.bare(Materials.COPPER, 1e-3), // radius in metres
                new Point(0, 0, 0),
                new Point(20.4, 0, 0))
            .feed("middle", "dipole", Position.fraction(0.5))
            .ground(FreeSpace.INSTANCE)
            .build();
    Solution solution = new Solver().solve(dipole, 7.1e6);
    Complex z = solution.impedance();
    System.out.printf("impedance %.0f %+.0fj ohm%n", z.getReal(), z.getImaginary());
    System.out.printf("directivity %.2f dBi%n", solution.directivityDbi());
    System.out.printf("power accounted for %.3f%n", solution.powerBalance().orElseThrow());
  }
}
