package org.spanwire.design;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;

/** One stage of the feed chain, which runs from the feedpoint towards the transmitter. */
public sealed interface Stage {

  /**
   * A transformer.
   *
   * @param ratio impedance ratio, antenna side : transmitter side, positive
   * @param touchstone its measured scattering parameters; with a file the ratio only sets the
   *     reference impedance of SWR on the antenna side
   */
  record Transformer(double ratio, Optional<Path> touchstone) implements Stage {
    /** Checks the range. */
    public Transformer {
      requirePositive("transformer ratio", ratio);
      Objects.requireNonNull(touchstone, "touchstone");
    }
  }

  /**
   * A choke against common-mode current.
   *
   * @param impedanceOhm magnitude of its common-mode impedance in ohms, positive
   */
  record Choke(double impedanceOhm) implements Stage {
    /** Checks the range. */
    public Choke {
      requirePositive("choke impedance", impedanceOhm);
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
