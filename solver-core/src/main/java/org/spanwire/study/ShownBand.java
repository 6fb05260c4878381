package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Band;

/**
 * A band with a margin to either side, over which a curve is drawn through solved frequencies.
 *
 * @param band the band
 */
record ShownBand(Band band) {

  /** Width shown beside each edge of a band, over the band's own. */
  private static final double MARGIN = 0.25;

  private static final int POINTS = 5;
  private static final int MOST_POINTS = 65;

  /** Largest error of |Γ| accepted: moves an SWR of 2 by 0.02, less than a line's width. */
  private static final double REFLECTION_ERROR = 5e-3;

  private double margin() {
    return MARGIN * (band.highHz() - band.lowHz());
  }

  private BandSamples samples() {
    double margin = margin();
    return new BandSamples(
        new Band(band.name(), band.lowHz() - margin, band.highHz() + margin), POINTS);
  }

  /**
   * Evenly spaced frequencies in hertz, both edges of the band among them.
   *
   * @param steps a multiple of six
   */
  List<Double> frequencies(int steps) {
    double margin = margin();
    List<Double> frequencies = new ArrayList<>();
    double width = band.highHz() - band.lowHz() + 2 * margin;
    for (int i = 0; i <= steps; i++) {
      frequencies.add(
          i == steps / 6
              ? band.lowHz()
              : i == steps * 5 / 6 ? band.highHz() : band.lowHz() - margin + width * i / steps);
    }
    return frequencies;
  }

  /** Frequencies in hertz that {@link #solve} begins with. */
  static List<Double> first(List<Band> bands) {
    return bands.stream()
        .flatMap(band -> new ShownBand(band).samples().missing().stream())
        .toList();
  }

  /**
   * Solves bands as closely as their curves need.
   *
   * @param at the operation at a frequency in hertz
   * @param feed name of the feed looked at
   */
  static List<BandSamples> solve(List<Band> bands, DoubleFunction<Operation> at, String feed) {
    List<BandSamples> all = bands.stream().map(band -> new ShownBand(band).samples()).toList();
    for (BandSamples samples : all) {
      fill(at, feed, samples);
      while (samples.error() > REFLECTION_ERROR && 2 * samples.count() - 1 <= MOST_POINTS) {
        samples.refine();
        fill(at, feed, samples);
      }
    }
    return all;
  }

  private static void fill(DoubleFunction<Operation> at, String feed, BandSamples samples) {
    List<BandSamples.Sample> solved = new ArrayList<>();
    for (double frequency : samples.missing()) {
      Operation operation = at.apply(frequency);
      solved.add(
          new BandSamples.Sample(operation.feed(feed), List.of(), operation.solution().warnings()));
    }
    samples.fill(solved);
  }

  /** SWR at the transmitter at frequencies in hertz. */
  static List<Double> swr(BandSamples samples, List<Double> frequencies) {
    ReflectionCurve curve = samples.curve(Plane.TRANSMITTER);
    double reference = samples.referenceOhm(Plane.TRANSMITTER);
    List<Double> swr = new ArrayList<>();
    for (double frequency : frequencies) {
      Complex reflection = curve.at(frequency);
      swr.add(Mismatch.ofReflection(reflection, reference).swr());
    }
    return swr;
  }
}
