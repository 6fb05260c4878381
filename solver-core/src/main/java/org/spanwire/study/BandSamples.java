package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.design.Band;
import org.spanwire.result.Warning;

/** The frequencies of one band solved so far, and the curve through them. Not thread-safe. */
final class BandSamples {

  private final String name;
  private final FrequencyRange range;
  private double[] frequencies;
  private Sample[] samples;

  /** What a solution contributes. */
  record Sample(SolvedFeed feed, List<HeatAt> heat, List<Warning> warnings) {}

  /**
   * A band with nothing solved yet.
   *
   * @param points number of frequencies, at least 3
   */
  BandSamples(Band band, int points) {
    this.name = band.name();
    this.range = new FrequencyRange(band.lowHz(), band.highHz());
    this.frequencies = ReflectionCurve.frequencies(range, points);
    this.samples = new Sample[points];
  }

  String name() {
    return name;
  }

  FrequencyRange range() {
    return range;
  }

  /** Frequencies in hertz still to be solved, rising. */
  List<Double> missing() {
    List<Double> missing = new ArrayList<>();
    for (int i = 0; i < samples.length; i++) {
      if (samples[i] == null) {
        missing.add(frequencies[i]);
      }
    }
    return missing;
  }

  /** Takes the solutions at {@link #missing}, in that order. */
  void fill(List<Sample> solved) {
    int next = 0;
    for (int i = 0; i < samples.length; i++) {
      if (samples[i] == null) {
        samples[i] = solved.get(next++);
      }
    }
  }

  /** Puts a frequency between any two, keeping what is solved. */
  void refine() {
    int count = 2 * samples.length - 1;
    Sample[] finer = new Sample[count];
    for (int i = 0; i < samples.length; i++) {
      finer[2 * i] = samples[i];
    }
    samples = finer;
    frequencies = ReflectionCurve.frequencies(range, count);
  }

  int count() {
    return samples.length;
  }

  /** All samples, rising in frequency; none missing. */
  List<Sample> all() {
    return List.of(samples);
  }

  /** The planes of the feed chain. */
  List<Plane> planes() {
    return samples[0].feed().planes().stream().map(PlaneMismatch::plane).toList();
  }

  /** SWR at all samples at a plane. */
  List<SwrAt> swr(Plane plane) {
    List<SwrAt> swr = new ArrayList<>();
    for (int i = 0; i < samples.length; i++) {
      swr.add(new SwrAt(frequencies[i], samples[i].feed().at(plane).swr()));
    }
    return swr;
  }

  double referenceOhm(Plane plane) {
    return samples[0].feed().at(plane).referenceOhm();
  }

  /** The curve through all samples at a plane. */
  ReflectionCurve curve(Plane plane) {
    Complex[] values = new Complex[samples.length];
    for (int i = 0; i < samples.length; i++) {
      values[i] = samples[i].feed().at(plane).reflection();
    }
    return new ReflectionCurve(range, values);
  }

  /** The largest error of the curves at all planes. */
  double error() {
    return planes().stream().mapToDouble(plane -> curve(plane).error()).max().orElseThrow();
  }
}
