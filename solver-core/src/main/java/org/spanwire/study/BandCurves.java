package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.design.Band;
import org.spanwire.result.Warning;
import org.spanwire.unit.Quantity;

/**
 * Curves over and around a band: for a design as it stands, and with each of its uncertain
 * parameters at the ends of its spread, one at a time.
 *
 * @param band the band
 * @param frequenciesHz frequencies in hertz, evenly spaced, the band's edges among them
 * @param nominal the design as it stands
 * @param extremes its variations; none without spreads
 * @param interpolationError estimate of the largest error of |Γ| between the solved frequencies
 * @param warnings variations that could not be solved
 */
public record BandCurves(
    Band band,
    List<Double> frequenciesHz,
    Curve nominal,
    List<Curve> extremes,
    double interpolationError,
    List<Warning> warnings) {

  /**
   * One parameter at another value.
   *
   * @param parameter its name
   * @param value its value
   */
  public record Change(String parameter, Quantity value) {}

  /**
   * Curves of one variation.
   *
   * @param change what is changed; empty for the design as it stands
   * @param feedpoint reflection coefficients at the feedpoint against its reference
   * @param swr SWR at the transmitter
   */
  public record Curve(Optional<Change> change, List<Complex> feedpoint, List<Double> swr) {
    /** Takes copies. */
    public Curve {
      feedpoint = List.copyOf(feedpoint);
      swr = List.copyOf(swr);
    }
  }

  /** Takes copies. */
  public BandCurves {
    frequenciesHz = List.copyOf(frequenciesHz);
    extremes = List.copyOf(extremes);
    warnings = List.copyOf(warnings);
  }

  /** The curve with the change of a curve of another band, if it could be solved. */
  public Optional<Curve> like(Curve other) {
    return extremes.stream().filter(curve -> curve.change().equals(other.change())).findFirst();
  }

  /** The smallest SWR of all curves at every frequency. */
  public List<Double> lowestSwr() {
    return envelope(true);
  }

  /** The largest SWR of all curves at every frequency. */
  public List<Double> highestSwr() {
    return envelope(false);
  }

  /** The largest SWR of all curves at the frequencies within the band. */
  public double worstSwrInBand() {
    return worstInBand(highestSwr());
  }

  /** The largest SWR of one curve at the frequencies within the band. */
  public double worstSwrInBand(Curve curve) {
    return worstInBand(curve.swr());
  }

  private double worstInBand(List<Double> swr) {
    return IntStream.range(0, swr.size())
        .filter(i -> band.contains(frequenciesHz.get(i)))
        .mapToDouble(swr::get)
        .max()
        .orElseThrow();
  }

  private List<Double> envelope(boolean lowest) {
    List<Double> envelope = new ArrayList<>();
    for (int i = 0; i < frequenciesHz.size(); i++) {
      double value = nominal.swr().get(i);
      for (Curve curve : extremes) {
        double other = curve.swr().get(i);
        value = lowest ? Math.min(value, other) : Math.max(value, other);
      }
      envelope.add(value);
    }
    return envelope;
  }
}
