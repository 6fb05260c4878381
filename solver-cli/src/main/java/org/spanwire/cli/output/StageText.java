package org.spanwire.cli.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.ToroidCore;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.Winding;
import org.spanwire.circuit.WoundTransformer.EqualDelay;
import org.spanwire.design.Stage;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** Stages of the feed chain in words. */
final class StageText {

  /** Where the loss of a line is stated. */
  private static final double LOSS_HZ = 10e6;

  private StageText() {}

  /** What a stage is; empty for transformers, which have a line of their own, and chokes. */
  static Optional<String> of(Stage stage) {
    if (stage instanceof Stage.Line line) {
      return Optional.of(line(line.line()));
    }
    if (stage instanceof Stage.Stub stub) {
      return Optional.of(
          line(stub.line())
              + (stub.shorted() ? "; shorted" : "; open")
              + " at its end, "
              + (stub.inSeries() ? "in series" : "across the line"));
    }
    if (stage instanceof Stage.Attenuator attenuator) {
      return Optional.of(Numbers.significant(attenuator.lossDb(), 4) + " dB");
    }
    if (stage instanceof Stage.Matching matching) {
      return Optional.of(
          matching.parts().stream().map(StageText::part).collect(Collectors.joining(", then "))
              + ", from the feedpoint");
    }
    if (stage instanceof Stage.Tuner tuner) {
      return Optional.of(
          "matches up to SWR "
              + Numbers.significant(tuner.maximumSwr(), 4)
              + ", loss "
              + Numbers.significant(tuner.matchedLossDb(), 3)
              + " dB at SWR 1, "
              + Numbers.significant(tuner.limitLossDb(), 3)
              + " dB at its limit");
    }
    return Optional.empty();
  }

  private static String part(Stage.Part part) {
    List<String> values = new ArrayList<>();
    if (part.resistance() > 0) {
      values.add(new Quantity(part.resistance(), Dimension.RESISTANCE).toString());
    }
    if (part.inductance() > 0) {
      values.add(new Quantity(part.inductance(), Dimension.INDUCTANCE).toString());
    }
    if (Double.isFinite(part.capacitance())) {
      values.add(new Quantity(part.capacitance(), Dimension.CAPACITANCE).toString());
    }
    return String.join(" + ", values) + (part.inSeries() ? " in series" : " across the line");
  }

  static String line(TransmissionLine line) {
    return Conditions.metres(line.length())
        + " of "
        + Numbers.significant(line.impedanceOhm(), 6)
        + " ohm, velocity factor "
        + Numbers.significant(line.velocityFactor(), 4)
        + loss(line);
  }

  private static String loss(TransmissionLine line) {
    LineAttenuation attenuation = line.attenuation();
    if (attenuation.equals(LineAttenuation.NONE)) {
      return ", lossless";
    }
    return ", matched loss "
        + Numbers.significant(line.matchedLossDb(LOSS_HZ), 3)
        + " dB at "
        + Numbers.megahertz(LOSS_HZ)
        + " MHz, "
        + (attenuation.dielectric() == 0
            ? "rising with the root of frequency"
            : Numbers.significant(attenuation.dielectric() * LOSS_HZ * line.length(), 3)
                + " dB of it in the dielectric");
  }

  /** How a transformer is known. */
  static String make(Stage.Transformer transformer) {
    if (transformer.touchstone().isPresent()) {
      return "measured, " + transformer.touchstone().get().getFileName();
    }
    return transformer.wound().map(StageText::winding).orElse("ideal");
  }

  static String winding(Winding winding) {
    String connection =
        winding.connection() instanceof EqualDelay delay
            ? delay.lines() + " equal-delay line" + (delay.lines() == 1 ? "" : "s")
            : "autotransformer line";
    return "wound, "
        + connection
        + " of "
        + Numbers.significant(winding.line().impedanceOhm(), 4)
        + " ohm, "
        + winding.turns()
        + " turns on "
        + core(winding.core())
        + " ("
        + winding.core().material().provenance()
        + ")";
  }

  private static String core(ToroidCore core) {
    return (core.count() == 1 ? "a ring" : core.count() + " rings")
        + " of "
        + millimetres(core.outerDiameter())
        + " x "
        + millimetres(core.innerDiameter())
        + " x "
        + millimetres(core.height())
        + " mm"
        + (core.count() == 1 ? "" : " each");
  }

  private static String millimetres(double metres) {
    return Numbers.significant(1e3 * metres, 4);
  }
}
