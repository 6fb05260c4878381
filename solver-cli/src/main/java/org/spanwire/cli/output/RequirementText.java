package org.spanwire.cli.output;

import java.util.Locale;
import org.spanwire.design.Requirement;
import org.spanwire.study.CheckedRequirement;
import org.spanwire.study.Verdict;

/** Requirements and their values in words. */
final class RequirementText {

  private RequirementText() {}

  /** The band or the frequency. */
  static String scope(Requirement requirement) {
    if (requirement.scope() instanceof Requirement.InBand in) {
      return in.band().name();
    }
    return requirement.scope() instanceof Requirement.AtFrequency at
        ? Numbers.megahertz(at.frequencyHz()) + " MHz"
        : "design";
  }

  /** The quantity with all that narrows it down. */
  static String quantity(CheckedRequirement checked) {
    String label = checked.quantity().label();
    if (checked.requirement() instanceof Requirement.MinimumGain gain) {
      return label
          + ", elevation "
          + Numbers.significant(gain.elevationDegrees(), 4)
          + " deg"
          + (gain.azimuthDegrees().isPresent()
              ? ", azimuth " + Numbers.significant(gain.azimuthDegrees().getAsDouble(), 4) + " deg"
              : "");
    }
    if (checked.requirement() instanceof Requirement.MinimumBandwidth width) {
      return label
          + " within SWR "
          + Numbers.significant(width.swr(), 4)
          + ", "
          + width.plane().name().toLowerCase(Locale.ROOT);
    }
    if (checked.requirement() instanceof Requirement.LowestVerdict lowest) {
      return label
          + " "
          + Verdict.valueOf(lowest.lowest().name()).label()
          + (lowest.lowest() == Requirement.Usability.DIRECT ? "" : " or better")
          + ", by SWR";
    }
    return label;
  }

  /** The unit that values are shown in; empty for a ratio. */
  static String unit(CheckedRequirement checked) {
    return switch (checked.quantity()) {
      case EFFICIENCY, YIELD -> "%";
      case BANDWIDTH -> "kHz";
      default -> checked.quantity().unit();
    };
  }

  /** From the quantity's own unit to the one shown. */
  static double scale(CheckedRequirement checked) {
    return switch (checked.quantity()) {
      case EFFICIENCY, YIELD -> 100;
      case BANDWIDTH -> 1e-3;
      default -> 1;
    };
  }

  /** The limit with its side, without a unit. */
  static String limit(CheckedRequirement checked) {
    return (checked.quantity().atMost() ? "<= " : ">= ") + value(checked, checked.limit());
  }

  /** What was found, without a unit. */
  static String found(CheckedRequirement checked) {
    return value(checked, checked.found());
  }

  /** Room, negative beyond the limit, without a unit. */
  static String margin(CheckedRequirement checked) {
    return (checked.margin() > 0 ? "+" : "") + value(checked, checked.margin());
  }

  /** How far the numerical errors reach from the value, without a unit. */
  static String error(CheckedRequirement checked) {
    double reach = Math.max(checked.high() - checked.found(), checked.found() - checked.low());
    return Double.isNaN(reach) ? "-" : Numbers.significant(reach * scale(checked), 2);
  }

  private static String value(CheckedRequirement checked, double value) {
    double shown = value * scale(checked);
    int usual =
        switch (checked.quantity()) {
          case SWR_FEEDPOINT, SWR_TRANSMITTER, VERDICT, GAIN, EXPOSURE_DISTANCE -> 2;
          case EFFICIENCY, CHOKE_HEAT, BANDWIDTH, YIELD -> 1;
        };
    return Numbers.fixed(shown, decimals(Math.abs(checked.margin()) * scale(checked), usual));
  }

  /** So many that value and limit can be told apart. */
  private static int decimals(double margin, int usual) {
    int decimals = usual;
    while (decimals < 6 && margin > 0 && margin * Math.pow(10, decimals) < 1) {
      decimals++;
    }
    return decimals;
  }

  /** The whole requirement with its unit. */
  static String whole(CheckedRequirement checked) {
    return scope(checked.requirement())
        + ": "
        + quantity(checked)
        + " "
        + withUnit(checked, limit(checked));
  }

  /** A text of this class with the unit that it is shown in. */
  static String withUnit(CheckedRequirement checked, String text) {
    return unit(checked).isEmpty() ? text : text + " " + unit(checked);
  }
}
