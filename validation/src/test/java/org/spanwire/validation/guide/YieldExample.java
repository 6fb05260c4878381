package org.spanwire.validation.guide;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.study.ParameterSample;
import org.spanwire.study.Plane;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepPlan;
import org.spanwire.study.SweepQuantity;
import org.spanwire.study.SweepRequest;
import org.spanwire.unit.Quantity;

public final class YieldExample {
  public static void main(String[] args) {
    Design kit =
        DesignReader.read(
            """
            format: spanwire-design/1
            title: Hut kit
            parameters: {leg: 10.1 m, height: 9 m}
            conductors: {strand: {material: copper, diameter: 2 mm}}
            wires: {radiator: {conductor: strand, path: [[-leg, 0, height], [leg, 0, height]]}}
            feeds: {main: {wire: radiator, at: 50 %}}
            ground: perfect
            """,
            "kit.yaml");
    // What is not known on the day: the wire's length to 1 %, the height to 2 m.
    ParameterSample installs =
        new ParameterSample(
            List.of(
                new ParameterSample.Range("leg", Quantity.parse("10 m"), Quantity.parse("10.2 m")),
                new ParameterSample.Range("height", Quantity.parse("7 m"), Quantity.parse("11 m"))),
            64);
    Sweep sweep =
        new Sweep(
            kit,
            installs,
            List.of(7.1e6),
            new SweepRequest(
                "main", Plane.TRANSMITTER, List.of(SweepQuantity.SWR), List.of(), List.of()));
    AtomicInteger good = new AtomicInteger();
    sweep.run(
        SweepPlan.shared(sweep, new Solver()),
        sweep.rows(),
        2,
        row -> good.addAndGet(row.failure().isEmpty() && row.values().get(0) <= 1.5 ? 1 : 0));
    System.out.printf("%d of 64 installs have SWR 1.5 or less at 7.1 MHz%n", good.get());
  }
}
