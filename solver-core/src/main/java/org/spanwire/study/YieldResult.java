package org.spanwire.study;

import java.util.List;
import java.util.OptionalDouble;
import org.spanwire.design.Parameter;
import org.spanwire.design.Requirement;

/**
 * How many installations meet what is required of them.
 *
 * @param parameters the parameters that carry a spread, in the order of the design
 * @param samples number of installations drawn
 * @param outcomes one per requirement
 * @param all share of the installations that meet all of them
 * @param envelopes SWR at the transmitter over the design's bands
 * @param solves number of times the antenna was solved
 * @param modelError largest error found of a reflection coefficient of the model that the
 *     installations were judged on, against solutions that it had not seen
 * @param distanceError largest error found in metres of distances to keep, likewise; empty where
 *     none is required
 */
public record YieldResult(
    List<Parameter> parameters,
    int samples,
    List<Outcome> outcomes,
    Share all,
    List<Envelope> envelopes,
    int solves,
    double modelError,
    OptionalDouble distanceError) {

  /** Takes copies. */
  public YieldResult {
    parameters = List.copyOf(parameters);
    outcomes = List.copyOf(outcomes);
    envelopes = List.copyOf(envelopes);
  }

  /**
   * A share with its 95 % confidence interval as for independent draws (E. B. Wilson, J. Amer.
   * Statist. Assoc. 22, 209, 1927), which a quasi-random sample keeps with room to spare.
   */
  public record Share(double value, double low, double high) {}

  /**
   * What became of one requirement. Values are the largest SWR, the smallest gain in dBi or
   * efficiency in dB, the largest heat of the choke in watts where the requirement holds, the
   * bandwidth in hertz, or the distance to keep in metres.
   *
   * @param requirement what is required
   * @param share share of installations that meet it
   * @param undecided share closer to the limit than the model's error
   * @param linearShare share by the slopes alone, for normally distributed values
   * @param nominal value at the nominal parameters
   * @param percentiles value that 10, 50 and 90 % of the installations stay below
   * @param influences one per parameter, in their order
   */
  public record Outcome(
      Requirement requirement,
      Share share,
      double undecided,
      double linearShare,
      double nominal,
      Percentiles percentiles,
      List<Influence> influences) {

    /** Takes a copy. */
    public Outcome {
      influences = List.copyOf(influences);
    }
  }

  /**
   * What one parameter does to a value.
   *
   * @param parameter its name
   * @param perSpread slope at the nominal parameters, times the spread's half-width or sigma
   * @param varianceShare variance of the value while this parameter varies alone, over the sum of
   *     those of all parameters; 0 if nothing varies
   */
  public record Influence(String parameter, double perSpread, double varianceShare) {}

  /** What 10, 50 and 90 % of the installations stay below. */
  public record Percentiles(double p10, double p50, double p90) {}

  /**
   * SWR at the transmitter over a band.
   *
   * @param band name of the band
   * @param points rising in frequency, band edges included
   */
  public record Envelope(String band, List<Point> points) {

    /** Takes a copy. */
    public Envelope {
      points = List.copyOf(points);
    }
  }

  /** An envelope at a frequency in hertz. */
  public record Point(double frequencyHz, Percentiles swr) {}
}
