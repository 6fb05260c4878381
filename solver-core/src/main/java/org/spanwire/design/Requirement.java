package org.spanwire.design;

import java.util.OptionalDouble;

/** A limit that a design must keep. */
public sealed interface Requirement {

  /** Where the limit holds. */
  Scope scope();

  /** A band from edge to edge, or one frequency. */
  sealed interface Scope {}

  /**
   * Everywhere in a band.
   *
   * @param band one of the design's bands
   */
  record InBand(Band band) implements Scope {}

  /**
   * At one frequency.
   *
   * @param frequencyHz frequency in hertz, positive
   */
  record AtFrequency(double frequencyHz) implements Scope {}

  /** Where along the feed chain SWR is looked at. */
  enum Plane {
    /** At the antenna's terminals. */
    FEEDPOINT,
    /** At the transmitter, before any tuner. */
    TRANSMITTER
  }

  /**
   * SWR may not exceed a value.
   *
   * @param scope where
   * @param maximum largest SWR, at least 1
   * @param plane where along the feed chain
   */
  record MaximumSwr(Scope scope, double maximum, Plane plane) implements Requirement {}

  /**
   * Gain may not fall below a value.
   *
   * @param scope where
   * @param minimumDbi smallest gain in dBi
   * @param elevationDegrees elevation, 0 to 90 degrees
   * @param azimuthDegrees azimuth counter-clockwise from +x; empty for the largest gain over
   *     azimuth
   */
  record MinimumGain(
      Scope scope, double minimumDbi, double elevationDegrees, OptionalDouble azimuthDegrees)
      implements Requirement {}
}
