package org.spanwire.design;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.spanwire.circuit.Ladder;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.Winding;
import org.spanwire.geometry.LumpedImpedance;

/** One stage of the feed chain, which runs from the feedpoint towards the transmitter. */
public sealed interface Stage {

  /** What the stage is called in files, tables and messages. */
  String kind();

  /**
   * A transformer: ideal, measured or wound.
   *
   * @param ratio impedance ratio, antenna side : transmitter side, positive; of one measured or
   *     wound it only sets the reference impedance of SWR on the antenna side
   * @param touchstone its measured scattering parameters
   * @param wound how it is wound; not together with measured parameters
   * @param output what its antenna side is tied to, where its own circuit does not say: an ideal
   *     transformer, or one measured as a 2-port
   */
  record Transformer(
      double ratio, Optional<Path> touchstone, Optional<Winding> wound, Output output)
      implements Stage {
    /** Checks the ranges. */
    public Transformer {
      requirePositive("transformer ratio", ratio);
      Objects.requireNonNull(output, "output");
      if (touchstone.isPresent() && wound.isPresent()) {
        throw new IllegalArgumentException("transformer is measured and wound too; keep one");
      }
    }

    /** An ideal transformer, or a measured one, with balanced output. */
    public Transformer(double ratio, Optional<Path> touchstone) {
      this(ratio, touchstone, Optional.empty(), Output.BALANCED);
    }

    /** Whether it is taken without loss. */
    public boolean isIdeal() {
      return touchstone.isEmpty() && wound.isEmpty();
    }

    @Override
    public String kind() {
      return "transformer";
    }
  }

  /** Which point of a transformer's antenna side is one with the cold side of its other port. */
  enum Output {
    /** The middle: the terminals are at equal and opposite voltages about it. */
    BALANCED,
    /** The cold terminal. */
    UNBALANCED
  }

  /**
   * A choke against common-mode current; it leaves the differential mode alone.
   *
   * @param impedance its common-mode impedance
   */
  record Choke(LumpedImpedance impedance) implements Stage {
    /** Checks that it is there. */
    public Choke {
      Objects.requireNonNull(impedance, "impedance");
    }

    @Override
    public String kind() {
      return "choke";
    }
  }

  /**
   * A transmission line.
   *
   * @param line of positive length
   */
  record Line(TransmissionLine line) implements Stage {
    /** Checks the length. */
    public Line {
      requirePositive("line length", line.length());
    }

    /** Length in metres. */
    public double length() {
      return line.length();
    }

    @Override
    public String kind() {
      return "line";
    }
  }

  /**
   * A piece of line open or shorted at its end, joined to the line beside it.
   *
   * @param line of positive length
   * @param shorted whether its end is shorted, not open
   * @param inSeries whether it lies in series, not across the line
   */
  record Stub(TransmissionLine line, boolean shorted, boolean inSeries) implements Stage {
    /** Checks the length. */
    public Stub {
      requirePositive("stub length", line.length());
    }

    @Override
    public String kind() {
      return "stub";
    }
  }

  /**
   * An attenuator, matched to the reference impedance of SWR at its place.
   *
   * @param lossDb loss in dB, not negative
   */
  record Attenuator(double lossDb) implements Stage {
    /** Checks the range. */
    public Attenuator {
      requireNotNegative("attenuator loss in dB", lossDb);
    }

    @Override
    public String kind() {
      return "attenuator";
    }
  }

  /**
   * A matching network: L, pi, T.
   *
   * @param parts from the feedpoint towards the transmitter, at least one
   */
  record Matching(List<Part> parts) implements Stage {
    /** Takes a copy. */
    public Matching {
      parts = List.copyOf(parts);
      ladder(parts);
    }

    /** As a network with port 1 towards the transmitter. */
    public Ladder ladder() {
      return ladder(parts);
    }

    private static Ladder ladder(List<Part> parts) {
      List<Ladder.Element> elements = new ArrayList<>();
      parts.forEach(part -> elements.add(0, new Ladder.Element(part.inSeries(), part.impedance())));
      return new Ladder(elements);
    }

    @Override
    public String kind() {
      return "matching";
    }
  }

  /**
   * Resistance, inductance and capacitance in series, as one part of a matching network.
   *
   * @param inSeries whether they lie in series, not across the line
   * @param resistance ohms, not negative
   * @param inductance henries, not negative
   * @param capacitance farads, positive; infinite if there is no capacitor
   */
  record Part(boolean inSeries, double resistance, double inductance, double capacitance) {
    /** Checks the ranges. */
    public Part {
      LumpedImpedance.series(resistance, inductance, capacitance);
    }

    /** Impedance of the three together. */
    public LumpedImpedance impedance() {
      return LumpedImpedance.series(resistance, inductance, capacitance);
    }
  }

  /**
   * An antenna tuner: within its range it presents the reference impedance of its place to the
   * transmitter, outside it passes the load through.
   *
   * @param maximumSwr largest SWR that it matches, at least 1
   * @param matchedLossDb loss into SWR 1 in dB, not negative
   * @param limitLossDb loss into the largest SWR in dB, not below
   */
  record Tuner(double maximumSwr, double matchedLossDb, double limitLossDb) implements Stage {
    /** Checks the ranges. */
    public Tuner {
      at(50, maximumSwr, matchedLossDb, limitLossDb);
    }

    /** The tuner at a place with a reference impedance in ohms. */
    public org.spanwire.circuit.Tuner at(double referenceOhm) {
      return at(referenceOhm, maximumSwr, matchedLossDb, limitLossDb);
    }

    private static org.spanwire.circuit.Tuner at(
        double referenceOhm, double swr, double matched, double limit) {
      return new org.spanwire.circuit.Tuner(referenceOhm, swr, matched, limit);
    }

    @Override
    public String kind() {
      return "tuner";
    }
  }

  private static void requirePositive(String quantity, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          quantity + " " + value + " must be positive and finite; give another");
    }
  }

  private static void requireNotNegative(String quantity, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          quantity + " " + value + " must be at least 0 and finite; give another");
    }
  }
}
