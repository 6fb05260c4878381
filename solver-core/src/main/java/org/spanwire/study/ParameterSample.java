package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.spanwire.unit.Quantity;

/**
 * A space-filling sample of a box: the Sobol sequence without its first point, which is the corner
 * of the box (I. M. Sobol, USSR Comput. Math. Math. Phys. 7, 86, 1967; direction numbers of S. Joe
 * and F. Y. Kuo, SIAM J. Sci. Comput. 30, 2635, 2008). A longer sample begins with the shorter one.
 */
public final class ParameterSample implements ParameterSpace {

  private final List<Range> ranges;
  private final double[][] shares;

  /**
   * The range of one parameter.
   *
   * @param parameter its name
   * @param from value at one end
   * @param to value at the other end, of the same dimension
   */
  public record Range(String parameter, Quantity from, Quantity to) {

    /** Checks the dimensions. */
    public Range {
      Objects.requireNonNull(parameter, "parameter");
      to.in(from.dimension());
    }

    private Quantity at(double share) {
      return new Quantity(from.value() * (1 - share) + to.value() * share, from.dimension());
    }
  }

  /**
   * A sample.
   *
   * @param ranges at least one, each of another parameter
   * @param count number of places, at least 1
   */
  public ParameterSample(List<Range> ranges, int count) {
    this.ranges = List.copyOf(ranges);
    if (ranges.isEmpty() || count < 1) {
      throw new IllegalArgumentException("a sample needs a range and at least one place");
    }
    if (parameters().stream().distinct().count() < ranges.size()) {
      throw new IllegalArgumentException("a parameter is varied twice; vary each one once");
    }
    SobolSequenceGenerator sequence = new SobolSequenceGenerator(ranges.size());
    sequence.nextVector();
    shares = new double[count][];
    for (int i = 0; i < count; i++) {
      shares[i] = sequence.nextVector();
    }
  }

  @Override
  public List<String> parameters() {
    return ranges.stream().map(Range::parameter).toList();
  }

  @Override
  public long count() {
    return shares.length;
  }

  @Override
  public List<Quantity> at(long place) {
    double[] share = shares[Math.toIntExact(place)];
    List<Quantity> values = new ArrayList<>();
    for (int i = 0; i < share.length; i++) {
      values.add(ranges.get(i).at(share[i]));
    }
    return values;
  }
}
