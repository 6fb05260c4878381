package org.spanwire.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.FeedLine;
import org.spanwire.design.PartRating;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.Wire;
import org.spanwire.practice.Corona;
import org.spanwire.practice.Ratings;
import org.spanwire.practice.WireCooling;

/**
 * Voltages, currents and heat of an installation's parts, and which part limits its power on which
 * band. The transmitter delivers its stated power into the feed chain, as through a tuner without
 * loss, so a mismatch spares no part. Parts without a rating in the design set no limit; wires are
 * limited by corona and by their temperature, see {@link Corona#WEATHERED} and {@link
 * WireCooling#SUMMER}.
 *
 * @param design the design
 */
public record RatingStudy(Design design) {

  private static final int PLACES = 41;

  /** What one frequency gives. */
  private record AtFrequency(List<BandRating.Load> loads, List<BandRating.Limit> limits) {}

  /**
   * Runs the study.
   *
   * @param bands the bands, in the order of the results
   * @param threads number of threads; the results do not depend on it
   */
  public List<BandRating> run(Solver solver, List<Band> bands, int threads) {
    Installation installation = Installation.of(design);
    InstallationFamily family =
        new InstallationFamily(installation, solver, RatedFrequencies.of(bands), threads);
    List<Callable<AtFrequency>> tasks = new ArrayList<>();
    for (Band band : bands) {
      for (double frequency : RatedFrequencies.of(band)) {
        tasks.add(() -> at(installation, family.at(frequency)));
      }
    }
    List<AtFrequency> solved;
    try (Workers workers = new Workers(threads)) {
      solved = workers.run(tasks);
    }
    List<BandRating> ratings = new ArrayList<>();
    int next = 0;
    for (Band band : bands) {
      int count = RatedFrequencies.of(band).size();
      ratings.add(gather(band, solved.subList(next, next + count)));
      next += count;
    }
    return ratings;
  }

  private static BandRating gather(Band band, List<AtFrequency> solved) {
    Map<String, BandRating.Load> loads = new LinkedHashMap<>();
    Map<List<Object>, BandRating.Limit> limits = new LinkedHashMap<>();
    for (AtFrequency each : solved) {
      each.loads.forEach(load -> loads.merge(load.part(), load, RatingStudy::larger));
      each.limits.forEach(
          limit ->
              limits.merge(
                  List.of(limit.part(), limit.cause()),
                  limit,
                  (a, b) -> b.watts() < a.watts() ? b : a));
    }
    return new BandRating(band.name(), List.copyOf(loads.values()), List.copyOf(limits.values()));
  }

  private static BandRating.Load larger(BandRating.Load a, BandRating.Load b) {
    return new BandRating.Load(
        a.part(),
        larger(a.volts(), b.volts()),
        larger(a.amperes(), b.amperes()),
        larger(a.watts(), b.watts()),
        larger(a.wattsPerMetre(), b.wattsPerMetre()));
  }

  private static OptionalDouble larger(OptionalDouble a, OptionalDouble b) {
    return a.isPresent() && b.isPresent()
        ? OptionalDouble.of(Math.max(a.getAsDouble(), b.getAsDouble()))
        : a.isPresent() ? a : b;
  }

  private AtFrequency at(Installation installation, Operation operation) {
    Solution solution = operation.solution();
    Ratings ratings = new Ratings(solution.antenna(), solution, installation.tunedWatts(operation));
    List<BandRating.Load> loads = new ArrayList<>();
    loads.addAll(antennaLoads(ratings, solution));
    loads.addAll(chainLoads(operation));
    List<BandRating.Limit> limits = new ArrayList<>();
    double power = installation.powerWatts();
    double frequency = solution.frequencyHz();
    for (BandRating.Load load : loads) {
      PartRating rated = design.ratings().get(ratedName(load.part()));
      if (rated != null) {
        limits.addAll(limits(load, rated, power, frequency));
      }
    }
    double share = power / ratings.watts();
    for (Ratings.Limit limit :
        ratings.limits(PLACES, Corona.WEATHERED, WireCooling.SUMMER, OperatingMode.CARRIER)) {
      if (Double.isFinite(limit.watts())) {
        limits.add(
            new BandRating.Limit(
                "wire " + limit.part(),
                limit.cause() == Ratings.Limit.Cause.CORONA
                    ? BandRating.Cause.CORONA
                    : BandRating.Cause.HEAT,
                share * limit.watts(),
                frequency));
      }
    }
    return new AtFrequency(loads, limits);
  }

  /** "transformer 2" is rated as the transformer. */
  private static String ratedName(String part) {
    for (String name : List.of(PartRating.TRANSFORMER, PartRating.LINE)) {
      if (part.matches(name + " [0-9]+")) {
        return name;
      }
    }
    return part;
  }

  private static List<BandRating.Limit> limits(
      BandRating.Load load, PartRating rated, double power, double frequencyHz) {
    List<BandRating.Limit> limits = new ArrayList<>();
    if (rated.heatWatts().isPresent() && load.watts().orElse(0) > 0) {
      double watts = power * rated.heatWatts().getAsDouble() / load.watts().getAsDouble();
      limits.add(new BandRating.Limit(load.part(), BandRating.Cause.HEAT, watts, frequencyHz));
    }
    if (rated.peakVolts().isPresent() && load.volts().orElse(0) > 0) {
      double ratio = rated.peakVolts().getAsDouble() / load.peakVolts().getAsDouble();
      limits.add(
          new BandRating.Limit(
              load.part(), BandRating.Cause.VOLTAGE, power * ratio * ratio, frequencyHz));
    }
    return limits;
  }

  private static List<BandRating.Load> antennaLoads(Ratings ratings, Solution solution) {
    List<BandRating.Load> loads = new ArrayList<>();
    List<Ratings.Place> places = ratings.places(PLACES);
    for (Wire wire : solution.antenna().wires()) {
      List<Ratings.Place> here =
          places.stream().filter(place -> place.wire().equals(wire.name())).toList();
      loads.add(
          new BandRating.Load(
              "wire " + wire.name(),
              OptionalDouble.of(BandRating.largest(here, Ratings.Place::volts)),
              OptionalDouble.of(BandRating.largest(here, Ratings.Place::amperes)),
              OptionalDouble.empty(),
              OptionalDouble.of(BandRating.largest(here, Ratings.Place::heat))));
    }
    OptionalDouble ends = ratings.ends().stream().mapToDouble(Ratings.Place::volts).max();
    if (ends.isPresent()) {
      loads.add(
          new BandRating.Load(
              PartRating.ENDS,
              ends,
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.empty()));
    }
    loads.add(feedpoint(ratings, solution));
    for (Fitting fitting : solution.antenna().fittings()) {
      boolean choke = fitting.name().equals(FeedLine.NAME);
      loads.add(
          new BandRating.Load(
              choke ? PartRating.CHOKE : fitting.name(),
              OptionalDouble.of(ratings.fittingVolts(fitting.name())),
              OptionalDouble.empty(),
              OptionalDouble.of(ratings.fittingWatts(fitting.name())),
              OptionalDouble.empty()));
    }
    return loads;
  }

  /** With a feed line the gap is shared by the two arms: their voltages are in series. */
  private static BandRating.Load feedpoint(Ratings ratings, Solution solution) {
    boolean split = solution.antenna().wire(FeedLine.NAME).isPresent();
    Complex sum = Complex.ZERO;
    double volts = 0;
    double amperes = 0;
    for (Feed feed : solution.antenna().feeds()) {
      sum = sum.add(feed.voltage());
      volts = Math.max(volts, ratings.feedVolts(feed.name()));
      amperes = Math.max(amperes, ratings.feedAmperes(feed.name()));
    }
    if (split) {
      volts = sum.abs() * Math.sqrt(ratings.watts() / solution.acceptedPower());
    }
    return new BandRating.Load(
        PartRating.FEEDPOINT,
        OptionalDouble.of(volts),
        OptionalDouble.of(amperes),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private static List<BandRating.Load> chainLoads(Operation operation) {
    List<BandRating.Load> loads = new ArrayList<>();
    if (operation.chain().isPresent()) {
      ChainState chain = operation.chain().get();
      double tuned = chain.availablePower() / chain.acceptedPower();
      for (int i = 0; i < chain.losses().size(); i++) {
        ChainState.StageLoss loss = chain.losses().get(i);
        boolean line = loss.name().startsWith(PartRating.LINE);
        loads.add(
            new BandRating.Load(
                loss.name(),
                line ? OptionalDouble.of(crest(chain, i, tuned)) : OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(tuned * loss.watts()),
                OptionalDouble.empty()));
      }
    }
    return loads;
  }

  /** Largest rms voltage along a line: no more than √(P Z SWR), with all its power and the SWR. */
  private static double crest(ChainState chain, int stage, double tuned) {
    Mismatch load = chain.planes().get(stage + 1).mismatch();
    return Math.sqrt(tuned * chain.planes().get(stage).power() * load.referenceOhm() * load.swr());
  }
}
