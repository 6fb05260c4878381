package org.spanwire.validation;

import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.PermeabilityTable;
import org.spanwire.circuit.ToroidCore;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.WoundTransformer;
import org.spanwire.circuit.WoundTransformer.Autotransformer;
import org.spanwire.circuit.WoundTransformer.EqualDelay;
import org.spanwire.circuit.bench.Imbalance;

/** Quantities of a transformer, of its balance and of its core. */
final class TransformerFunctions {

  private static final double SOURCE_OHM = 50;

  private TransformerFunctions() {}

  /** What a load looks like through equal-delay lines on cores that choke without end. */
  static Complex equalDelayImpedance(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    return wound(new EqualDelay((int) p.number("windingLines")), p)
        .terminated(2, new Complex(p.number("loadOhm"), 0))
        .inputImpedance();
  }

  /** Power into four times the source's resistance over the power available, autotransformer. */
  static double autotransformerShare(ValidationCase c) {
    NPort matched =
        wound(new Autotransformer(false), c.parameters())
            .renormalized(new Complex(SOURCE_OHM, 0), new Complex(4 * SOURCE_OHM, 0));
    double through = matched.s(2, 1).abs();
    return through * through;
  }

  private static NPort wound(WoundTransformer.Connection connection, Parameters p) {
    TransmissionLine line =
        new TransmissionLine(
            p.number("windingOhm"), p.metres("windingLength"), 1, LineAttenuation.NONE);
    return new WoundTransformer(connection, line, f -> Complex.INF, 0)
        .floating()
        .at(p.frequencyHz());
  }

  static Complex combiningLoss(ValidationCase c, Workbench bench) {
    return new Complex(imbalance(c).combiningLossDb());
  }

  static Complex commonOverDifferential(ValidationCase c, Workbench bench) {
    return new Complex(Math.pow(10, -imbalance(c).rejectionDb() / 20));
  }

  private static Imbalance imbalance(ValidationCase c) {
    Parameters p = c.parameters();
    return new Imbalance(p.number("amplitudeDecibels", 0), p.number("phaseErrorDegrees", 0));
  }

  /** Inductance of a winding, nanohenries, loss left out. */
  static Complex coreInductance(ValidationCase c, Workbench bench) {
    Complex z = winding(c.parameters());
    return new Complex(1e9 * z.getImaginary() / (2 * Math.PI * c.parameters().frequencyHz()));
  }

  static Complex windingImpedance(ValidationCase c, Workbench bench) {
    return winding(c.parameters());
  }

  private static Complex winding(Parameters p) {
    Complex permeability =
        new Complex(p.number("corePermeability"), -p.number("corePermeabilityLoss", 1e-9));
    PermeabilityTable material =
        PermeabilityTable.of("the case", new TreeMap<>(Map.of(p.frequencyHz(), permeability)));
    return new ToroidCore(
            1e-3 * p.number("coreOuterMillimetres"),
            1e-3 * p.number("coreInnerMillimetres"),
            1e-3 * p.number("coreHeightMillimetres"),
            1,
            material)
        .winding((int) p.number("turns", 1), 1e-12 * p.number("strayPicofarads", 0))
        .at(p.frequencyHz());
  }
}
