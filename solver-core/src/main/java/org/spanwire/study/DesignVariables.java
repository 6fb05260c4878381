package org.spanwire.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import org.spanwire.design.Design;
import org.spanwire.unit.Quantity;

/**
 * What may be varied of a design, and the parameters that stand for its installations.
 *
 * @param design the design
 * @param all its variables, ranges first, then choices
 * @param over the installations
 */
record DesignVariables(Design design, List<MinimumSearch.Variable> all, ParameterGrid over) {

  /** Two designs whose variables differ by less than this share of every range are one. */
  private static final double SAME = 0.01;

  /** Part of a range within which an edge is met. */
  private static final double EDGE = 0.02;

  /** Largest part of every range that local models reach to either side. */
  private static final double MOST_REACH = 0.25;

  private static final int FEWEST_SCANNED = 24;

  static DesignVariables of(
      Design design,
      List<ParameterSample.Range> vary,
      List<ParameterGrid.Axis> choices,
      ParameterGrid over) {
    List<MinimumSearch.Variable> all = new ArrayList<>();
    for (ParameterSample.Range range : vary) {
      double from = range.from().value();
      double to = range.to().value();
      all.add(
          MinimumSearch.Variable.between(
              range.parameter(), Math.min(from, to), Math.max(from, to)));
    }
    for (ParameterGrid.Axis axis : choices) {
      all.add(
          MinimumSearch.Variable.oneOf(
              axis.parameter(), axis.values().stream().map(Quantity::value).toList()));
    }
    return new DesignVariables(design, List.copyOf(all), over);
  }

  Quantity quantity(String parameter, double value) {
    return new Quantity(value, design.parameters().get(parameter).value().dimension());
  }

  /** The values that the design has. */
  List<Double> nominal() {
    return all.stream().map(v -> design.parameters().get(v.name()).value().value()).toList();
  }

  /** A place, then an installation. */
  static double[] joined(List<Double> place, List<Double> installation) {
    return DoubleStream.concat(
            place.stream().mapToDouble(Double::doubleValue),
            installation.stream().mapToDouble(Double::doubleValue))
        .toArray();
  }

  /** Whether two places are next to each other. */
  boolean isSame(List<Double> one, List<Double> other) {
    for (int i = 0; i < all.size(); i++) {
      double width = all.get(i).high() - all.get(i).low();
      if (Math.abs(one.get(i) - other.get(i)) > SAME * width) {
        return false;
      }
    }
    return true;
  }

  /** The ranges of these variables, then those of the installations. */
  ParameterBox box() {
    List<ParameterSample.Range> ranges = new ArrayList<>();
    for (MinimumSearch.Variable each : all) {
      ranges.add(
          new ParameterSample.Range(
              each.name(), quantity(each.name(), each.low()), quantity(each.name(), each.high())));
    }
    Comparator<Quantity> byValue = Comparator.comparingDouble(Quantity::value);
    for (ParameterGrid.Axis axis : over.axes()) {
      ranges.add(
          new ParameterSample.Range(
              axis.parameter(),
              axis.values().stream().min(byValue).orElseThrow(),
              axis.values().stream().max(byValue).orElseThrow()));
    }
    return new ParameterBox(design, ranges);
  }

  /** A part of every range around a place; choices that move the antenna stay as they are. */
  DesignVariables around(List<Double> centre) {
    List<Integer> moving = box().ofAntenna(design.bands().get(0).lowHz());
    long free = all.stream().filter(each -> !each.isDiscrete()).count();
    double share = Math.min(MOST_REACH, 0.7 * Math.pow(FEWEST_SCANNED, -1.0 / Math.max(1, free)));
    List<MinimumSearch.Variable> part = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      MinimumSearch.Variable each = all.get(i);
      if (each.isDiscrete()) {
        part.add(
            moving.contains(i)
                ? MinimumSearch.Variable.oneOf(each.name(), List.of(centre.get(i)))
                : each);
        continue;
      }
      double reach = (moving.contains(i) ? share : 1) * (each.high() - each.low());
      part.add(
          MinimumSearch.Variable.between(
              each.name(),
              Math.max(each.low(), centre.get(i) - reach),
              Math.min(each.high(), centre.get(i) + reach)));
    }
    return new DesignVariables(design, List.copyOf(part), over);
  }

  /** Whether a place of this part lies at an edge that is no edge of the whole. */
  boolean isAtEdge(List<Double> place, DesignVariables whole) {
    for (int i = 0; i < all.size(); i++) {
      MinimumSearch.Variable part = all.get(i);
      double margin = EDGE * (part.high() - part.low());
      boolean low = place.get(i) <= part.low() + margin && part.low() > whole.all.get(i).low();
      boolean high = place.get(i) >= part.high() - margin && part.high() < whole.all.get(i).high();
      if (!part.isDiscrete() && (low || high)) {
        return true;
      }
    }
    return false;
  }

  /** Whether a place lies in this part, in its inner half of every range that is cut. */
  boolean holds(List<Double> place, DesignVariables whole) {
    for (int i = 0; i < all.size(); i++) {
      MinimumSearch.Variable part = all.get(i);
      double at = place.get(i);
      double quarter = (part.high() - part.low()) / 4;
      double low = part.low() > whole.all.get(i).low() ? part.low() + quarter : part.low();
      double high = part.high() < whole.all.get(i).high() ? part.high() - quarter : part.high();
      if (part.isDiscrete() ? !part.values().contains(at) : at < low || at > high) {
        return false;
      }
    }
    return true;
  }
}
