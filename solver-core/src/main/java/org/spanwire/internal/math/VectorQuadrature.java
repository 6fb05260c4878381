package org.spanwire.internal.math;

/**
 * Adaptive Gauss–Kronrod quadrature (10 and 21 points; Piessens et al., QUADPACK, 1983) of several
 * functions that share their nodes. A panel is halved until the error estimated from the difference
 * of the two rules is below the limit for every function. The order of evaluation and summation
 * depends on the arguments only. Holds scratch space: one instance per thread.
 */
public final class VectorQuadrature {

  /** Functions of one real variable that are integrated together. */
  public interface Integrand {
    /** Writes the value of every function at t to {@code values}. */
    void evaluate(double t, double[] values);
  }

  private static final double[] NODES = {
    0.995657163025808080735527280689003, 0.973906528517171720077964012084452,
        0.930157491355708226001207180059508,
    0.865063366688984510732096688423493, 0.780817726586416897063717578345042,
        0.679409568299024406234327365114874,
    0.562757134668604683339000099272694, 0.433395394129247190799265943165784,
        0.294392862701460198131126603103866,
    0.148874338981631210884826001129720, 0
  };
  private static final double[] KRONROD = {
    0.011694638867371874278064396062192, 0.032558162307964727478818972459390,
        0.054755896574351996031381300244580,
    0.075039674810919952767043140916190, 0.093125454583697605535065465083366,
        0.109387158802297641899210590325805,
    0.123491976262065851077958109585166, 0.134709217311473325928054001771707,
        0.142775938577060080797094273138717,
    0.147739104901338491374841515972068, 0.149445554002916905664936468389821
  };
  private static final double[] GAUSS = {
    0,
    0.066671344308688137593568809893332,
    0,
    0.149451349150580593145863396957658,
    0,
    0.219086362515982043995534934228163,
    0,
    0.269266719309996355091226921569469,
    0,
    0.295524224714752870173815619188769,
    0
  };

  private static final int DEEPEST = 48;

  /** Evaluations that one call may take. */
  private static final int MOST_EVALUATIONS = 200_000;

  /** Below this share of the integral of the modulus, a difference of the two rules is rounding. */
  private static final double ROUNDING = 2e-15;

  private final int functions;
  private final double[] values;
  private final double[] kronrod;
  private final double[] gauss;
  private final double[] modulus;
  private final double[] pendingEnd = new double[DEEPEST + 1];
  private final int[] pendingDepth = new int[DEEPEST + 1];
  private int evaluations;

  /** For integrands of so many functions. */
  public VectorQuadrature(int functions) {
    this.functions = functions;
    values = new double[functions];
    kronrod = new double[functions];
    gauss = new double[functions];
    modulus = new double[functions];
  }

  /** Number of times an integrand has been evaluated since construction. */
  public int evaluations() {
    return evaluations;
  }

  /**
   * Adds the integral from a to b to {@code sum}.
   *
   * @param limit largest error accepted in any one panel, absolute
   * @throws ArithmeticException when halving {@value #DEEPEST} times or {@value #MOST_EVALUATIONS}
   *     evaluations do not reach the limit
   */
  public void add(Integrand integrand, double a, double b, double limit, double[] sum) {
    int last = evaluations + MOST_EVALUATIONS;
    int waiting = 0;
    double start = a;
    double end = b;
    int depth = 0;
    while (true) {
      if (worstError(integrand, start, end, limit) > limit) {
        if (depth == DEEPEST || evaluations > last) {
          throw new ArithmeticException(
              "quadrature did not reach an error of "
                  + limit
                  + " between "
                  + start
                  + " and "
                  + end);
        }
        depth++;
        pendingEnd[waiting] = end;
        pendingDepth[waiting++] = depth;
        end = 0.5 * (start + end);
        continue;
      }
      for (int i = 0; i < functions; i++) {
        sum[i] += kronrod[i];
      }
      if (waiting == 0) {
        return;
      }
      start = end;
      end = pendingEnd[--waiting];
      depth = pendingDepth[waiting];
    }
  }

  private double worstError(Integrand integrand, double a, double b, double limit) {
    double centre = 0.5 * (a + b);
    double half = 0.5 * (b - a);
    for (int i = 0; i < functions; i++) {
      kronrod[i] = 0;
      gauss[i] = 0;
      modulus[i] = 0;
    }
    for (int k = 0; k <= 10; k++) {
      accumulate(integrand, centre + half * NODES[k], KRONROD[k], GAUSS[k]);
      if (k < 10) {
        accumulate(integrand, centre - half * NODES[k], KRONROD[k], GAUSS[k]);
      }
    }
    double worst = 0;
    for (int i = 0; i < functions; i++) {
      double scale = half * modulus[i];
      double difference = half * Math.abs(kronrod[i] - gauss[i]);
      kronrod[i] *= half;
      if (!(difference <= Double.MAX_VALUE)) {
        throw new ArithmeticException("integrand is not finite between " + a + " and " + b);
      }
      if (difference > limit && difference > ROUNDING * scale) {
        // QUADPACK: the Kronrod sum errs by the 3/2 power of the relative difference.
        double error = difference * Math.min(1, Math.sqrt(200 * difference / scale));
        worst = Math.max(worst, error);
      }
    }
    return worst;
  }

  private void accumulate(Integrand integrand, double t, double weight, double gaussWeight) {
    integrand.evaluate(t, values);
    evaluations++;
    for (int i = 0; i < functions; i++) {
      kronrod[i] += weight * values[i];
      gauss[i] += gaussWeight * values[i];
      modulus[i] += weight * Math.abs(values[i]);
    }
  }
}
