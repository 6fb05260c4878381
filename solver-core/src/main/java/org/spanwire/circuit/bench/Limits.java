package org.spanwire.circuit.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Limits that a wound unit must keep.
 *
 * @param maximumLossDb largest loss in dB
 * @param maximumAmplitudeDb largest amplitude imbalance in dB, either sign
 * @param maximumPhaseDegrees largest phase imbalance in degrees, either sign
 * @param minimumReturnLossDb least return loss in dB
 */
public record Limits(
    double maximumLossDb,
    double maximumAmplitudeDb,
    double maximumPhaseDegrees,
    double minimumReturnLossDb) {

  /**
   * A stretch of frequency.
   *
   * @param fromHz lower end in hertz
   * @param toHz upper end in hertz
   */
  public record Range(double fromHz, double toHz) {}

  /** One limit that a reading breaks, with value and limit in words. */
  public record Breach(double frequencyHz, String quantity, double value, double limit) {}

  private record Rule(String quantity, ToDoubleFunction<BalunReading> value, double limit) {

    /** Not negative where the reading keeps the limit, which is then an upper one. */
    double margin(BalunReading reading) {
      return limit - value.applyAsDouble(reading);
    }
  }

  private List<Rule> rules() {
    return List.of(
        new Rule("loss dB", BalunReading::lossDb, maximumLossDb),
        new Rule(
            "amplitude imbalance dB",
            r -> Math.abs(r.imbalance().amplitudeDb()),
            maximumAmplitudeDb),
        new Rule(
            "phase imbalance degrees",
            r -> Math.abs(r.imbalance().phaseDegrees()),
            maximumPhaseDegrees),
        // A perfect match counts as 200 dB, so that a line can be drawn to it.
        new Rule(
            "negative return loss dB",
            r -> -Math.min(200, r.returnLossDb()),
            -minimumReturnLossDb));
  }

  /** Every limit broken at any reading, in order; empty for a unit that passes. */
  public List<Breach> breaches(List<BalunReading> readings) {
    List<Breach> found = new ArrayList<>();
    for (BalunReading reading : readings) {
      for (Rule rule : rules()) {
        if (!(rule.margin(reading) >= 0)) {
          found.add(
              new Breach(
                  reading.frequencyHz(),
                  rule.quantity(),
                  rule.value().applyAsDouble(reading),
                  rule.limit()));
        }
      }
    }
    return found;
  }

  /**
   * Where all limits are kept, between readings by straight lines.
   *
   * @param readings with rising frequency, at least two
   */
  public List<Range> usableRanges(List<BalunReading> readings) {
    List<Range> ranges = new ArrayList<>();
    for (int i = 1; i < readings.size(); i++) {
      BalunReading low = readings.get(i - 1);
      BalunReading high = readings.get(i);
      double span = high.frequencyHz() - low.frequencyHz();
      if (!(span > 0)) {
        throw new IllegalArgumentException(
            "reading at " + high.frequencyHz() + " Hz is not above the one before; sort them");
      }
      double from = 0;
      double to = 1;
      for (Rule rule : rules()) {
        double a = rule.margin(low);
        double b = rule.margin(high);
        if (a < 0 && b < 0) {
          to = -1;
        } else if (a < 0) {
          from = Math.max(from, a / (a - b));
        } else if (b < 0) {
          to = Math.min(to, a / (a - b));
        }
      }
      if (from <= to) {
        append(ranges, between(low, high, from), between(low, high, to));
      }
    }
    return ranges;
  }

  /** Exact at both ends, so that stretches join. */
  private static double between(BalunReading low, BalunReading high, double share) {
    return share == 1
        ? high.frequencyHz()
        : low.frequencyHz() + share * (high.frequencyHz() - low.frequencyHz());
  }

  private static void append(List<Range> ranges, double from, double to) {
    int last = ranges.size() - 1;
    if (last >= 0 && ranges.get(last).toHz() == from) {
      ranges.set(last, new Range(ranges.get(last).fromHz(), to));
    } else {
      ranges.add(new Range(from, to));
    }
  }
}
