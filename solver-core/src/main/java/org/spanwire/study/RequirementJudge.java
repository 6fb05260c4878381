package org.spanwire.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.spanwire.Solver;
import org.spanwire.design.Requirement;
import org.spanwire.result.Warning;
import org.spanwire.study.CheckedRequirement.Outcome;

/**
 * Judges requirements at the tolerance of one solver.
 *
 * @param installation what is judged, at its first feed
 * @param solver its tolerance is that of the curves over bands too
 */
record RequirementJudge(Installation installation, Solver solver) {

  /** Error accepted between the points of a band, over the solver's tolerance. */
  private static final double CURVE_SHARE = 0.5;

  private Gauge gauge(Requirement requirement) {
    return Gauge.of(requirement, installation.antenna().feeds().get(0).name());
  }

  BandScan scan(FrequencyRange range, List<Requirement> requirements, Workers workers) {
    return BandScan.of(
        range,
        frequency -> installation.solve(solver, frequency),
        requirements.stream().map(this::gauge).toList(),
        CURVE_SHARE * solver.options().tolerance(),
        workers);
  }

  CheckedRequirement at(Requirement requirement, Operation operation) {
    return checked(requirement, operation, 0);
  }

  CheckedRequirement over(Requirement requirement, BandScan scan) {
    Gauge gauge = gauge(requirement);
    if (requirement instanceof Requirement.MinimumBandwidth bandwidth) {
      return width(bandwidth, gauge, scan);
    }
    ReflectionSearch search = scan.curve(gauge).search();
    return extremum(
        requirement, gauge, scan, gauge.quantity().atMost() ? search.worst() : search.best());
  }

  private CheckedRequirement extremum(
      Requirement requirement, Gauge gauge, BandScan scan, double frequencyHz) {
    Operation operation = operation(scan, frequencyHz);
    ReflectionCurve curve = scan.curve(gauge);
    double missed = gauge.reading().apply(operation).subtract(curve.at(frequencyHz)).abs();
    return checked(requirement, operation, Math.max(missed, curve.error()));
  }

  /**
   * Judges by a value at one frequency.
   *
   * @param curveError error of the magnitude read on top of that of the solver
   */
  private CheckedRequirement checked(
      Requirement requirement, Operation operation, double curveError) {
    Gauge gauge = gauge(requirement);
    double magnitude = gauge.reading().apply(operation).abs();
    double error = curveError + gauge.error().apply(operation);
    return checked(
        requirement,
        new Finding(
            gauge,
            operation,
            gauge.value(magnitude, 0),
            gauge.value(magnitude, -error),
            gauge.value(magnitude, error)));
  }

  private Operation operation(BandScan scan, double frequencyHz) {
    return scan.operations().stream()
        .filter(each -> each.solution().frequencyHz() == frequencyHz)
        .findFirst()
        .orElseGet(() -> installation.solve(solver, frequencyHz));
  }

  private CheckedRequirement width(
      Requirement.MinimumBandwidth requirement, Gauge gauge, BandScan scan) {
    ReflectionCurve curve = scan.curve(gauge);
    double error = curve.error() + scan.solverError(gauge);
    double edge = (requirement.swr() - 1) / (requirement.swr() + 1);
    List<FrequencyRange> ranges = curve.search().within(edge);
    return checked(
        requirement,
        new Finding(
            gauge,
            operation(scan, curve.search().best()),
            widest(ranges),
            widest(curve.search().within(Math.max(0, edge - error))),
            widest(curve.search().within(edge + error))));
  }

  private static double widest(List<FrequencyRange> ranges) {
    return ranges.stream()
        .map(range -> range.highHz() - range.lowHz())
        .max(Comparator.naturalOrder())
        .orElse(0.0);
  }

  private CheckedRequirement checked(Requirement requirement, Finding finding) {
    Gauge gauge = finding.gauge();
    Outcome outcome =
        CheckedRequirement.judge(gauge.quantity(), gauge.limit(), finding.low(), finding.high());
    List<Warning> warnings = new ArrayList<>(installation.warnings());
    warnings.addAll(finding.operation().solution().warnings());
    return new CheckedRequirement(
        requirement,
        outcome,
        gauge.quantity(),
        gauge.limit(),
        finding.value(),
        finding.low(),
        finding.high(),
        OptionalDouble.of(finding.operation().solution().frequencyHz()),
        solver.options().tolerance(),
        outcome == Outcome.MET ? "" : new Cause(installation, requirement, finding).text(outcome),
        warnings);
  }
}
