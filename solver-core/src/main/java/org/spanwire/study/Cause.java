package org.spanwire.study;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.design.Requirement;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.PeakGain;
import org.spanwire.result.PowerBudget;

/**
 * Why a requirement is not kept: what is nearest to the value that decides, in words.
 *
 * @param installation what was solved
 * @param requirement what was asked
 * @param finding the value
 */
record Cause(Installation installation, Requirement requirement, Finding finding) {

  /** A reactance counts as the larger part of a mismatch above this share of the resistance's. */
  private static final double MOSTLY_REACTIVE = 1;

  /** One line. */
  String text(CheckedRequirement.Outcome outcome) {
    String reason =
        switch (finding.gauge().quantity()) {
          case SWR_FEEDPOINT, SWR_TRANSMITTER, VERDICT, BANDWIDTH -> mismatch();
          case GAIN -> gain();
          case EFFICIENCY -> losses();
          case CHOKE_HEAT -> commonMode();
          case EXPOSURE_DISTANCE, YIELD ->
              throw new IllegalStateException(
                  finding.gauge().quantity() + " has studies of its own");
        };
    return outcome == CheckedRequirement.Outcome.UNDECIDED
        ? "the limit lies within the numerical error; " + reason
        : reason;
  }

  private Solution solution() {
    return finding.operation().solution();
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  private String at() {
    double hertz = solution().frequencyHz();
    String edge = "";
    if (requirement.scope() instanceof Requirement.InBand in) {
      edge =
          hertz == in.band().lowHz()
              ? ", the lower edge"
              : hertz == in.band().highHz() ? ", the upper edge" : "";
    }
    return format("%.4f MHz%s", hertz * 1e-6, edge);
  }

  private String mismatch() {
    SolvedFeed feed = finding.operation().feed(installation.antenna().feeds().get(0).name());
    Complex z = feed.impedance();
    double reference = installation.feedpointReferenceOhm();
    if (z.isInfinite()) {
      return "the feedpoint is open at " + at();
    }
    return format(
        "the feedpoint shows %.4g %s j%.4g ohm against %.4g ohm at %s: %s%s",
        z.getReal(),
        z.getImaginary() < 0 ? "-" : "+",
        Math.abs(z.getImaginary()),
        reference,
        at(),
        kind(z, reference),
        finding.gauge().quantity() == CheckedRequirement.Quantity.BANDWIDTH
            ? ", its best match in the band"
            : "");
  }

  /** Which part of the impedance reflects more, were the other one matched. */
  private static String kind(Complex z, double reference) {
    double resistive = Math.abs(z.getReal() - reference);
    if (Math.abs(z.getImaginary()) > MOSTLY_REACTIVE * resistive) {
      return z.getImaginary() < 0 ? "mostly capacitive reactance" : "mostly inductive reactance";
    }
    return z.getReal() < reference ? "resistance too low" : "resistance too high";
  }

  private String gain() {
    PeakGain peak = solution().peakGain();
    return format(
        "the pattern peaks with %.2f dBi%s at %s; %.1f %% of the power accepted is radiated",
        peak.gainDbi(),
        peak.elevationDegrees().isPresent()
            ? format(" at %.1f deg elevation", peak.elevationDegrees().getAsDouble())
            : "",
        at(),
        100 * solution().radiationEfficiency());
  }

  private String losses() {
    PowerBudget budget = solution().powerBudgetWithSoil();
    Map<String, Double> shares = new LinkedHashMap<>();
    shares.put("soil", budget.soilAbsorbed().orElse(0));
    shares.put("conductors", budget.conductorLoss());
    shares.put("chokes and fittings", budget.fittingLoss());
    Map.Entry<String, Double> largest =
        shares.entrySet().stream()
            .max(Comparator.comparingDouble(Map.Entry::getValue))
            .orElseThrow();
    return format(
        "the largest loss, %2$.1f %% of the power accepted, is in %1$s at %3$s",
        largest.getKey(), 100 * largest.getValue() / budget.accepted(), at());
  }

  private String commonMode() {
    CommonMode mode = finding.operation().commonMode().orElseThrow();
    CurrentSample largest = mode.largest();
    return format(
        "%.3g A of common-mode current through %.4g ohm at %s, %.3g A at most along the line",
        mode.current().abs(), mode.chokeOhm().abs(), at(), largest.current().abs());
  }
}
