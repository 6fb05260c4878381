package org.spanwire.study;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.result.Direction;
import org.spanwire.result.PeakGain;

/**
 * What a sweep gives at every point.
 *
 * @param feed name of the feed that impedance and SWR are those of
 * @param plane where along the feed chain; it must have that plane
 * @param quantities in the order of the columns
 * @param elevationsDegrees elevations to give the gain at besides
 * @param azimuthsDegrees azimuths for every elevation; none for the largest gain over azimuth
 */
public record SweepRequest(
    String feed,
    Plane plane,
    List<SweepQuantity> quantities,
    List<Double> elevationsDegrees,
    List<Double> azimuthsDegrees) {

  /** Takes copies. */
  public SweepRequest {
    Objects.requireNonNull(feed, "feed");
    Objects.requireNonNull(plane, "plane");
    quantities = List.copyOf(quantities);
    elevationsDegrees = List.copyOf(elevationsDegrees);
    azimuthsDegrees = List.copyOf(azimuthsDegrees);
  }

  /** Names of the columns of {@link #values}, with units. */
  public List<String> columns() {
    List<String> columns = new ArrayList<>();
    quantities.forEach(quantity -> columns.addAll(quantity.columns()));
    for (double elevation : elevationsDegrees) {
      String name = "gain_elevation_" + plain(elevation) + "_deg";
      if (azimuthsDegrees.isEmpty()) {
        columns.add(name + "_dbi");
      }
      azimuthsDegrees.forEach(a -> columns.add(name + "_azimuth_" + plain(a) + "_deg_dbi"));
    }
    return columns;
  }

  private static String plain(double degrees) {
    return BigDecimal.valueOf(degrees).stripTrailingZeros().toPlainString();
  }

  /**
   * The values of a solved installation in the order of {@link #columns}; NaN where a direction is
   * undefined, infinite for an open circuit or total reflection.
   */
  List<Double> values(Operation operation) {
    Solution solution = operation.solution();
    SolvedFeed solved = operation.feed(feed);
    List<Double> values = new ArrayList<>();
    for (SweepQuantity quantity : quantities) {
      values.addAll(quantity.needsField() ? values(quantity, solution) : values(quantity, solved));
    }
    for (double elevation : elevationsDegrees) {
      if (azimuthsDegrees.isEmpty()) {
        values.add(solution.gainAtElevation(elevation).gainDbi());
      }
      for (double azimuth : azimuthsDegrees) {
        values.add(solution.gainDbi(new Direction(elevation, azimuth)));
      }
    }
    return values;
  }

  /** Whether more than the feedpoint's impedance is asked for. */
  boolean needsField() {
    return !elevationsDegrees.isEmpty() || quantities.stream().anyMatch(SweepQuantity::needsField);
  }

  /** The same for a feed alone, if {@link #needsField} does not hold. */
  List<Double> values(SolvedFeed solved) {
    List<Double> values = new ArrayList<>();
    quantities.forEach(quantity -> values.addAll(values(quantity, solved)));
    return values;
  }

  private List<Double> values(SweepQuantity quantity, SolvedFeed solved) {
    return switch (quantity) {
      case IMPEDANCE -> {
        Complex z = solved.at(plane).impedance();
        yield List.of(z.getReal(), z.isInfinite() ? Double.NaN : z.getImaginary());
      }
      case IMPEDANCE_ERROR -> List.of(solved.errorOhm());
      case SWR -> List.of(solved.at(plane).swr());
      case RETURN_LOSS -> List.of(solved.at(plane).returnLossDb());
      case MISMATCH_LOSS -> List.of(solved.at(plane).mismatchLossDb());
      case GAIN, EFFICIENCY, UNKNOWNS -> throw new IllegalArgumentException(quantity.label());
    };
  }

  private static List<Double> values(SweepQuantity quantity, Solution solution) {
    return switch (quantity) {
      case GAIN -> {
        PeakGain peak = solution.peakGain();
        yield List.of(
            peak.gainDbi(),
            peak.elevationDegrees().orElse(Double.NaN),
            peak.azimuthDegrees().orElse(Double.NaN));
      }
      case EFFICIENCY -> List.of(solution.radiationEfficiency());
      case UNKNOWNS -> List.of((double) solution.unknowns());
      case IMPEDANCE, IMPEDANCE_ERROR, SWR, RETURN_LOSS, MISMATCH_LOSS ->
          throw new IllegalArgumentException(quantity.label());
    };
  }
}
