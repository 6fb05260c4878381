package org.spanwire.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.spanwire.Antenna;
import org.spanwire.design.Design;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.unit.Quantity;

/**
 * Ranges of a design's parameters.
 *
 * @param base the design; parameters without a range keep their values
 * @param ranges the ranges, perhaps none
 */
record ParameterBox(Design base, List<ParameterSample.Range> ranges) {

  /** Takes a copy. */
  ParameterBox {
    ranges = List.copyOf(ranges);
  }

  /** The same ranges, the first of them led on to a place that may lie outside. */
  ParameterBox reaching(List<Double> place) {
    List<ParameterSample.Range> wider = new ArrayList<>(ranges);
    for (int i = 0; i < place.size(); i++) {
      ParameterSample.Range range = ranges.get(i);
      wider.set(
          i,
          new ParameterSample.Range(
              range.parameter(),
              new Quantity(Math.min(low(i), place.get(i)), range.from().dimension()),
              new Quantity(Math.max(high(i), place.get(i)), range.to().dimension())));
    }
    return new ParameterBox(base, wider);
  }

  int size() {
    return ranges.size();
  }

  double low(int i) {
    return Math.min(ranges.get(i).from().value(), ranges.get(i).to().value());
  }

  double high(int i) {
    return Math.max(ranges.get(i).from().value(), ranges.get(i).to().value());
  }

  double middle(int i) {
    return low(i) + (high(i) - low(i)) / 2;
  }

  double[] middle() {
    double[] middle = new double[size()];
    for (int i = 0; i < middle.length; i++) {
      middle[i] = middle(i);
    }
    return middle;
  }

  /** A value from −1 at the low end to 1 at the high end. */
  double value(int i, double unit) {
    return Math.max(low(i), Math.min(high(i), middle(i) + unit * (high(i) - low(i)) / 2));
  }

  /** The inverse of {@link #value}; 0 where the range is one value. */
  double unit(int i, double value) {
    return high(i) > low(i) ? (value - middle(i)) * 2 / (high(i) - low(i)) : 0;
  }

  /**
   * The design with values in SI units, in the order of the ranges.
   *
   * @throws org.spanwire.design.DesignException if the design is faulty with those values
   */
  Design with(double... values) {
    if (values.length == 0) {
      return base;
    }
    Map<String, String> quantities = new LinkedHashMap<>();
    for (int i = 0; i < values.length; i++) {
      ParameterSample.Range range = ranges.get(i);
      quantities.put(range.parameter(), text(new Quantity(values[i], range.from().dimension())));
    }
    return base.with(quantities);
  }

  /** A text that reads back to the same number. */
  static String text(Quantity quantity) {
    return quantity.value() + " " + quantity.dimension().symbol();
  }

  /** The ranges that move the antenna without what is across its feed, by their index. */
  List<Integer> ofAntenna(double frequencyHz) {
    return influencing((a, b) -> sameAntenna(modelled(a), modelled(b), frequencyHz));
  }

  /** The ranges that move the feed chain or its references, by their index. */
  List<Integer> ofChain(double frequencyHz) {
    return influencing(
        (a, b) ->
            Installation.of(a)
                .chainSignature(frequencyHz)
                .equals(Installation.of(b).chainSignature(frequencyHz)));
  }

  /** The antenna that is solved: with the outside of the feed line, if the design has its route. */
  static Antenna modelled(Design design) {
    return design
        .feedLine()
        .map(line -> SplitAntenna.of(design.antenna(), line).antenna())
        .orElse(design.antenna());
  }

  @FunctionalInterface
  private interface Same {
    boolean test(Design a, Design b);
  }

  private List<Integer> influencing(Same same) {
    List<Integer> found = new ArrayList<>();
    Design middle = with(middle());
    for (int i = 0; i < size(); i++) {
      for (double end : new double[] {low(i), high(i)}) {
        double[] values = middle();
        values[i] = end;
        if (!same.test(middle, with(values))) {
          found.add(i);
          break;
        }
      }
    }
    return found;
  }

  private static boolean sameAntenna(Antenna a, Antenna b, double frequencyHz) {
    if (!a.wires().equals(b.wires())
        || !bare(a.feeds()).equals(bare(b.feeds()))
        || !a.ground().equals(b.ground())
        || a.fittings().size() != b.fittings().size()) {
      return false;
    }
    for (int i = 0; i < a.fittings().size(); i++) {
      Fitting one = a.fittings().get(i);
      Fitting other = b.fittings().get(i);
      if (!one.wire().equals(other.wire())
          || !one.at().equals(other.at())
          || !one.gap().equals(other.gap())
          || !same(one.impedance(), other.impedance(), frequencyHz)) {
        return false;
      }
    }
    return true;
  }

  private static List<Feed> bare(List<Feed> feeds) {
    return feeds.stream().map(feed -> feed.withCapacitance(0)).toList();
  }

  /** Lumped impedances are functions: compared at the frequency. */
  private static boolean same(LumpedImpedance one, LumpedImpedance other, double frequencyHz) {
    return one.at(frequencyHz).equals(other.at(frequencyHz));
  }
}
