package org.spanwire.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import org.spanwire.design.ExposureLimit;
import org.spanwire.geometry.Point;
import org.spanwire.unit.PhysicalConstants;

/**
 * Fields on one floor all around every conductor, along its sides and about its ends, at heights of
 * 0.5 m to 2 m above the floor; the distances at which they meet a limit are found by root finding
 * along level rays from the conductors outward. Immutable.
 */
public final class ExposureSurvey {

  /** Rays that reach about as far as the furthest, looked at more closely. */
  private static final int CANDIDATES = 5;

  /** How often the rays beside the furthest are halved toward it. */
  private static final int HALVINGS = 2;

  /** Beyond this share of the rays' length no limit may be exceeded. */
  private static final double WIDE = 0.6;

  private final double frequencyHz;
  private final double duty;
  private final double floor;
  private final PlanView plan;
  private final RayFields.FieldsAt fields;
  private final double end;
  private final List<List<RayFields>> rounds = new ArrayList<>();
  private final Map<Ray, RayFields> between = new ConcurrentHashMap<>();

  /** A ray of a round, and about how far a limit is exceeded along it. */
  private record Candidate(int index, double distance) {}

  ExposureSurvey(
      PlanView plan,
      RayFields.FieldsAt fields,
      double frequencyHz,
      double duty,
      double floor,
      double end) {
    this.plan = plan;
    this.fields = fields;
    this.frequencyHz = frequencyHz;
    this.duty = duty;
    this.floor = floor;
    this.end = end;
    double step = Math.max(1, PhysicalConstants.wavelength(frequencyHz) / 6);
    for (List<Ray> round : plan.rays(step)) {
      rounds.add(round.stream().map(this::along).toList());
    }
  }

  private RayFields along(Ray ray) {
    return new RayFields(ray, floor, plan, fields, PhysicalConstants.wavelength(frequencyHz), end);
  }

  boolean isWideEnough(ExposureLimit limit) {
    return furthest(measure(limit), 0.5).distance() < WIDE * end;
  }

  /** Field strengths over a limit's, averaged over time: 1 where it is just kept. */
  private ToDoubleFunction<FieldStrength> measure(ExposureLimit limit) {
    return person -> Math.sqrt(exposure(limit, person));
  }

  /**
   * Share of a limit at a person: squared field over squared limit, averaged over time, of the
   * field that comes nearer to it. The limit is kept up to 1.
   */
  public double exposure(ExposureLimit limit, FieldStrength person) {
    double electric = person.electric() / limit.electric(frequencyHz);
    double magnetic =
        limit.magnetic(frequencyHz).isPresent()
            ? person.magnetic() / limit.magnetic(frequencyHz).getAsDouble()
            : 0;
    double larger = Math.max(electric, magnetic);
    return limit.share(duty) * larger * larger;
  }

  /**
   * The distance to keep for a limit.
   *
   * @param uncertainty relative uncertainty of the field strengths, not negative
   */
  public KeepOut keepOut(ExposureLimit limit, double uncertainty) {
    ToDoubleFunction<FieldStrength> measure = measure(limit);
    RayFields.Reach furthest = furthest(measure, 1);
    FieldStrength strongest =
        rounds.stream()
            .flatMap(List::stream)
            .map(ray -> ray.strongest(measure))
            .filter(Objects::nonNull)
            .max(Comparator.comparingDouble(measure))
            .orElseThrow();
    return new KeepOut(
        limit,
        frequencyHz,
        floor,
        furthest.distance(),
        uncertainty,
        Math.min(furthest.distance(), furthest(measure, 1 + uncertainty).distance()),
        Math.max(furthest.distance(), furthest(measure, 1 / (1 + uncertainty)).distance()),
        Optional.ofNullable(furthest.there()),
        strongest,
        exposure(limit, strongest),
        outline(measure));
  }

  private RayFields.Reach furthest(ToDoubleFunction<FieldStrength> measure, double level) {
    RayFields.Reach best = new RayFields.Reach(0, null);
    for (List<RayFields> round : rounds) {
      RayFields.Reach here = furthest(round, measure, level);
      best = here.distance() > best.distance() ? here : best;
    }
    return best;
  }

  /** The ray that reaches furthest, and those midway to its neighbours, halved again. */
  private RayFields.Reach furthest(
      List<RayFields> round, ToDoubleFunction<FieldStrength> measure, double level) {
    List<Candidate> candidates = new ArrayList<>();
    for (int i = 0; i < round.size(); i++) {
      double distance = round.get(i).estimate(measure, level);
      if (distance > 0) {
        candidates.add(new Candidate(i, distance));
      }
    }
    candidates.sort(Comparator.comparingDouble(candidate -> -candidate.distance));
    int best = -1;
    RayFields.Reach reach = new RayFields.Reach(0, null);
    for (Candidate candidate : candidates.subList(0, Math.min(CANDIDATES, candidates.size()))) {
      RayFields.Reach here = round.get(candidate.index).reach(measure, level);
      if (here.distance() > reach.distance()) {
        best = candidate.index;
        reach = here;
      }
    }
    return best < 0 ? reach : between(round, best, reach, measure, level);
  }

  private RayFields.Reach between(
      List<RayFields> round,
      int best,
      RayFields.Reach first,
      ToDoubleFunction<FieldStrength> measure,
      double level) {
    RayFields.Reach reach = first;
    Ray middle = round.get(best).ray();
    Ray before = round.get(Math.max(0, best - 1)).ray();
    Ray after = round.get(Math.min(round.size() - 1, best + 1)).ray();
    for (int halving = 0; halving < HALVINGS; halving++) {
      before = before.toward(middle);
      after = after.toward(middle);
      for (Ray ray : List.of(before, after)) {
        RayFields.Reach here = between.computeIfAbsent(ray, this::along).reach(measure, level);
        if (here.distance() > reach.distance()) {
          reach = here;
          middle = ray;
        }
      }
    }
    return reach;
  }

  private List<Point> outline(ToDoubleFunction<FieldStrength> measure) {
    List<Point> outline = new ArrayList<>();
    for (List<RayFields> round : rounds) {
      for (RayFields ray : round) {
        double distance = ray.estimate(measure, 1);
        if (distance > 0) {
          outline.add(ray.ray().at(distance, floor));
        }
      }
    }
    return outline;
  }
}
