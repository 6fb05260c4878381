package org.spanwire.validation.guide;

import java.util.List;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.Plane;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepPlan;
import org.spanwire.study.SweepQuantity;
import org.spanwire.study.SweepRequest;
import org.spanwire.unit.Quantity;

public final class OffsetSweepExample {
  public static void main(String[] args) {
    Design kit =
        DesignReader.read(
            """
            format: spanwire-design/1
            title: Hut kit
            parameters: {offset: 33 %, height: 10 m}
            conductors: {strand: {material: copper, diameter: 2 mm}}
            wires: {radiator: {conductor: strand, path: [[0, 0, height], [41, 0, height]]}}
            feeds: {main: {wire: radiator, at: offset}}
            ground: perfect
            feed-chain: [transformer: {ratio: 4}]
            """,
            "kit.yaml");
    ParameterGrid.Axis offsets =
        ParameterGrid.Axis.even("offset", Quantity.parse("20 %"), Quantity.parse("40 %"), 5);
    Sweep sweep =
        new Sweep(
            kit,
            new ParameterGrid(List.of(offsets)),
            List.of(3.6e6, 7.1e6),
            new SweepRequest(
                "main", Plane.TRANSMITTER, List.of(SweepQuantity.SWR), List.of(), List.of()));
    // Rows come in order, frequency innermost, whatever the number of threads.
    sweep.run(
        SweepPlan.shared(sweep, new Solver()),
        sweep.rows(),
        2,
        row ->
            System.out.printf(
                "offset %.0f %%, %.1f MHz: SWR %.1f%n",
                100 * row.parameters().get(0).value(),
                row.frequencyHz() / 1e6,
                row.values().get(0)));
  }
}
