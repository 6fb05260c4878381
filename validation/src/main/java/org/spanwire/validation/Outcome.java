package org.spanwire.validation;

import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * What came of a case.
 *
 * @param subject the case
 * @param got the result; empty if none was reached
 * @param failure why there is no result; empty if there is one
 */
record Outcome(ValidationCase subject, Optional<Complex> got, Optional<String> failure) {

  static Outcome of(ValidationCase subject, Complex got) {
    return new Outcome(subject, Optional.of(got), Optional.empty());
  }

  static Outcome failed(ValidationCase subject, String why) {
    return new Outcome(subject, Optional.empty(), Optional.of(why));
  }

  /** The deviation in the measure of the case's tolerance; not a number if there is no result. */
  double deviation() {
    return got.map(g -> subject.tolerance().deviation(g, subject.expected())).orElse(Double.NaN);
  }

  boolean passes() {
    return subject.tolerance().admits(deviation());
  }
}
