package org.spanwire.geometry;

/** A place along a wire, measured from the wire's first point. */
public sealed interface Position {

  /** A fraction of the wire's length, 0 to 1. */
  record Fraction(double value) implements Position {
    /** Checks the range. */
    public Fraction {
      if (!(value >= 0 && value <= 1)) {
        throw new IllegalArgumentException(
            "position " + value + " along the wire must lie between 0 and 1");
      }
    }
  }

  /** A distance in metres along the wire. */
  record Distance(double metres) implements Position {
    /** Checks the range. */
    public Distance {
      if (!(metres >= 0) || Double.isInfinite(metres)) {
        throw new IllegalArgumentException(
            "position " + metres + " m along the wire must not be negative");
      }
    }
  }

  /** A fraction of the wire's length, 0 to 1. */
  static Position fraction(double value) {
    return new Fraction(value);
  }

  /** A distance in metres from the wire's first point. */
  static Position distance(double metres) {
    return new Distance(metres);
  }

  /** The distance in metres from the first point of a wire of the given length in metres. */
  default double distanceAlong(double wireLength) {
    if (this instanceof Fraction f) {
      return f.value() * wireLength;
    }
    return ((Distance) this).metres();
  }
}
