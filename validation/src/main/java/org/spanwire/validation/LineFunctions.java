package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.TransmissionLine;

/** Quantities of a mismatch or a transmission line alone. */
final class LineFunctions {

  private LineFunctions() {}

  static Complex reflectionMagnitude(ValidationCase c, Workbench bench) {
    return new Complex(mismatch(c).reflection().abs());
  }

  static Complex returnLoss(ValidationCase c, Workbench bench) {
    return new Complex(mismatch(c).returnLossDb());
  }

  static Complex mismatchLoss(ValidationCase c, Workbench bench) {
    return new Complex(mismatch(c).mismatchLossDb());
  }

  static Complex totalLoss(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    return new Complex(
        TransmissionLine.totalLossDb(p.number("matchedLossDecibels"), p.number("loadSwr")));
  }

  /** What a load becomes at the other end of a lossless line of the reference impedance. */
  static Complex throughLine(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    double metres = p.metres("lineLength");
    return new TransmissionLine(p.number("referenceOhm"), metres, 1, LineAttenuation.NONE)
        .stub(load(p))
        .at(p.frequencyHz());
  }

  static Complex twoWireImpedance(ValidationCase c, Workbench bench) {
    return new Complex(
        TransmissionLine.twoWireImpedance(c.parameters().number("spacingOverDiameter"), 1));
  }

  static Complex wireOverGroundImpedance(ValidationCase c, Workbench bench) {
    return new Complex(
        TransmissionLine.wireOverGroundImpedance(c.parameters().number("heightOverRadius"), 1));
  }

  static Complex coaxialImpedance(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    return new Complex(
        TransmissionLine.coaxialImpedance(
            p.number("outerOverInner"), 1, p.number("linePermittivity")));
  }

  private static Mismatch mismatch(ValidationCase c) {
    return Mismatch.of(load(c.parameters()), c.parameters().number("referenceOhm"));
  }

  private static Complex load(Parameters p) {
    return new Complex(p.number("loadOhm"), p.number("loadReactanceOhm", 0));
  }
}
