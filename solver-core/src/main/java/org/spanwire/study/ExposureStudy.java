package org.spanwire.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import org.spanwire.Solver;
import org.spanwire.circuit.CircuitException;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.ExposureLimit;
import org.spanwire.design.ExposureRules;
import org.spanwire.design.Parameter;
import org.spanwire.design.Spread;
import org.spanwire.geometry.GeometryException;
import org.spanwire.practice.ExposureMap;
import org.spanwire.practice.ExposureSurvey;
import org.spanwire.practice.FieldStrength;
import org.spanwire.practice.KeepOut;
import org.spanwire.result.Warning;
import org.spanwire.unit.Quantity;

/**
 * How far people must keep away from an installation, band by band.
 *
 * <p>The transmitter delivers its stated power into the feed chain, as through a tuner; what the
 * chain loses on the way does not reach the antenna. The uncertainty of the fields is the root of
 * the sum of squares of what changes where the nominal distance ends when each parameter with a
 * spread goes to its ends (two sigma, within its limits), and of the accuracy of the computation.
 *
 * @param design the design
 * @param rules what exposure is judged by
 */
public record ExposureStudy(Design design, ExposureRules rules) {

  /** Name of the warning that the design states no spread. */
  public static final String NO_SPREADS = "no-spreads";

  /** Name of the warning that a spread leads to a design that cannot be modelled. */
  public static final String SPREAD_NOT_MODELLED = "spread-not-modelled";

  /** Accuracy of the map of fields, twice: where the distance ends and where it was looked for. */
  private static final double FIELD_ACCURACY = 2e-3;

  /** An installation with its solutions; with one parameter at an end of its spread, if named. */
  private record Solved(
      String parameter, Installation installation, InstallationFamily operations) {

    ExposureMap map(double frequencyHz) {
      Operation operation = operations.at(frequencyHz);
      return new ExposureMap(operation.solution(), installation.tunedWatts(operation));
    }
  }

  /** What one frequency gives. */
  private record AtFrequency(
      Map<String, Double> gapsMetres,
      double antennaWatts,
      double relativeError,
      List<BandExposure.Row> rows) {}

  /**
   * Runs the study.
   *
   * @param bands the bands, in the order of the results
   * @param threads number of threads; the results do not depend on it
   */
  public List<BandExposure> run(Solver solver, List<Band> bands, int threads) {
    List<Warning> doubts = new ArrayList<>();
    List<Double> frequencies = RatedFrequencies.of(bands);
    BiFunction<String, Design, Solved> solved =
        (parameter, changed) -> {
          Installation installation = Installation.of(changed);
          return new Solved(
              parameter,
              installation,
              new InstallationFamily(installation, solver, frequencies, threads));
        };
    Solved nominal = solved.apply("", design);
    List<Solved> variants = variants(solved, doubts);
    List<Callable<AtFrequency>> tasks = new ArrayList<>();
    for (Band band : bands) {
      for (double frequency : RatedFrequencies.of(band)) {
        tasks.add(() -> at(nominal, variants, frequency));
      }
    }
    List<AtFrequency> found;
    try (Workers workers = new Workers(threads)) {
      found = workers.run(tasks);
    }
    List<BandExposure> exposures = new ArrayList<>();
    int next = 0;
    for (Band band : bands) {
      int count = RatedFrequencies.of(band).size();
      exposures.add(gather(band, found.subList(next, next + count), doubts));
      next += count;
    }
    return exposures;
  }

  private static BandExposure gather(Band band, List<AtFrequency> solved, List<Warning> doubts) {
    List<BandExposure.Row> rows = new ArrayList<>();
    Comparator<BandExposure.Row> furthest =
        Comparator.<BandExposure.Row>comparingDouble(row -> row.keepOut().distance())
            .thenComparingDouble(row -> row.keepOut().exposure());
    for (BandExposure.Row row : solved.get(0).rows) {
      BandExposure.Row most = row;
      for (AtFrequency each : solved) {
        for (BandExposure.Row other : each.rows) {
          boolean same =
              other.keepOut().limit() == row.keepOut().limit()
                  && other.keepOut().floor() == row.keepOut().floor();
          most = same && furthest.compare(other, most) > 0 ? other : most;
        }
      }
      rows.add(most);
    }
    return new BandExposure(
        band.name(),
        solved.get(0).gapsMetres,
        solved.stream().mapToDouble(AtFrequency::antennaWatts).max().orElseThrow(),
        solved.stream().mapToDouble(AtFrequency::relativeError).max().orElseThrow(),
        rows,
        doubts);
  }

  /** Every parameter with a spread at both its ends. */
  private List<Solved> variants(BiFunction<String, Design, Solved> solved, List<Warning> doubts) {
    List<Solved> variants = new ArrayList<>();
    Set<String> missing = new LinkedHashSet<>();
    for (Parameter parameter : design.parameters().values()) {
      double reach = parameter.spread().map(ExposureStudy::reach).orElse(0.0);
      for (int sign = -1; sign <= 1 && reach > 0; sign += 2) {
        double end = parameter.nearestAllowed(parameter.value().value() + sign * reach);
        String value = Sweep.exact(new Quantity(end, parameter.value().dimension()));
        try {
          variants.add(solved.apply(parameter.name(), design.with(parameter.name(), value)));
        } catch (DesignException | GeometryException | CircuitException e) {
          missing.add(parameter.name());
        }
      }
    }
    if (!missing.isEmpty()) {
      doubts.add(
          new Warning(
              SPREAD_NOT_MODELLED,
              "an end of the spread of "
                  + String.join(", ", missing)
                  + " gives no antenna that can be modelled; the uncertainty leaves it out"));
    }
    if (variants.isEmpty()) {
      doubts.add(
          new Warning(
              NO_SPREADS,
              "no parameter has a spread: the uncertainty of distances is that of the computation"
                  + " alone; add spread: to height and soil"));
    }
    return variants;
  }

  private static double reach(Spread spread) {
    return spread instanceof Spread.Uniform uniform
        ? uniform.halfWidth().value()
        : 2 * ((Spread.Normal) spread).sigma().value();
  }

  private AtFrequency at(Solved antenna, List<Solved> variants, double frequencyHz) {
    Operation operation = antenna.operations.at(frequencyHz);
    ExposureMap map = antenna.map(frequencyHz);
    List<ExposureLimit> limits =
        rules.limits().stream().filter(limit -> limit.covers(frequencyHz)).toList();
    double error = operation.feeds().get(0).relativeError();
    List<BandExposure.Row> rows = new ArrayList<>();
    List<ExposureMap> moved = variants.stream().map(each -> each.map(frequencyHz)).toList();
    for (double floor : rules.floors()) {
      ExposureSurvey survey = map.survey(limits, rules.duty(), floor);
      for (ExposureLimit limit : limits) {
        FieldStrength decisive = survey.keepOut(limit, 0).decisive();
        double uncertainty = uncertainty(survey, limit, decisive, variants, moved, error);
        KeepOut keepOut = survey.keepOut(limit, uncertainty);
        rows.add(new BandExposure.Row(keepOut, map.screen(limit, rules.duty())));
      }
    }
    Map<String, Double> gaps =
        operation.feeds().stream()
            .collect(Collectors.toMap(SolvedFeed::name, SolvedFeed::gapMetres));
    return new AtFrequency(gaps, antenna.installation.tunedWatts(operation), error, rows);
  }

  /** Of the field strengths that decide. Of a parameter's two ends the larger change counts. */
  private static double uncertainty(
      ExposureSurvey survey,
      ExposureLimit limit,
      FieldStrength decisive,
      List<Solved> variants,
      List<ExposureMap> moved,
      double error) {
    double squares = Math.pow(FIELD_ACCURACY + error, 2);
    double nominal = Math.sqrt(survey.exposure(limit, decisive));
    for (int i = 0; i < variants.size(); i++) {
      double change = change(survey, limit, decisive, moved.get(i), nominal);
      boolean paired =
          i + 1 < variants.size()
              && variants.get(i + 1).parameter.equals(variants.get(i).parameter);
      if (paired) {
        i++;
        change = Math.max(change, change(survey, limit, decisive, moved.get(i), nominal));
      }
      squares += change * change;
    }
    return Math.sqrt(squares);
  }

  private static double change(
      ExposureSurvey survey,
      ExposureLimit limit,
      FieldStrength decisive,
      ExposureMap moved,
      double nominal) {
    double there = Math.sqrt(survey.exposure(limit, moved.at(decisive.place())));
    return Math.abs(there / nominal - 1);
  }
}
