package org.spanwire.cli.output;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import org.spanwire.study.FitResult;
import org.spanwire.study.PhysicalChange;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** What a fit comes to, in sentences. */
final class FitVerdict {

  private final FitReport report;
  private final FitResult result;

  FitVerdict(FitReport report) {
    this.report = report;
    this.result = report.result();
  }

  /** One paragraph each. */
  List<String> paragraphs() {
    FitResult.Cause first = result.causes().get(0);
    StringBuilder words = new StringBuilder();
    if (!result.fits()) {
      nothingFits(words, first);
    } else if (result.asDesigned()) {
      words.append(asDesigned());
    } else if (first.enough()) {
      words
          .append("Likeliest cause: ")
          .append(instead(first.parameter(), first.value(), first.change()))
          .append(". Alone it explains ")
          .append(percent(first.explained()).replace(' ', Paragraph.TIE))
          .append(" of the difference, as much as the readings can tell.")
          .append(alsoEnough());
    } else {
      several(words, first);
    }
    others(words);
    return result.fits() && result.reading().isPresent()
        ? List.of(words.toString(), reading(result.reading().get()))
        : List.of(words.toString());
  }

  /** Where no errors are stated, the reader must judge whether that is agreement. */
  private String asDesigned() {
    return result.overErrors().isPresent()
        ? "The readings agree with the design as it is: nothing has to differ."
        : "What was varied brings the design hardly nearer to the readings: it is off by "
            + Numbers.significant(result.nominalMisfit(), 2)
            + " of the reflection coefficient (rms) as it is, by "
            + Numbers.significant(result.misfit(), 2)
            + " with the best values. If the readings are no better than that, nothing has to"
            + " differ; if they are, something else does: vary other parameters too.";
  }

  private void nothingFits(StringBuilder words, FitResult.Cause first) {
    words
        .append("Nothing that was varied explains the readings: with the best values they are off")
        .append(" by ")
        .append(Numbers.significant(result.overErrors().orElseThrow(), 2))
        .append(" times their errors. Check the readings, where they were taken and what lies")
        .append(" between antenna and instrument, or vary other parameters too. The most, ")
        .append(percent(first.explained()).replace(' ', Paragraph.TIE))
        .append(" of the difference, is explained by ")
        .append(setting(first.parameter(), first.value()))
        .append('.');
  }

  private void several(StringBuilder words, FitResult.Cause first) {
    List<FitResult.Estimate> differing =
        result.estimates().stream().filter(FitResult.Estimate::differs).toList();
    if (differing.size() > 1) {
      words
          .append("More than one thing differs: ")
          .append(
              differing.stream()
                  .map(each -> instead(each.parameter(), rounded(each), each.change()))
                  .collect(Collectors.joining("; ")))
          .append(". ");
    }
    words
        .append(differing.size() > 1 ? "The likeliest single cause, " : "Likeliest cause: ")
        .append(
            differing.size() > 1
                ? setting(first.parameter(), first.value()) + ","
                : instead(first.parameter(), first.value(), first.change()) + ". It")
        .append(" explains ")
        .append(percent(first.explained()).replace(' ', Paragraph.TIE))
        .append(" of the difference, not all of it")
        .append(differing.size() > 1 ? "." : ": vary other parameters too.");
  }

  private String alsoEnough() {
    List<String> more =
        result.causes().stream()
            .skip(1)
            .filter(FitResult.Cause::enough)
            .map(each -> instead(each.parameter(), each.value(), each.change()))
            .toList();
    return more.isEmpty()
        ? ""
        : " But so would, alone: "
            + String.join("; ", more)
            + ". These readings do not tell which"
            + (report.measurement().phase() ? "." : ": SWR has no phase.");
  }

  private void others(StringBuilder words) {
    if (!result.others().isEmpty()) {
      words
          .append(" The readings fit as well with ")
          .append(
              result.others().stream()
                  .map(this::candidate)
                  .collect(Collectors.joining("; or with ")))
          .append('.');
    }
  }

  private String reading(FitResult.Reading reading) {
    boolean phase = report.measurement().phase();
    String first = candidate(reading.first());
    String second = candidate(reading.second());
    String at = Numbers.megahertz(reading.frequencyHz()) + Paragraph.TIE + "MHz";
    if (!reading.alternatives() && !reading.parts()) {
      return "One more reading on the design's bands would not narrow the estimates.";
    }
    String goal =
        reading.alternatives() ? "To part " + first + " from " + second : "To narrow the estimates";
    if (!reading.parts()) {
      return "No "
          + (phase ? "reflection coefficient" : "SWR")
          + " on the design's bands would part "
          + first
          + " from "
          + second
          + " beyond the error of a reading: measure "
          + (phase ? "" : "impedance with its sign, or ")
          + "a height or a length with a tape.";
    }
    return goal
        + (phase ? " best, measure at " : " best, read SWR at ")
        + at
        + (phase ? ", where reflection coefficients differ most: SWR " : ": ")
        + Numbers.swr(reading.firstSwr())
        + " speaks for "
        + first
        + "; "
        + Numbers.swr(reading.secondSwr())
        + " for "
        + second
        + ".";
  }

  private String candidate(FitResult.Candidate candidate) {
    return candidate.settings().stream()
        .map(each -> setting(each.parameter(), each.value()))
        .collect(Collectors.joining(", "));
  }

  private static String setting(String parameter, Quantity value) {
    return parameter
        + Paragraph.TIE
        + tied(value, value.dimension().equals(Dimension.NUMBER) ? 4 : 3);
  }

  private String instead(String parameter, Quantity value, PhysicalChange change) {
    String meaning = meaning(change);
    return setting(parameter, value)
        + " instead of "
        + tied(report.design().parameters().get(parameter).value(), 6)
        + (meaning.isEmpty() ? "" : " (" + meaning + ")");
  }

  private static String meaning(PhysicalChange change) {
    double by = Math.abs(change.by());
    boolean more = change.by() > 0;
    return switch (change.kind()) {
      case HEIGHT ->
          "the wires hang " + length(by) + (more ? " higher" : " lower") + " than designed";
      case LENGTH ->
          "the wires act "
              + Numbers.significant(100 * by, 2)
              + " % "
              + (more ? "longer" : "shorter")
              + " than designed";
      case FEED_PLACE ->
          "the feedpoint lies "
              + length(by)
              + (more ? " farther from" : " nearer to")
              + " the wire's first point";
      case FEED_CAPACITANCE ->
          tied(new Quantity(by, Dimension.CAPACITANCE), 2)
              + (more ? " more" : " less")
              + " across the feedpoint than designed: a box, a winding, wet insulators";
      case GROUND -> "another ground than assumed";
      case FEED_CHAIN -> "what follows the feedpoint is not as assumed";
      case OTHER -> "";
    };
  }

  private static String length(double metres) {
    return tied(new Quantity(metres, Dimension.LENGTH), 2);
  }

  private static String tied(Quantity value, int digits) {
    return FitText.value(value, digits).replace(' ', Paragraph.TIE);
  }

  static String percent(double share) {
    return Numbers.fixed(100 * share, 0) + " %";
  }

  /** An estimate to the second digit of its error, or of half its interval where that is less. */
  static Quantity rounded(FitResult.Estimate estimate) {
    return rounded(estimate.value().value(), estimate);
  }

  static Quantity rounded(double si, FitResult.Estimate estimate) {
    double error = Math.min(estimate.standardError(), (estimate.high() - estimate.low()) / 2);
    double shown = si;
    if (error > 0 && Double.isFinite(error)) {
      int decimals = 1 - (int) Math.floor(Math.log10(error));
      shown = BigDecimal.valueOf(si).setScale(decimals, RoundingMode.HALF_EVEN).doubleValue();
    }
    return new Quantity(shown, estimate.value().dimension());
  }
}
