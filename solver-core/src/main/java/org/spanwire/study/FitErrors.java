package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * How well fitted parameters are known: from the scatter of the readings about the fit, or from
 * their stated errors, which are widened where the readings scatter more (by the root of χ² over
 * the degrees of freedom; R. T. Birge, Phys. Rev. 40, 207, 1932).
 */
final class FitErrors {

  private static final double CONFIDENCE = 0.975;
  private static final double SINGULAR = 1e-12;
  private static final double END = 1e-6;

  private final FitModel model;
  private final double[] units;
  private final double[][] covariance;
  private final double quantile;

  /**
   * Errors at the best fit of all parameters.
   *
   * @param squares what remains of the weighted squares there
   */
  FitErrors(FitModel model, Optimum best, double squares) {
    this.model = model;
    units = best.getPoint().toArray();
    int freedom = model.measurement().numbers() - units.length;
    boolean stated = model.measurement().statesErrors();
    double variance = squares / freedom;
    covariance = covariance(best, stated ? Math.max(1, variance) : variance);
    quantile =
        stated
            ? new NormalDistribution(null, 0, 1).inverseCumulativeProbability(CONFIDENCE)
            : new TDistribution(null, freedom).inverseCumulativeProbability(CONFIDENCE);
  }

  /** Of the units; NaN if the readings do not tell. */
  private static double[][] covariance(Optimum best, double variance) {
    try {
      return best.getCovariances(SINGULAR).scalarMultiply(variance).getData();
    } catch (SingularMatrixException e) {
      double[][] unknown =
          new double[best.getPoint().getDimension()][best.getPoint().getDimension()];
      Arrays.stream(unknown).forEach(row -> Arrays.fill(row, Double.NaN));
      return unknown;
    }
  }

  /** Half the width of a 95 % confidence interval, in units. */
  private double reach(int i) {
    return quantile * Math.sqrt(covariance[i][i]);
  }

  /** Whether a place lies outside the confidence interval of some parameter. */
  boolean excludes(double[] place) {
    for (int i = 0; i < units.length; i++) {
      if (Math.abs(place[i] - units[i]) > reach(i)) {
        return true;
      }
    }
    return false;
  }

  /**
   * Both ends of the longest axis of the confidence region, within the ranges: what the readings
   * part least. The end first where the parameter that moves most is larger. None where they do not
   * tell.
   */
  List<double[]> ends() {
    if (Arrays.stream(covariance).anyMatch(row -> Double.isNaN(row[0]))) {
      return List.of();
    }
    EigenDecomposition axes = new EigenDecomposition(new Array2DRowRealMatrix(covariance));
    double reach = quantile * Math.sqrt(axes.getRealEigenvalue(0));
    RealVector axis = axes.getEigenvector(0);
    // Either sign is an eigenvector.
    double most = Math.abs(axis.getMinValue()) > axis.getMaxValue() ? -reach : reach;
    List<double[]> ends = new ArrayList<>();
    for (double length : new double[] {most, -most}) {
      double[] end = units.clone();
      for (int i = 0; i < end.length; i++) {
        end[i] = Math.max(-1, Math.min(1, end[i] + length * axis.getEntry(i)));
      }
      ends.add(end);
    }
    return ends;
  }

  List<FitResult.Estimate> estimates() {
    List<FitResult.Estimate> estimates = new ArrayList<>();
    for (int i = 0; i < units.length; i++) {
      estimates.add(
          new FitResult.Estimate(
              model.parameter(i).name(),
              model.parameter(i).value(),
              model.value(i, units[i]),
              Math.sqrt(covariance[i][i]) * model.scale(i),
              model.value(i, units[i] - reach(i)).value(),
              model.value(i, units[i] + reach(i)).value(),
              Math.abs(units[i]) > 1 - END,
              model.change(i, units[i])));
    }
    return estimates;
  }

  double[][] correlations() {
    int n = covariance.length;
    double[][] correlations = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        correlations[i][j] =
            i == j ? 1 : covariance[i][j] / Math.sqrt(covariance[i][i] * covariance[j][j]);
      }
    }
    return correlations;
  }
}
