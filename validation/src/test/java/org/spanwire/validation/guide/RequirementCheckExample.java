package org.spanwire.validation.guide;

import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.DesignReader;
import org.spanwire.study.CheckedRequirement;
import org.spanwire.study.RequirementCheck;

public final class RequirementCheckExample {
  public static void main(String[] args) {
    Design kit =
        DesignReader.read(
            """
            format: spanwire-design/1
            title: Hut dipole
            parameters: {span: 20.2 m}
            conductors: {strand: {material: copper, diameter: 2 mm}}
            wires: {radiator: {conductor: strand, path: [[0, 0, 9], [span, 0, 9]]}}
            feeds: {main: {wire: radiator, at: 50 %}}
            ground: perfect
            bands: {plan: iaru-region-1, use: [40 m]}
            requirements:
              - {band: 40 m, verdict: direct}
              - {frequency: 7.1 MHz, gain: {min: 6 dBi, elevation: 60 deg}}
            """,
            "kit.yaml");
    for (String span : new String[] {"20.2 m", "18.9 m"}) {
      for (CheckedRequirement each :
          new RequirementCheck(kit.with("span", span)).run(new Solver(), 2)) {
        System.out.printf(
            "%s: %s %s, margin %.1f%n",
            span, each.quantity().label(), each.outcome().label(), each.margin());
      }
    }
    // One exception type for each kind of bad input, with the place for a program to use.
    try {
      kit.with("span", "20.2 V");
    } catch (DesignException e) {
      System.out.println("refused: " + e.problem());
    }
  }
}
