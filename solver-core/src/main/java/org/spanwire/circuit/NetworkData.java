package org.spanwire.circuit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;

/**
 * Network parameters known at some frequencies, as from a measurement. Between samples the
 * scattering parameters follow the polynomial through the four nearest ones (cubic, in frequency;
 * fewer where there are fewer samples); outside the samples there is no answer.
 *
 * <p>The error of interpolation is estimated by leaving out: each sample is predicted from its
 * neighbours alone, and of the samples around a frequency the one predicted worst sets the error
 * there. Leaving one out doubles the spacing, so that for smooth data the estimate is larger than
 * the error itself; noise shows as itself. Immutable.
 */
public final class NetworkData implements Network {

  private static final int STENCIL = 4;

  private final double[] frequencies;
  private final NPort[] samples;
  private final double[] leftOut;

  private NetworkData(double[] frequencies, NPort[] samples) {
    this.frequencies = frequencies;
    this.samples = samples;
    leftOut = new double[samples.length];
    for (int i = 0; i < samples.length; i++) {
      leftOut[i] = leaveOut(i);
    }
  }

  /**
   * From samples by frequency in hertz.
   *
   * @param samples at least one; all with the same number of ports
   * @throws IllegalArgumentException if a frequency is negative or the samples differ in ports
   */
  public static NetworkData of(SortedMap<Double, NPort> samples) {
    if (samples.isEmpty()) {
      throw new IllegalArgumentException("network data need at least one sample");
    }
    List<NPort> ports = new ArrayList<>();
    NPort first = samples.get(samples.firstKey());
    samples.forEach(
        (f, network) -> {
          if (!(f >= 0) || Double.isInfinite(f) || network.ports() != first.ports()) {
            throw new IllegalArgumentException(
                "sample at %s Hz with %d ports does not fit data of %d ports"
                    .formatted(f, network.ports(), first.ports()));
          }
          ports.add(network.renormalized(references(first)));
        });
    return new NetworkData(
        samples.keySet().stream().mapToDouble(Double::doubleValue).toArray(),
        ports.toArray(new NPort[0]));
  }

  private static Complex[] references(NPort network) {
    return IntStream.rangeClosed(1, network.ports())
        .mapToObj(network::reference)
        .toArray(Complex[]::new);
  }

  /** Number of ports. */
  public int ports() {
    return samples[0].ports();
  }

  /** Frequencies of the samples in hertz, rising; a copy. */
  public double[] frequencies() {
    return frequencies.clone();
  }

  /** Sample by its place in {@link #frequencies()}, from 0. */
  public NPort sample(int index) {
    return samples[index];
  }

  /** Lowest frequency with an answer, in hertz. */
  public double lowestHz() {
    return frequencies[0];
  }

  /** Highest frequency with an answer, in hertz. */
  public double highestHz() {
    return frequencies[frequencies.length - 1];
  }

  /**
   * {@inheritDoc}
   *
   * @throws CircuitException outside the samples
   */
  @Override
  public NPort at(double frequencyHz) {
    int above = above(frequencyHz);
    if (frequencies[above] == frequencyHz) {
      return samples[above];
    }
    return NPort.of(interpolated(frequencyHz, nearest(frequencyHz, -1)), references(samples[0]));
  }

  /**
   * Estimated error of interpolation at a frequency: largest |ΔS| of any parameter; 0 at a sample;
   * with two samples, where nothing can be left out, their difference.
   *
   * @throws CircuitException outside the samples
   */
  public double errorAt(double frequencyHz) {
    int above = above(frequencyHz);
    return frequencies[above] == frequencyHz
        ? 0
        : Math.max(leftOut[Math.max(0, above - 1)], leftOut[above]);
  }

  /** Largest power gain of any sample, see {@link NPort#largestGain()}: above 1 not passive. */
  public double largestGain() {
    return Arrays.stream(samples).mapToDouble(NPort::largestGain).max().orElseThrow();
  }

  /** Largest reciprocity error of any sample, see {@link NPort#reciprocityError()}. */
  public double reciprocityError() {
    return Arrays.stream(samples).mapToDouble(NPort::reciprocityError).max().orElseThrow();
  }

  private int above(double f) {
    if (!(f >= lowestHz() && f <= highestHz())) {
      throw new CircuitException(
          "frequency %s Hz lies outside the network data, which run from %s Hz to %s Hz; extend the data"
              .formatted(f, lowestHz(), highestHz()));
    }
    int found = Arrays.binarySearch(frequencies, f);
    return found >= 0 ? found : -found - 1;
  }

  private double leaveOut(int index) {
    int last = samples.length - 1;
    if (last == 0) {
      return 0;
    }
    if (index == 0 || index == last) {
      // Leaving out an end would ask for an extrapolation; the neighbour speaks for it.
      int neighbour = index == 0 ? 1 : last - 1;
      return last == 1
          ? samples[0].matrix().minus(samples[1].matrix()).largestMagnitude()
          : leaveOut(neighbour);
    }
    double f = frequencies[index];
    return interpolated(f, nearest(f, index)).minus(samples[index].matrix()).largestMagnitude();
  }

  /** The samples for a frequency: two on each side where there are so many, without one of them. */
  private int[] nearest(double f, int without) {
    int[] usable = IntStream.range(0, frequencies.length).filter(i -> i != without).toArray();
    int below = (int) Arrays.stream(usable).filter(i -> frequencies[i] < f).count();
    int size = Math.min(STENCIL, usable.length);
    int start = Math.max(0, Math.min(usable.length - size, below - STENCIL / 2));
    return Arrays.copyOfRange(usable, start, start + size);
  }

  /** Lagrange's polynomial through the samples named. */
  private ComplexMatrix interpolated(double f, int[] stencil) {
    double[] weights = new double[stencil.length];
    for (int k = 0; k < stencil.length; k++) {
      weights[k] = 1;
      for (int other : stencil) {
        if (other != stencil[k]) {
          weights[k] *= (f - frequencies[other]) / (frequencies[stencil[k]] - frequencies[other]);
        }
      }
    }
    return ComplexMatrix.of(
        ports(),
        ports(),
        (i, j) -> {
          Complex sum = Complex.ZERO;
          for (int k = 0; k < stencil.length; k++) {
            sum = sum.add(samples[stencil[k]].matrix().at(i, j).multiply(weights[k]));
          }
          return sum;
        });
  }
}
