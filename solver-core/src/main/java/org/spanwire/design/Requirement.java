package org.spanwire.design;

import java.util.OptionalDouble;

/** A limit that a design must keep. */
public sealed interface Requirement {

  /** Where the limit holds. */
  Scope scope();

  /** A band from edge to edge, one frequency, or the design as a whole. */
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

  /** The design as a whole. */
  record Everywhere() implements Scope {}

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

  /**
   * Radiation efficiency may not fall below a value.
   *
   * @param scope where
   * @param minimum smallest power radiated into the sky over power accepted at the feeds, above 0,
   *     at most 1
   */
  record MinimumEfficiency(Scope scope, double minimum) implements Requirement {}

  /**
   * Heat of the choke at the top of the feed line may not exceed a value, at the design's power.
   *
   * @param scope where
   * @param maximumWatts largest heat in watts, positive
   */
  record MaximumChokeHeat(Scope scope, double maximumWatts) implements Requirement {}

  /**
   * The widest stretch of a band in which SWR keeps a limit may not be narrower than a value.
   *
   * @param scope the band
   * @param minimumHz smallest width in hertz, positive, at most that of the band
   * @param swr SWR within which frequencies count, at least 1
   * @param plane where along the feed chain
   */
  record MinimumBandwidth(InBand scope, double minimumHz, double swr, Plane plane)
      implements Requirement {}

  /** What may be needed to transmit on a band, from the best. */
  enum Usability {
    /** No tuner. */
    DIRECT,
    /** A built-in tuner. */
    TUNABLE,
    /** A tuner of wide range. */
    WIDE_TUNER
  }

  /**
   * The verdict on a band may not be worse than another, by the worst SWR at the transmitter.
   *
   * @param scope the band
   * @param lowest the worst verdict allowed
   */
  record LowestVerdict(InBand scope, Usability lowest) implements Requirement {}

  /**
   * The distance that people must keep for the design's limits of exposure may not exceed a value.
   *
   * @param scope the band
   * @param maximumMetres largest distance in metres, in plan, from the nearest conductor, not
   *     negative
   */
  record MaximumExposureDistance(InBand scope, double maximumMetres) implements Requirement {}

  /**
   * The share of installations that meet all other requirements, drawn from the design's spreads,
   * may not fall below a value.
   *
   * @param minimum smallest share, above 0, at most 1
   */
  record MinimumYield(double minimum) implements Requirement {
    @Override
    public Scope scope() {
      return new Everywhere();
    }
  }
}
