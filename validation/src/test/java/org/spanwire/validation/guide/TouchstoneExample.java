package org.spanwire.validation.guide;

import java.util.SortedMap;
import java.util.TreeMap;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneOptions;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.medium.PerfectGround;

public final class TouchstoneExample {
  public static void main(String[] args) {
    Antenna dipole =
        Antenna.builder()
            .wire(
                "dipole",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(0, 0, 9),
                new Point(20.2, 0, 9))
            .feed("middle", "dipole", Position.fraction(0.5))
            .ground(PerfectGround.INSTANCE)
            .build();
    Solver solver = new Solver();
    SortedMap<Double, NPort> samples = new TreeMap<>();
    for (double frequency = 6.9e6; frequency < 7.35e6; frequency += 0.1e6) {
      samples.put(frequency, NPort.load(solver.solve(dipole, frequency).impedance(), 50));
    }
    TouchstoneOptions options =
        TouchstoneOptions.version1(TouchstoneOptions.Unit.MHZ, TouchstoneOptions.Format.RI);
    String file = Touchstone.of(NetworkData.of(samples), options).text();
    System.out.println(file.lines().count() + " lines, among them");
    file.lines().filter(line -> line.startsWith("#")).forEach(System.out::println);

    // Reading is as strict as writing: a fault is told with file, line and column.
    NetworkData read = Touchstone.parse("dipole.s1p", file).network();
    System.out.printf(
        "reflection at 7.05 MHz, between samples, %.2f%n", read.at(7.05e6).s(1, 1).abs());
  }
}
