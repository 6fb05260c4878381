package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.design.Design;
import org.spanwire.design.Requirement;

/**
 * A requirement as a number with a limit, on a {@link PortModel}; a distance to keep on a {@link
 * DistanceModel}.
 *
 * @param requirement what is required
 * @param range index of the model's range of frequency, −1 for a distance
 * @param ratio index among the model's ratios in decibels, −1 for a limit of something else
 */
record Criterion(Requirement requirement, int range, int ratio) {

  /**
   * The criteria of a design, with what a model needs for them.
   *
   * @param all the criteria
   * @param ranges the design's bands first, then single frequencies of requirements
   * @param decibels gains and efficiencies
   */
  record Set(
      List<Criterion> all, List<FrequencyRange> ranges, List<ToDoubleFunction<Solution>> decibels) {

    /** The design's requirements, or without any but a yield SWR of at most 2 and 3. */
    static Set of(Design design) {
      List<FrequencyRange> ranges = new ArrayList<>();
      design.bands().forEach(b -> ranges.add(new FrequencyRange(b.lowHz(), b.highHz())));
      Set set = new Set(new ArrayList<>(), ranges, new ArrayList<>());
      List<Requirement> wanted = new ArrayList<>(design.requirements());
      wanted.removeIf(Requirement.MinimumYield.class::isInstance);
      wanted.forEach(set::add);
      if (set.all.isEmpty()) {
        for (Verdict verdict : List.of(Verdict.DIRECT, Verdict.TUNABLE)) {
          design
              .bands()
              .forEach(
                  band ->
                      set.add(
                          new Requirement.MaximumSwr(
                              new Requirement.InBand(band),
                              verdict.limit(),
                              Requirement.Plane.TRANSMITTER)));
        }
      }
      return set;
    }

    private void add(Requirement requirement) {
      if (requirement instanceof Requirement.MinimumGain minimum) {
        addRatio(requirement, solution -> Gauge.gainDbi(minimum, solution));
      } else if (requirement instanceof Requirement.MinimumEfficiency) {
        addRatio(requirement, solution -> 10 * Math.log10(solution.radiationEfficiency()));
      } else if (requirement instanceof Requirement.MaximumExposureDistance) {
        all.add(new Criterion(requirement, -1, -1));
      } else {
        all.add(new Criterion(requirement, range(requirement.scope()), -1));
      }
    }

    private void addRatio(Requirement requirement, ToDoubleFunction<Solution> decibels) {
      this.decibels.add(decibels);
      all.add(new Criterion(requirement, range(requirement.scope()), this.decibels.size() - 1));
    }

    private int range(Requirement.Scope scope) {
      FrequencyRange range =
          scope instanceof Requirement.InBand in
              ? new FrequencyRange(in.band().lowHz(), in.band().highHz())
              : new FrequencyRange(
                  ((Requirement.AtFrequency) scope).frequencyHz(),
                  ((Requirement.AtFrequency) scope).frequencyHz());
      if (!ranges.contains(range)) {
        ranges.add(range);
      }
      return ranges.indexOf(range);
    }
  }

  boolean atLeast() {
    return ratio >= 0 || requirement instanceof Requirement.MinimumBandwidth;
  }

  /** The limit: an SWR, a gain in dBi, an efficiency in dB, watts, hertz or metres. */
  double limit() {
    if (requirement instanceof Requirement.MinimumGain minimum) {
      return minimum.minimumDbi();
    }
    if (requirement instanceof Requirement.MinimumEfficiency efficiency) {
      return 10 * Math.log10(efficiency.minimum());
    }
    if (requirement instanceof Requirement.MaximumChokeHeat heat) {
      return heat.maximumWatts();
    }
    if (requirement instanceof Requirement.MinimumBandwidth width) {
      return width.minimumHz();
    }
    if (requirement instanceof Requirement.MaximumExposureDistance distance) {
      return distance.maximumMetres();
    }
    return requirement instanceof Requirement.LowestVerdict verdict
        ? Verdict.valueOf(verdict.lowest().name()).limit()
        : ((Requirement.MaximumSwr) requirement).maximum();
  }

  private Plane plane() {
    if (requirement instanceof Requirement.MinimumBandwidth width) {
      return Plane.valueOf(width.plane().name());
    }
    return requirement instanceof Requirement.MaximumSwr maximum
        ? Plane.valueOf(maximum.plane().name())
        : Plane.TRANSMITTER;
  }

  /** Whether it is the largest of values that the ports show at single frequencies. */
  boolean isOfPorts() {
    return range >= 0 && !atLeast();
  }

  /** The quantity at a frequency: an SWR, a ratio in decibels, or heat in watts. */
  double at(Look look, double frequencyHz) {
    if (ratio >= 0) {
      return look.decibels(range, frequencyHz, ratio);
    }
    return requirement instanceof Requirement.MaximumChokeHeat
        ? look.chokeWatts(range, frequencyHz)
        : look.swr(range, frequencyHz, plane());
  }

  /** The frequency in hertz at which an installation comes closest to the limit or is worst. */
  double worstFrequency(PortModel model, PortModel.Place place) {
    double[] frequencies = model.frequencies(range);
    double worst = frequencies[0];
    for (double frequency : frequencies) {
      double more = at(place, frequency) - at(place, worst);
      worst = (atLeast() ? -more : more) > 0 ? frequency : worst;
    }
    return worst;
  }

  /**
   * The largest SWR, the smallest ratio in decibels, the largest heat in watts, or the widest
   * stretch within an SWR in hertz.
   */
  double value(PortModel model, PortModel.Place place) {
    if (requirement instanceof Requirement.MinimumBandwidth) {
      return width(model, place, 0);
    }
    boolean smallest = ratio >= 0;
    double extreme = smallest ? Double.POSITIVE_INFINITY : 0;
    for (double frequency : model.frequencies(range)) {
      double value = at(place, frequency);
      extreme = smallest ? Math.min(extreme, value) : Math.max(extreme, value);
    }
    return extreme;
  }

  /**
   * The widest stretch within the SWR of a bandwidth, in hertz.
   *
   * @param more added to the magnitude of the reflection coefficient that is allowed
   */
  private double width(PortModel model, PortModel.Place place, double more) {
    double swr = ((Requirement.MinimumBandwidth) requirement).swr();
    Complex[] reflections =
        Arrays.stream(model.frequencies(range))
            .mapToObj(f -> reflection(place.planes(range, f)))
            .toArray(Complex[]::new);
    return new ReflectionCurve(model.range(range), reflections)
        .search().within(Math.max(0, (swr - 1) / (swr + 1) + more)).stream()
            .map(each -> each.highHz() - each.lowHz())
            .max(Comparator.naturalOrder())
            .orElse(0.0);
  }

  private Complex reflection(List<PlaneMismatch> planes) {
    return planes.stream()
        .filter(each -> each.plane() == plane())
        .findFirst()
        .orElseThrow()
        .mismatch()
        .reflection();
  }

  boolean met(double value) {
    return atLeast() ? value >= limit() : value <= limit();
  }

  /**
   * Whether the model's error could decide.
   *
   * @param value at the place
   * @param error that of the model's reflection coefficients
   */
  boolean undecided(double value, PortModel model, PortModel.Place place, double error) {
    if (requirement instanceof Requirement.MinimumBandwidth) {
      return met(width(model, place, -error)) != met(width(model, place, error));
    }
    return Math.abs(value - limit()) <= uncertainty(error);
  }

  /**
   * How far a value at the limit may be off.
   *
   * @param error that of the model: 2 δ/(1 − |Γ|)² for an SWR, 1 dB per 0.02 for a gain, and twice
   *     the relative error of a current for heat
   */
  private double uncertainty(double error) {
    if (ratio >= 0) {
      return error / PortNumbers.PER_DECIBEL;
    }
    return requirement instanceof Requirement.MaximumChokeHeat
        ? 2 * error * limit()
        : error * (limit() + 1) * (limit() + 1) / 2;
  }
}
