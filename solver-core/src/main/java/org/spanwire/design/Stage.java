package org.spanwire.design;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.spanwire.geometry.LumpedImpedance;

/** One stage of the feed chain, which runs from the feedpoint towards the transmitter. */
public sealed interface Stage {

  /**
   * A transformer.
   *
   * @param ratio impedance ratio, antenna side : transmitter side, positive
   * @param touchstone its measured scattering parameters; with a file the ratio only sets the
   *     reference impedance of SWR on the antenna side
   * @param output what its antenna side is tied to, where its own circuit does not say: an ideal
   *     transformer, or one measured as a 2-port
   */
  record Transformer(double ratio, Optional<Path> touchstone, Output output) implements Stage {
    /** Checks the range. */
    public Transformer {
      requirePositive("transformer ratio", ratio);
      Objects.requireNonNull(touchstone, "touchstone");
      Objects.requireNonNull(output, "output");
    }

    /** A transformer with balanced output. */
    public Transformer(double ratio, Optional<Path> touchstone) {
      this(ratio, touchstone, Output.BALANCED);
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
  }

  /**
   * A transmission line.
   *
   * @param impedanceOhm characteristic impedance in ohms, positive
   * @param length length in metres, positive
   * @param velocityFactor phase velocity over the speed of light, above 0, at most 1
   * @param loss its attenuation; empty for a lossless line
   */
  record Line(double impedanceOhm, double length, double velocityFactor, Optional<Loss> loss)
      implements Stage {
    /** Checks the ranges. */
    public Line {
      requirePositive("line impedance", impedanceOhm);
      requirePositive("line length", length);
      requirePositive("velocity factor", velocityFactor);
      if (velocityFactor > 1) {
        throw new IllegalArgumentException(
            "velocity factor " + velocityFactor + " is above 1; expected one such as 0.66");
      }
      Objects.requireNonNull(loss, "loss");
    }
  }

  /**
   * Matched attenuation of a line as its data sheet states it.
   *
   * @param frequencyHz frequency in hertz at which it holds, positive
   * @param length length in metres it is stated for, positive
   * @param decibels attenuation of that length in dB, not negative
   */
  record Loss(double frequencyHz, double length, double decibels) {
    /** Checks the ranges. */
    public Loss {
      requirePositive("loss frequency", frequencyHz);
      requirePositive("loss length", length);
      if (!(decibels >= 0) || Double.isInfinite(decibels)) {
        throw new IllegalArgumentException(
            "loss " + decibels + " dB is negative or not finite; expected at least 0 dB");
      }
    }
  }

  private static void requirePositive(String quantity, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          quantity + " " + value + " must be positive and finite; give another");
    }
  }
}
