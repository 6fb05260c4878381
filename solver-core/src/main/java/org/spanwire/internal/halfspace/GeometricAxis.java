package org.spanwire.internal.halfspace;

/**
 * Divides a range into intervals that double in length, the first no longer than a given length, so
 * that interval and local coordinate of a value follow from the bits of one number: 1 + (value −
 * start)/scale = mantissa · 2^interval.
 *
 * @param start lower end of the range
 * @param end upper end of the range
 * @param intervals number of intervals, at least 1
 */
record GeometricAxis(double start, double end, int intervals) {

  static GeometricAxis of(double start, double end, double first) {
    double ratio = Math.log1p((end - start) / first) / Math.log(2);
    return new GeometricAxis(start, end, Math.max(1, (int) Math.ceil(ratio - 1e-9)));
  }

  /** Length of the first interval. */
  double scale() {
    return (end - start) / (Math.scalb(1.0, intervals) - 1);
  }

  /** The value at fraction t in 0…1 of an interval. */
  double value(int interval, double t) {
    return start + scale() * (Math.scalb(1 + t, interval) - 1);
  }
}
