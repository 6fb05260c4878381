package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * A rational function through samples of several quantities that share their poles, in barycentric
 * form: r(x) = Σ w_k f_k/(x − x_k) / Σ w_k/(x − x_k).
 *
 * <p>Adaptive Antoulas–Anderson algorithm: Y. Nakatsukasa, O. Sète and L. N. Trefethen, The AAA
 * algorithm for rational approximation, SIAM J. Sci. Comput. 40, A1494 (2018). The support points
 * are added greedily where the fit is worst, the weights are the least-squares solution of the
 * linearised problem at the other samples. All quantities of a sample are weighed by one over the
 * norm of the sample, so that the misfit is a relative one.
 */
final class RationalFit {

  private final double[] supports;
  private final Complex[][] values;
  private final Complex[] weights;
  private final double misfit;

  private RationalFit(double[] supports, Complex[][] values, Complex[] weights, double misfit) {
    this.supports = supports;
    this.values = values;
    this.weights = weights;
    this.misfit = misfit;
  }

  /** Samples of a function: places, rising, and the same number of quantities at each. */
  record Samples(double[] places, Complex[][] quantities) {

    int count() {
      return places.length;
    }

    int at(double place) {
      return Arrays.binarySearch(places, place);
    }

    double norm(int sample) {
      return scale(quantities[sample]);
    }
  }

  /**
   * Fits samples.
   *
   * @param samples at least two, at distinct places
   * @param tolerance relative misfit at which no further support point is added: not below the
   *     noise of the samples
   * @param most largest number of support points; at most half the samples leave the weights
   *     determined
   */
  static RationalFit of(Samples samples, double tolerance, int most) {
    return of(samples, List.of(), tolerance, most);
  }

  /**
   * Fits samples, beginning with the support points of an earlier fit to fewer of them.
   *
   * @param begin places of samples
   */
  static RationalFit of(Samples samples, List<Double> begin, double tolerance, int most) {
    List<Integer> chosen = new ArrayList<>();
    begin.forEach(place -> chosen.add(samples.at(place)));
    double[] misfits = new double[samples.count()];
    RationalFit fit = null;
    if (chosen.isEmpty()) {
      Complex[] mean = mean(samples);
      for (int j = 0; j < misfits.length; j++) {
        misfits[j] = distance(samples.quantities()[j], mean) / samples.norm(j);
      }
    } else {
      fit = weighted(samples, chosen, misfits);
    }
    while (fit == null || (fit.misfit > tolerance && chosen.size() < most)) {
      chosen.add(worst(misfits));
      fit = weighted(samples, chosen, misfits);
    }
    return fit;
  }

  /** The fit with given support points; overwrites the misfit of every sample. */
  private static RationalFit weighted(Samples samples, List<Integer> chosen, double[] misfits) {
    int count = chosen.size();
    double[] supports = new double[count];
    Complex[][] values = new Complex[count][];
    for (int k = 0; k < count; k++) {
      supports[k] = samples.places()[chosen.get(k)];
      values[k] = samples.quantities()[chosen.get(k)];
    }
    Complex[] weights = weights(samples, chosen);
    RationalFit bare = new RationalFit(supports, values, weights, 0);
    double largest = 0;
    for (int j = 0; j < samples.count(); j++) {
      misfits[j] =
          chosen.contains(j)
              ? 0
              : distance(samples.quantities()[j], bare.at(samples.places()[j])) / samples.norm(j);
      largest = Math.max(largest, misfits[j]);
    }
    return new RationalFit(supports, values, weights, largest);
  }

  /**
   * The right singular vector of the smallest singular value of the Loewner matrix, whose real form
   * [Re −Im; Im Re] has the same singular values, each twice.
   */
  private static Complex[] weights(Samples samples, List<Integer> chosen) {
    int columns = chosen.size();
    int quantities = samples.quantities()[0].length;
    int rows = Math.max((samples.count() - columns) * quantities, columns);
    RealMatrix loewner = new Array2DRowRealMatrix(2 * rows, 2 * columns);
    int row = 0;
    for (int j = 0; j < samples.count(); j++) {
      if (chosen.contains(j)) {
        continue;
      }
      for (int q = 0; q < quantities; q++, row++) {
        for (int k = 0; k < columns; k++) {
          int support = chosen.get(k);
          Complex entry =
              samples
                  .quantities()[j][q]
                  .subtract(samples.quantities()[support][q])
                  .divide(samples.places()[j] - samples.places()[support])
                  .divide(samples.norm(j));
          loewner.setEntry(row, k, entry.getReal());
          loewner.setEntry(row, columns + k, -entry.getImaginary());
          loewner.setEntry(rows + row, k, entry.getImaginary());
          loewner.setEntry(rows + row, columns + k, entry.getReal());
        }
      }
    }
    RealMatrix v = new SingularValueDecomposition(loewner).getV();
    int last = v.getColumnDimension() - 1;
    Complex[] weights = new Complex[columns];
    for (int k = 0; k < columns; k++) {
      weights[k] = new Complex(v.getEntry(k, last), v.getEntry(columns + k, last));
    }
    return weights;
  }

  /** All quantities at a place. */
  Complex[] at(double place) {
    int quantities = values[0].length;
    double[] re = new double[quantities];
    double[] im = new double[quantities];
    double sumRe = 0;
    double sumIm = 0;
    for (int k = 0; k < supports.length; k++) {
      double distance = place - supports[k];
      if (distance == 0) {
        return values[k].clone();
      }
      double wRe = weights[k].getReal() / distance;
      double wIm = weights[k].getImaginary() / distance;
      sumRe += wRe;
      sumIm += wIm;
      for (int q = 0; q < quantities; q++) {
        Complex value = values[k][q];
        re[q] += wRe * value.getReal() - wIm * value.getImaginary();
        im[q] += wRe * value.getImaginary() + wIm * value.getReal();
      }
    }
    Complex sum = new Complex(sumRe, sumIm);
    Complex[] result = new Complex[quantities];
    for (int q = 0; q < quantities; q++) {
      result[q] = new Complex(re[q], im[q]).divide(sum);
    }
    return result;
  }

  /** Largest relative misfit at the samples that are no support points. */
  double misfit() {
    return misfit;
  }

  /** Places of the support points, one more than the degree, in the order they were added. */
  List<Double> supports() {
    return Arrays.stream(supports).boxed().toList();
  }

  /** Distance between two sets of quantities over the norm of the first. */
  static double relativeDistance(Complex[] reference, Complex[] other) {
    return distance(reference, other) / scale(reference);
  }

  /**
   * What relative errors are relative to: the norm, which may be 0 as that of a gain at the
   * horizon.
   */
  private static double scale(Complex[] quantities) {
    return Math.max(norm(quantities), Double.MIN_NORMAL);
  }

  private static double norm(Complex[] quantities) {
    double sum = 0;
    for (Complex q : quantities) {
      sum += q.getReal() * q.getReal() + q.getImaginary() * q.getImaginary();
    }
    return Math.sqrt(sum);
  }

  private static double distance(Complex[] a, Complex[] b) {
    Complex[] difference = new Complex[a.length];
    Arrays.setAll(difference, q -> a[q].subtract(b[q]));
    return norm(difference);
  }

  private static Complex[] mean(Samples samples) {
    Complex[] mean = new Complex[samples.quantities()[0].length];
    Arrays.fill(mean, Complex.ZERO);
    for (Complex[] sample : samples.quantities()) {
      for (int q = 0; q < mean.length; q++) {
        mean[q] = mean[q].add(sample[q].divide(samples.count()));
      }
    }
    return mean;
  }

  private static int worst(double[] misfits) {
    int worst = 0;
    for (int j = 1; j < misfits.length; j++) {
      if (misfits[j] > misfits[worst]) {
        worst = j;
      }
    }
    return worst;
  }
}
