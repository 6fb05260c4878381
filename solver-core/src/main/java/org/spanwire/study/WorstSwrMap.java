package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.spanwire.Solver;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.Parameter;
import org.spanwire.unit.Quantity;

/**
 * Worst SWR at the transmitter over the bands of a design, against two of its parameters. It is
 * looked for at evenly spaced frequencies of each band, both edges included.
 *
 * @param across the parameter drawn across
 * @param up the parameter drawn upwards
 * @param bands the bands
 * @param pointsPerBand frequencies looked at in each band
 * @param worst SWR by up, across and band; NaN where the design cannot be solved
 */
public record WorstSwrMap(
    ParameterGrid.Axis across,
    ParameterGrid.Axis up,
    List<Band> bands,
    int pointsPerBand,
    List<Double> worst) {

  /** Range without stated limits: this share of the nominal value to both sides. */
  private static final double RANGE = 0.4;

  /** Takes copies. */
  public WorstSwrMap {
    bands = List.copyOf(bands);
    worst = List.copyOf(worst);
  }

  /**
   * Values of a parameter over its limits, or over 0.6 to 1.4 times its value without them, its
   * nominal value among them.
   *
   * @param perSide number of values on either side of the nominal one, where there is room
   */
  public static ParameterGrid.Axis axis(Parameter parameter, int perSide) {
    Quantity nominal = parameter.value();
    double away = RANGE * Math.abs(nominal.value());
    double low = parameter.limits().map(l -> l.low().value()).orElse(nominal.value() - away);
    double high = parameter.limits().map(l -> l.high().value()).orElse(nominal.value() + away);
    List<Quantity> values = new ArrayList<>();
    for (int i = 0; i < perSide && low < nominal.value(); i++) {
      double share = (double) i / perSide;
      values.add(new Quantity(low * (1 - share) + nominal.value() * share, nominal.dimension()));
    }
    values.add(nominal);
    for (int i = 1; i <= perSide && high > nominal.value(); i++) {
      double share = (double) i / perSide;
      values.add(new Quantity(nominal.value() * (1 - share) + high * share, nominal.dimension()));
    }
    return new ParameterGrid.Axis(parameter.name(), values);
  }

  /**
   * Computes a map on several threads; it does not depend on their number.
   *
   * @param design a design with bands and a feed, the first of which is looked at
   * @param pointsPerBand frequencies to look at in each band, at least 2
   */
  public static WorstSwrMap of(
      Design design,
      ParameterGrid.Axis across,
      ParameterGrid.Axis up,
      int pointsPerBand,
      Solver solver,
      int threads) {
    List<Double> frequencies = new ArrayList<>();
    for (Band band : design.bands()) {
      for (int i = 0; i < pointsPerBand; i++) {
        double share = (double) i / (pointsPerBand - 1);
        frequencies.add(band.lowHz() * (1 - share) + band.highHz() * share);
      }
    }
    String feed = design.antenna().feeds().get(0).name();
    Sweep sweep =
        new Sweep(
            design,
            new ParameterGrid(List.of(up, across)),
            frequencies,
            new SweepRequest(
                feed, Plane.TRANSMITTER, List.of(SweepQuantity.SWR), List.of(), List.of()));
    List<SweepRow> rows = new ArrayList<>();
    sweep.run(SweepPlan.shared(sweep, solver), sweep.rows(), threads, rows::add);
    Double[] worst = new Double[rows.size() / pointsPerBand];
    Arrays.fill(worst, 1.0);
    for (int row = 0; row < rows.size(); row++) {
      double swr = rows.get(row).values().isEmpty() ? Double.NaN : rows.get(row).values().get(0);
      worst[row / pointsPerBand] = Math.max(worst[row / pointsPerBand], swr);
    }
    return new WorstSwrMap(across, up, design.bands(), pointsPerBand, List.of(worst));
  }

  /**
   * Worst SWR over a band.
   *
   * @param i index of the value across
   * @param j index of the value upwards
   * @return empty where the design cannot be solved
   */
  public OptionalDouble worst(int i, int j, int band) {
    double value = worst.get((j * across.values().size() + i) * bands.size() + band);
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** Worst SWR over all bands. */
  public OptionalDouble worst(int i, int j) {
    double worst = 1;
    for (int band = 0; band < bands.size(); band++) {
      OptionalDouble value = worst(i, j, band);
      if (value.isEmpty()) {
        return value;
      }
      worst = Math.max(worst, value.getAsDouble());
    }
    return OptionalDouble.of(worst);
  }
}
