package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Variance;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.Parameter;
import org.spanwire.design.Requirement;
import org.spanwire.design.Spread;

/**
 * Draws installations from the spreads of a design's parameters and judges each by the design's
 * requirements, or without any by SWR of at most 2 and 3 on its bands. The installations are judged
 * on a polynomial through solutions over all spreads, whose error is measured and stated: shares
 * and percentiles depend on what is not linear. Slopes come from solutions alone, so that the
 * linear share is a second opinion.
 *
 * @param design with at least one spread, and with bands or requirements
 * @param samples number of installations, 1 to a million
 * @param seed draws another sample
 * @param accuracy wanted error of reflection coefficients, 1e-4 to 0.1
 */
public record YieldStudy(Design design, int samples, long seed, double accuracy) {

  /** Error of reflection coefficients unless another is asked for. */
  public static final double DEFAULT_ACCURACY = 3e-3;

  private static final int MOST_SAMPLES = 1_000_000;
  private static final int MOST_SOLVES = 3000;
  private static final int CHUNK = 32;
  private static final double CONFIDENCE = 0.95;

  /** Places at which a parameter is put while it varies alone. */
  private static final int ALONE = 40;

  /** Largest step of the slopes of solutions, in spreads. */
  private static final double REACH = 0.05;

  /** Step of the central differences on the polynomial, in spreads. */
  private static final double STEP = 1e-3;

  /** Checks what can be checked without solving. */
  public YieldStudy {
    if (samples < 1 || samples > MOST_SAMPLES) {
      throw new IllegalArgumentException(
          "samples " + samples + " must lie between 1 and " + MOST_SAMPLES);
    }
    if (!(accuracy >= 1e-4 && accuracy <= 0.1)) {
      throw new IllegalArgumentException("accuracy " + accuracy + " must lie between 1e-4 and 0.1");
    }
    if (new SpreadSample(design).parameters().isEmpty()) {
      throw new IllegalArgumentException(
          "no parameter has a spread; add one such as height: {value: 9 m, spread: 2 m}");
    }
    if (design.bands().isEmpty() && design.requirements().isEmpty()) {
      throw new IllegalArgumentException(
          "neither bands nor requirements; add bands: {plan: iaru-region-1, use: [40 m, 20 m]}");
    }
  }

  /**
   * Runs the study on several threads; the result does not depend on their number.
   *
   * @throws org.spanwire.design.DesignException if the design is faulty within the spreads
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled within them
   */
  public YieldResult run(Solver solver, int threads) {
    SpreadSample sample = new SpreadSample(design);
    Criterion.Set criteria = Criterion.Set.of(design);
    ParameterBox box = new ParameterBox(design, sample.ranges());
    PortModel model =
        PortModel.of(
            new PortModel.Request(
                box, criteria.ranges(), criteria.decibels(), accuracy, MOST_SOLVES),
            solver,
            threads);
    Map<Criterion, DistanceModel> distances = new LinkedHashMap<>();
    for (Criterion each : criteria.all()) {
      if (each.requirement() instanceof Requirement.MaximumExposureDistance requirement) {
        distances.put(each, DistanceModel.of(box, requirement, solver, threads));
      }
    }
    try (Workers workers = new Workers(threads)) {
      return new Judged(sample, criteria, model, distances, solver, workers).result();
    }
  }

  /**
   * What an installation came to.
   *
   * @param values those of the criteria
   * @param undecided whether a model's error could decide about them
   * @param swr along the envelopes
   */
  private record Row(double[] values, boolean[] undecided, double[] swr) {}

  /** All installations on a model. */
  private final class Judged {
    private final SpreadSample sample;
    private final Criterion.Set criteria;
    private final PortModel model;
    private final Map<Criterion, DistanceModel> distances;
    private final List<Row> rows;
    private final PortModel.Place place;
    private final Row nominal;
    private final Tangent tangent;

    Judged(
        SpreadSample sample,
        Criterion.Set criteria,
        PortModel model,
        Map<Criterion, DistanceModel> distances,
        Solver solver,
        Workers workers) {
      this.sample = sample;
      this.criteria = criteria;
      this.model = model;
      this.distances = distances;
      List<double[]> places = sample.rows(samples, seed);
      List<Callable<List<Row>>> tasks = new ArrayList<>();
      for (int first = 0; first < samples; first += CHUNK) {
        List<double[]> chunk = places.subList(first, Math.min(samples, first + CHUNK));
        tasks.add(() -> chunk.stream().map(this::row).toList());
      }
      rows = new ArrayList<>();
      workers.run(tasks).forEach(rows::addAll);
      place = model.at(sample.nominal());
      nominal = row(sample.nominal());
      tangent = tangent(solver);
      tangent.prepare(
          criteria.all().stream()
              .filter(Criterion::isOfPorts)
              .map(each -> each.worstFrequency(model, place))
              .toList(),
          workers);
    }

    private Tangent tangent(Solver solver) {
      double[] reach =
          sample.parameters().stream().mapToDouble(p -> REACH * SpreadSample.unit(p)).toArray();
      ParameterBox box = new ParameterBox(design, sample.ranges());
      return new Tangent(box, sample.nominal(), reach, solver);
    }

    private Row row(double[] parameters) {
      PortModel.Place place = model.at(parameters);
      double[] swr =
          IntStream.range(0, design.bands().size())
              .boxed()
              .flatMapToDouble(
                  band ->
                      Arrays.stream(model.frequencies(band))
                          .map(f -> place.swr(band, f, Plane.TRANSMITTER)))
              .toArray();
      double[] values = values(parameters, place);
      boolean[] undecided = new boolean[values.length];
      for (int i = 0; i < values.length; i++) {
        undecided[i] = undecided(criteria.all().get(i), values[i], place);
      }
      return new Row(values, undecided, swr);
    }

    private boolean undecided(Criterion criterion, double value, PortModel.Place place) {
      return distances.containsKey(criterion)
          ? Math.abs(value - criterion.limit()) <= distances.get(criterion).error()
          : criterion.undecided(value, model, place, model.error());
    }

    private double[] values(double[] parameters) {
      return values(parameters, model.at(parameters));
    }

    private double[] values(double[] parameters, PortModel.Place place) {
      return criteria.all().stream()
          .mapToDouble(
              each ->
                  distances.containsKey(each)
                      ? distances.get(each).at(parameters)
                      : each.value(model, place))
          .toArray();
    }

    YieldResult result() {
      List<List<YieldResult.Influence>> influences = influences();
      List<YieldResult.Outcome> outcomes = new ArrayList<>();
      for (int i = 0; i < criteria.all().size(); i++) {
        outcomes.add(outcome(i, influences.get(i)));
      }
      long all =
          rows.stream()
              .filter(
                  row ->
                      IntStream.range(0, criteria.all().size())
                          .allMatch(i -> criteria.all().get(i).met(row.values[i])))
              .count();
      return new YieldResult(
          sample.parameters(),
          samples,
          outcomes,
          share(all),
          envelopes(),
          model.solves()
              + tangent.solves()
              + distances.values().stream().mapToInt(DistanceModel::solves).sum(),
          model.error(),
          distances.values().stream().mapToDouble(DistanceModel::error).max());
    }

    private YieldResult.Outcome outcome(int i, List<YieldResult.Influence> influences) {
      Criterion criterion = criteria.all().get(i);
      double[] values = rows.stream().mapToDouble(row -> row.values[i]).toArray();
      long met = Arrays.stream(values).filter(criterion::met).count();
      long close = rows.stream().filter(row -> row.undecided[i]).count();
      return new YieldResult.Outcome(
          criterion.requirement(),
          share(met),
          (double) close / samples,
          linearShare(criterion, nominal.values[i], influences),
          nominal.values[i],
          percentiles(values),
          influences);
    }

    private YieldResult.Share share(long met) {
      ConfidenceInterval interval =
          new WilsonScoreInterval().createInterval(samples, (int) met, CONFIDENCE);
      double value = (double) met / samples;
      return new YieldResult.Share(
          value,
          Math.min(value, Math.max(0, interval.getLowerBound())),
          Math.max(value, Math.min(1, interval.getUpperBound())));
    }

    /** Slopes times the parameters' standard deviations, added as variances. */
    private double linearShare(
        Criterion criterion, double value, List<YieldResult.Influence> influences) {
      double variance = 0;
      for (int j = 0; j < influences.size(); j++) {
        boolean uniform =
            sample.parameters().get(j).spread().orElseThrow() instanceof Spread.Uniform;
        double step = influences.get(j).perSpread();
        variance += step * step / (uniform ? 3 : 1);
      }
      double margin = criterion.atLeast() ? value - criterion.limit() : criterion.limit() - value;
      if (!(variance > 0) || !Double.isFinite(margin)) {
        return margin >= 0 ? 1 : 0;
      }
      return new NormalDistribution().cumulativeProbability(margin / Math.sqrt(variance));
    }

    /** For every criterion what each parameter does to it. */
    private List<List<YieldResult.Influence>> influences() {
      int count = criteria.all().size();
      List<Parameter> parameters = sample.parameters();
      double[][] slopes = new double[parameters.size()][];
      double[][] variances = new double[parameters.size()][];
      for (int j = 0; j < parameters.size(); j++) {
        slopes[j] = slopes(j);
        variances[j] = variancesAlone(j);
      }
      List<List<YieldResult.Influence>> influences = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        double sum = 0;
        for (double[] variance : variances) {
          sum += variance[i];
        }
        List<YieldResult.Influence> here = new ArrayList<>();
        for (int j = 0; j < parameters.size(); j++) {
          here.add(
              new YieldResult.Influence(
                  parameters.get(j).name(), slopes[j][i], sum > 0 ? variances[j][i] / sum : 0));
        }
        influences.add(here);
      }
      return influences;
    }

    /**
     * Slopes per spread: of SWR and heat from one solution at the frequency where the nominal
     * installation is worst, which stays the worst in first order. Gains, widths and distances are
     * no matter of the ports at one frequency, and what a bend or a joint keeps from moving
     * smoothly has no slope there: these are read off the polynomials.
     */
    private double[] slopes(int j) {
      Parameter parameter = sample.parameters().get(j);
      double unit = SpreadSample.unit(parameter);
      double[] slopes = new double[criteria.all().size()];
      double[] rough = null;
      for (int i = 0; i < slopes.length; i++) {
        Criterion criterion = criteria.all().get(i);
        Optional<Double> slope =
            criterion.isOfPorts()
                ? tangent.slope(criterion::at, criterion.worstFrequency(model, place), j)
                : Optional.empty();
        if (slope.isEmpty() && rough == null) {
          rough = slopesOfModel(j, parameter);
        }
        slopes[i] = slope.isPresent() ? slope.get() * unit : rough[i];
      }
      return slopes;
    }

    /** To one side only where the other is beyond the parameter's limits. */
    private double[] slopesOfModel(int j, Parameter parameter) {
      double unit = SpreadSample.unit(parameter);
      double[] up = sample.nominal();
      double[] down = sample.nominal();
      up[j] = parameter.nearestAllowed(up[j] + STEP * unit);
      down[j] = parameter.nearestAllowed(down[j] - STEP * unit);
      double spreads = (up[j] - down[j]) / unit;
      double[] above = values(up);
      double[] below = values(down);
      double[] slopes = new double[above.length];
      for (int i = 0; i < slopes.length; i++) {
        slopes[i] = (above[i] - below[i]) / spreads;
      }
      return slopes;
    }

    private double[] variancesAlone(int j) {
      double[][] values = new double[criteria.all().size()][ALONE];
      for (int n = 0; n < ALONE; n++) {
        double[] place = sample.nominal();
        place[j] = sample.quantile(j, (n + 0.5) / ALONE);
        double[] found = values(place);
        for (int i = 0; i < found.length; i++) {
          values[i][n] = found[i];
        }
      }
      return Arrays.stream(values).mapToDouble(each -> new Variance().evaluate(each)).toArray();
    }

    private List<YieldResult.Envelope> envelopes() {
      List<YieldResult.Envelope> envelopes = new ArrayList<>();
      int at = 0;
      for (int band = 0; band < design.bands().size(); band++) {
        List<YieldResult.Point> points = new ArrayList<>();
        for (double frequency : model.frequencies(band)) {
          int column = at++;
          double[] swr = rows.stream().mapToDouble(row -> row.swr[column]).toArray();
          points.add(new YieldResult.Point(frequency, percentiles(swr)));
        }
        envelopes.add(new YieldResult.Envelope(design.bands().get(band).name(), points));
      }
      return envelopes;
    }

    private YieldResult.Percentiles percentiles(double[] values) {
      double[] sorted = values.clone();
      Arrays.sort(sorted);
      return new YieldResult.Percentiles(rank(sorted, 0.1), rank(sorted, 0.5), rank(sorted, 0.9));
    }

    /** Nearest rank: a value that occurred. */
    private static double rank(double[] sorted, double share) {
      return sorted[Math.max(0, (int) Math.ceil(share * sorted.length) - 1)];
    }
  }
}
