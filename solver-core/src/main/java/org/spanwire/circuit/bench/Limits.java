package org.spanwire.circuit.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Limits that a wound unit must keep. What a reading does not show is not judged.
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

  /** A perfect match counts as this return loss in dB, so that a line can be drawn to it. */
  private static final double PERFECT_RETURN_LOSS = 200;

  /**
   * A stretch of frequency.
   *
   * @param fromHz lower end in hertz
   * @param toHz upper end in hertz
   */
  public record Range(double fromHz, double toHz) {}

  /**
   * One limit that a reading breaks.
   *
   * @param frequencyHz frequency in hertz
   * @param quantity what is judged
   * @param value its value
   * @param limit its limit, a least one for the return loss
   */
  public record Breach(double frequencyHz, BenchQuantity quantity, double value, double limit) {}

  /**
   * A unit over a range that it must serve.
   *
   * @param covered whether the readings reach over the whole range
   * @param breaches limits broken at the readings within the range
   * @param passed whether all limits are kept over the whole range, between readings by straight
   *     lines
   */
  public record Judgement(boolean covered, List<Breach> breaches, boolean passed) {
    /** Takes a copy. */
    public Judgement {
      breaches = List.copyOf(breaches);
    }
  }

  /** The limit of a quantity. */
  public double limit(BenchQuantity quantity) {
    return switch (quantity) {
      case LOSS -> maximumLossDb;
      case AMPLITUDE -> maximumAmplitudeDb;
      case PHASE -> maximumPhaseDegrees;
      case RETURN_LOSS -> minimumReturnLossDb;
    };
  }

  /** Not negative where a reading keeps a limit; positive too where it does not show it. */
  private double margin(BenchQuantity quantity, UnitReading reading) {
    OptionalDouble value = quantity.of(reading);
    if (value.isEmpty()) {
      return Double.MAX_VALUE;
    }
    double given = value.getAsDouble();
    return switch (quantity) {
      case RETURN_LOSS -> Math.min(PERFECT_RETURN_LOSS, given) - minimumReturnLossDb;
      case LOSS -> maximumLossDb - given;
      default -> limit(quantity) - Math.abs(given);
    };
  }

  /** Every limit broken at any reading, in order; empty for a unit that passes. */
  public List<Breach> breaches(List<UnitReading> readings) {
    List<Breach> found = new ArrayList<>();
    for (UnitReading reading : readings) {
      for (BenchQuantity quantity : BenchQuantity.values()) {
        if (!(margin(quantity, reading) >= 0)) {
          found.add(
              new Breach(
                  reading.frequencyHz(),
                  quantity,
                  quantity.of(reading).orElseThrow(),
                  limit(quantity)));
        }
      }
    }
    return found;
  }

  /**
   * Judges a unit over a range.
   *
   * @param readings with rising frequency, at least one
   * @param range what it must serve
   */
  public Judgement judge(List<UnitReading> readings, Range range) {
    boolean covered =
        readings.get(0).frequencyHz() <= range.fromHz()
            && readings.get(readings.size() - 1).frequencyHz() >= range.toHz();
    List<UnitReading> within =
        readings.stream()
            .filter(r -> r.frequencyHz() >= range.fromHz() && r.frequencyHz() <= range.toHz())
            .toList();
    boolean passed =
        covered
            && usableRanges(readings).stream()
                .anyMatch(u -> u.fromHz() <= range.fromHz() && u.toHz() >= range.toHz());
    return new Judgement(covered, breaches(within), passed);
  }

  /**
   * Where all limits are kept, between readings by straight lines; empty for a single reading.
   *
   * @param readings with rising frequency
   */
  public List<Range> usableRanges(List<UnitReading> readings) {
    List<Range> ranges = new ArrayList<>();
    for (int i = 1; i < readings.size(); i++) {
      UnitReading low = readings.get(i - 1);
      UnitReading high = readings.get(i);
      double span = high.frequencyHz() - low.frequencyHz();
      if (!(span > 0)) {
        throw new IllegalArgumentException(
            "reading at " + high.frequencyHz() + " Hz is not above the one before; sort them");
      }
      double from = 0;
      double to = 1;
      for (BenchQuantity quantity : BenchQuantity.values()) {
        double a = margin(quantity, low);
        double b = margin(quantity, high);
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
  private static double between(UnitReading low, UnitReading high, double share) {
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
