package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;

/**
 * What a design is judged by while it is optimised, from the worst values of its goals followed by
 * those of its limits.
 *
 * @param goals what is wanted, at least one
 * @param limits what must be kept
 */
record OptimizeCost(List<OptimizeStudy.Weighted> goals, List<OptimizeStudy.Limit> limits) {

  /** Cost of a design that breaks a limit, above that of any that does not. */
  static final double INFEASIBLE = 1e6;

  /** Cost of a design that cannot be built. */
  static final double IMPOSSIBLE = 2 * INFEASIBLE;

  /** Share of the other goals where the one that lags behind decides. */
  private static final double AUGMENTED = 1e-3;

  List<Goal> wanted() {
    return goals.stream().map(OptimizeStudy.Weighted::goal).toList();
  }

  /** The goals, then the quantities that have limits. */
  List<Goal> all() {
    List<Goal> all = new ArrayList<>(wanted());
    limits.forEach(each -> all.add(each.goal()));
    return all;
  }

  boolean needsChoke() {
    return all().stream().anyMatch(goal -> goal.measure() == Goal.Measure.CHOKE_WATTS);
  }

  /** Whether the goals stand beside each other and trade off. */
  boolean tradesOff() {
    return goals.size() > 1 && goals.stream().allMatch(each -> each.weight().isEmpty());
  }

  /** The first goal or the weighted sum; above {@link #INFEASIBLE} if a limit is broken. */
  double of(double[] worst) {
    double broken = broken(worst);
    if (broken > 0) {
      return INFEASIBLE + broken;
    }
    double sum = 0;
    for (int i = 0; i < goals.size(); i++) {
      boolean first = i == 0 && goals.get(i).weight().isEmpty();
      double weight = first ? 1 : goals.get(i).weight().orElse(0);
      sum += weight * goals.get(i).goal().cost(worst[i]);
    }
    return sum;
  }

  private double broken(double[] worst) {
    double broken = 0;
    for (int i = 0; i < limits.size(); i++) {
      Goal goal = limits.get(i).goal();
      double excess = goal.cost(worst[goals.size() + i]) - goal.cost(limits.get(i).value());
      broken += Math.max(0, excess);
    }
    return broken;
  }

  /**
   * How far a design lags behind a reference in the goal in which it lags most, in units of the
   * goals' scales; negative if it is better in all (achievement function: A. P. Wierzbicki, Lecture
   * Notes in Economics and Mathematical Systems 177, 468, 1980; page from memory). Its minimum lies
   * on the trade-off front, wherever the reference does.
   */
  double behind(double[] worst, double[] reference, double[] scales) {
    double broken = broken(worst);
    if (broken > 0) {
      return INFEASIBLE + broken;
    }
    double most = Double.NEGATIVE_INFINITY;
    double sum = 0;
    for (int i = 0; i < goals.size(); i++) {
      Goal goal = goals.get(i).goal();
      double lag = (goal.cost(worst[i]) - goal.cost(reference[i])) / scales[i];
      most = Math.max(most, lag);
      sum += lag;
    }
    return most + AUGMENTED * sum;
  }
}
