package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A polynomial through values of a function of several variables on [−1, 1]ⁿ, grown where its last
 * corrections are largest. It asks for values and is given them, so that whoever has the function
 * may compute many of them at once. What it asks for depends on the values alone.
 *
 * <p>Method: hierarchical interpolation on a downward closed set of indices with one new Leja point
 * per degree (A. Chkifa, A. Cohen and C. Schwab, Found. Comput. Math. 14, 601, 2014), the set grown
 * from the index of the largest correction (T. Gerstner and M. Griebel, Computing 71, 65, 2003).
 * What two variables do together only away from the middle of a third is found late or never, so
 * the polynomial is to be held against values that it has not seen.
 */
final class SparseInterpolant {

  private static final int MOST_DEGREE = 40;

  /** Indices whose neighbours are asked for at once: fixed, so that the threads do not matter. */
  private static final int BATCH = 2;

  private final int variables;
  private final LejaPoints points = new LejaPoints(MOST_DEGREE + 1);
  private final List<Term> terms = new ArrayList<>();
  private final Map<List<Integer>, Term> active = new HashMap<>();
  private final Set<List<Integer>> old = new HashSet<>();
  private final int[] degrees;
  private List<List<Integer>> asked = new ArrayList<>();

  /**
   * One term of the polynomial.
   *
   * @param index degree in every variable
   * @param powers the same, for speed
   * @param correction what the term's point adds to the polynomial without it
   */
  private record Term(List<Integer> index, int[] powers, double[] correction) {

    Term(List<Integer> index, double[] correction) {
      this(index, index.stream().mapToInt(Integer::intValue).toArray(), correction);
    }

    double size() {
      double largest = 0;
      for (double each : correction) {
        largest = Math.max(largest, Math.abs(each));
      }
      return largest;
    }
  }

  /**
   * Degrees along every variable to begin with: an odd function is met by its first degree at the
   * first three points, and what is not yet asked for must not look settled.
   */
  private static final int FIRST_DEGREES = 3;

  /** Nothing known yet: asks for the middle and some points along every variable. */
  SparseInterpolant(int variables) {
    this.variables = variables;
    this.degrees = new int[variables];
    Integer[] zero = new Integer[variables];
    Arrays.fill(zero, 0);
    asked.add(List.of(zero));
    for (int degree = 1; degree <= FIRST_DEGREES; degree++) {
      for (int j = 0; j < variables; j++) {
        asked.add(raised(List.of(zero), j, degree));
      }
    }
  }

  private static List<Integer> raised(List<Integer> index, int variable, int by) {
    List<Integer> next = new ArrayList<>(index);
    next.set(variable, next.get(variable) + by);
    return List.copyOf(next);
  }

  /** The points that it wants values at; none until {@link #grow}. */
  List<double[]> wanted() {
    return asked.stream().map(this::point).toList();
  }

  private double[] point(List<Integer> index) {
    return index.stream().mapToDouble(points::at).toArray();
  }

  /** Takes the values at {@link #wanted}, in that order. */
  void take(List<double[]> values) {
    for (int i = 0; i < asked.size(); i++) {
      List<Integer> index = asked.get(i);
      double[] correction = values.get(i).clone();
      if (!terms.isEmpty()) {
        double[] before = at(point(index));
        for (int k = 0; k < correction.length; k++) {
          correction[k] -= before[k];
        }
      }
      Term term = new Term(index, correction);
      terms.add(term);
      active.put(index, term);
      for (int j = 0; j < variables; j++) {
        degrees[j] = Math.max(degrees[j], index.get(j));
      }
    }
    boolean first = old.isEmpty();
    asked = new ArrayList<>();
    if (first) {
      settleStart();
    }
  }

  /** Of the first points along each variable only the outermost can grow. */
  private void settleStart() {
    for (Term term : terms) {
      if (term.index.stream().mapToInt(Integer::intValue).sum() < FIRST_DEGREES) {
        active.remove(term.index);
        old.add(term.index);
      }
    }
    // The first terms of two variables together show how much they mix.
    for (int i = 0; i < variables; i++) {
      for (int j = 0; j < i; j++) {
        asked.add(raised(raised(zero(), i, 1), j, 1));
      }
    }
  }

  private List<Integer> zero() {
    return terms.get(0).index;
  }

  /** Root of the sum of squares of the corrections from whose indices nothing has grown yet. */
  double uncertainty() {
    double sum = 0;
    for (Term term : terms) {
      sum += active.containsKey(term.index) ? term.size() * term.size() : 0;
    }
    return Math.sqrt(sum);
  }

  /**
   * Asks for the neighbours of the indices with the largest corrections, if the corrections all
   * together exceed a tolerance.
   */
  void grow(double tolerance) {
    for (int n = 0; n < BATCH && uncertainty() > tolerance; n++) {
      Term largest = null;
      for (Term term : terms) {
        if (active.containsKey(term.index) && (largest == null || term.size() > largest.size())) {
          largest = term;
        }
      }
      active.remove(largest.index);
      old.add(largest.index);
      for (int j = 0; j < variables; j++) {
        List<Integer> next = raised(largest.index, j, 1);
        if (next.get(j) <= MOST_DEGREE && !asked.contains(next) && mayCome(next)) {
          asked.add(next);
        }
      }
    }
  }

  /** Whether an index is unknown and all its lower neighbours are known. */
  private boolean mayCome(List<Integer> index) {
    if (isKnown(index)) {
      return false;
    }
    for (int j = 0; j < variables; j++) {
      if (index.get(j) > 0 && !isKnown(raised(index, j, -1))) {
        return false;
      }
    }
    return true;
  }

  private boolean isKnown(List<Integer> index) {
    return old.contains(index) || active.containsKey(index);
  }

  int size() {
    return terms.size();
  }

  /** Highest degree in a variable. */
  int degree(int variable) {
    return degrees[variable];
  }

  /** The value at a point. */
  double[] at(double[] x) {
    return slice(Arrays.copyOfRange(x, 1, x.length)).at(x[0]);
  }

  /**
   * The polynomial of the first variable alone.
   *
   * @param x values of all others
   */
  Slice slice(double... x) {
    double[][] basis = new double[variables][];
    for (int j = 1; j < variables; j++) {
      basis[j] = points.basis(x[j - 1], degrees[j]);
    }
    int outputs = terms.get(0).correction.length;
    double[][] sums = new double[degrees[0] + 1][outputs];
    for (Term term : terms) {
      double weight = 1;
      for (int j = 1; j < variables; j++) {
        weight *= basis[j][term.powers[j]];
      }
      double[] sum = sums[term.powers[0]];
      for (int k = 0; k < outputs; k++) {
        sum[k] += weight * term.correction[k];
      }
    }
    return new Slice(points, sums);
  }

  /**
   * A polynomial of one variable.
   *
   * @param points where its basis lives
   * @param coefficients by degree and output
   */
  record Slice(LejaPoints points, double[][] coefficients) {

    double[] at(double x) {
      double[] basis = points.basis(x, coefficients.length - 1);
      double[] value = new double[coefficients[0].length];
      for (int k = 0; k < basis.length; k++) {
        for (int i = 0; i < value.length; i++) {
          value[i] += basis[k] * coefficients[k][i];
        }
      }
      return value;
    }
  }
}
