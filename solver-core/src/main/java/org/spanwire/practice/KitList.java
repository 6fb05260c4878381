package org.spanwire.practice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanwire.design.CutRules;
import org.spanwire.design.Design;
import org.spanwire.design.FeedLine;
import org.spanwire.design.KitItem;
import org.spanwire.design.Stage;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.MechanicalProperties;
import org.spanwire.result.Warning;
import org.spanwire.unit.PhysicalConstants;

/**
 * What is packed for a design: wire by conductor, the stages of its feed chain, its fittings, and
 * what the design lists under {@code kit}. Wire is counted as it is cut, allowances included.
 *
 * <p>Wires, fittings and the stages at the feedpoint hang; of the line what leads from the
 * feedpoint to the first point of its route, if that is given. A mass that is not known stays so
 * and is left out of the sums.
 *
 * @param parts in that order
 */
public record KitList(List<Part> parts) {

  /** Loads and kit list may differ by this much: things are weighed on a kitchen scale. */
  private static final double SAME_LOAD = 0.1;

  /** What a part of the kit is. */
  public enum Kind {
    /** All wire of one conductor. */
    WIRE,
    /** A stage of the feed chain. */
    STAGE,
    /** A fitting along a wire. */
    FITTING,
    /** Something that the design lists. */
    ITEM
  }

  /**
   * A part of the kit.
   *
   * @param kind what it is
   * @param name name of the conductor, stage, fitting or item
   * @param count how many
   * @param metres length of all of it, if it comes by length
   * @param kilograms mass of all of it, if known
   * @param hangingShare share of its mass that wires and supports carry, 0 to 1
   * @param note from the design, may be empty
   */
  public record Part(
      Kind kind,
      String name,
      int count,
      OptionalDouble metres,
      OptionalDouble kilograms,
      double hangingShare,
      String note) {

    /** Checks that all is there. */
    public Part {
      Objects.requireNonNull(kind, "kind");
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(metres, "metres");
      Objects.requireNonNull(kilograms, "kilograms");
      Objects.requireNonNull(note, "note");
    }

    /** Kilograms of it that wires and supports carry, if known. */
    public OptionalDouble hangingKilograms() {
      return kilograms.isEmpty()
          ? kilograms
          : OptionalDouble.of(hangingShare * kilograms.getAsDouble());
    }

    private Part completedBy(KitItem item) {
      OptionalDouble mass =
          item.mass().isEmpty()
              ? kilograms
              : OptionalDouble.of(item.count() * item.mass().getAsDouble());
      return new Part(kind, name, item.count(), metres, mass, hangingShare, item.note());
    }
  }

  /** Takes a copy. */
  public KitList {
    parts = List.copyOf(parts);
  }

  /** The kit of a design. */
  public static KitList of(Design design) {
    Map<String, Part> parts = new LinkedHashMap<>();
    wires(design).forEach(part -> parts.put(part.name(), part));
    for (Part part : stages(design)) {
      parts.putIfAbsent(part.name(), part);
    }
    for (Fitting fitting : design.antenna().fittings()) {
      parts.putIfAbsent(fitting.name(), plain(Kind.FITTING, fitting.name(), 1));
    }
    for (KitItem item : design.kit()) {
      parts.merge(item.name(), listed(item), (part, added) -> part.completedBy(item));
    }
    return new KitList(List.copyOf(parts.values()));
  }

  private static Part listed(KitItem item) {
    return plain(Kind.ITEM, item.name(), item.hangs() ? 1 : 0).completedBy(item);
  }

  private static Part plain(Kind kind, String name, double hangingShare) {
    OptionalDouble unknown = OptionalDouble.empty();
    return new Part(kind, name, 1, unknown, unknown, hangingShare, "");
  }

  private static List<Part> wires(Design design) {
    Map<String, Double> metres = new LinkedHashMap<>();
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Leg leg : CutList.of(design.antenna(), design.cutRules().orElse(CutRules.PLAIN))) {
      Wire wire = design.antenna().wire(leg.wire()).orElseThrow();
      metres.merge(wire.conductor().name(), leg.cutLength(), Double::sum);
      counts.merge(wire.conductor().name(), 1, Integer::sum);
    }
    List<Part> parts = new ArrayList<>();
    metres.forEach(
        (conductor, length) -> {
          MechanicalProperties known = design.mechanical().get(conductor);
          parts.add(
              new Part(
                  Kind.WIRE,
                  conductor,
                  counts.get(conductor),
                  OptionalDouble.of(length),
                  known == null
                      ? OptionalDouble.empty()
                      : OptionalDouble.of(length * known.massPerMetre()),
                  1,
                  ""));
        });
    return parts;
  }

  /** The stages; several of a kind are numbered. What stands before the line hangs with it. */
  private static List<Part> stages(Design design) {
    List<Part> parts = new ArrayList<>();
    boolean atFeedpoint = true;
    for (Map.Entry<String, Stage> named : stagesByName(design).entrySet()) {
      String name = named.getKey();
      if (named.getValue() instanceof Stage.Line line) {
        parts.add(
            new Part(
                Kind.STAGE,
                name,
                1,
                OptionalDouble.of(line.length()),
                OptionalDouble.empty(),
                atFeedpoint ? hangingShare(design, line.length()) : 0,
                ""));
        atFeedpoint = false;
      } else {
        boolean hangs = atFeedpoint && !(named.getValue() instanceof Stage.Tuner);
        parts.add(plain(Kind.STAGE, name, hangs ? 1 : 0));
      }
    }
    return parts;
  }

  private static Map<String, Stage> stagesByName(Design design) {
    Map<String, Stage> stages = new LinkedHashMap<>();
    Map<String, Integer> kinds = new LinkedHashMap<>();
    for (Stage stage : design.feedChain()) {
      int number = kinds.merge(stage.kind(), 1, Integer::sum);
      stages.put(number == 1 ? stage.kind() : stage.kind() + " " + number, stage);
    }
    return stages;
  }

  private static double hangingShare(Design design, double length) {
    Optional<FeedLine> route = design.feedLine();
    if (route.isEmpty()) {
      return 0;
    }
    Feed feed = design.antenna().feeds().get(0);
    Wire wire = design.antenna().wire(feed.wire()).orElseThrow();
    Point feedpoint = wire.at(feed.at().distanceAlong(wire.length()));
    return Math.min(1, feedpoint.distance(route.get().path().get(0)) / length);
  }

  /** The stage of the feed chain that a part of the kit is. */
  public static Stage stage(Design design, Part part) {
    return Optional.ofNullable(stagesByName(design).get(part.name())).orElseThrow();
  }

  /** What a part of the kit that is wire is made of. */
  public static Conductor conductor(Design design, Part part) {
    return design.antenna().wires().stream()
        .map(Wire::conductor)
        .filter(conductor -> conductor.name().equals(part.name()))
        .findFirst()
        .orElseThrow();
  }

  /** Kilograms of all parts whose mass is known. */
  public double knownKilograms() {
    return parts.stream().mapToDouble(part -> part.kilograms().orElse(0)).sum();
  }

  /** Kilograms that wires and supports carry, of the parts whose mass is known. */
  public double knownHangingKilograms() {
    return parts.stream().mapToDouble(part -> part.hangingKilograms().orElse(0)).sum();
  }

  /**
   * A doubt if the loads that the design hangs on its wires are not what hangs by its kit list. The
   * design states both: the loads with their places for the mechanics, the kit for whoever packs.
   */
  public Optional<Warning> loadDifference(Design design) {
    double loads =
        design.hangs().values().stream()
            .flatMap(hang -> hang.shape().stream())
            .flatMap(shape -> shape.span().load().points().stream())
            .mapToDouble(load -> load.force().getNorm() / PhysicalConstants.STANDARD_GRAVITY)
            .sum();
    double listed =
        parts.stream()
            .filter(part -> part.kind() != Kind.WIRE)
            .mapToDouble(part -> part.hangingKilograms().orElse(0))
            .sum();
    if (loads == 0 || listed == 0 || Math.abs(listed - loads) <= SAME_LOAD * loads) {
      return Optional.empty();
    }
    return Optional.of(
        new Warning(
            "hanging-load-differs",
            String.format(
                Locale.ROOT,
                "%.2f kg hang besides wire by the kit list%s, but the loads under hang are %.2f kg in"
                    + " all; make them agree",
                listed,
                unknownHanging().isEmpty()
                    ? ""
                    : ", which knows no mass of " + String.join(", ", unknownHanging()),
                loads)));
  }

  /** Parts that hang, at least in part, and whose mass is not known. */
  public List<String> unknownHanging() {
    return parts.stream()
        .filter(part -> part.hangingShare() > 0 && part.kilograms().isEmpty())
        .map(Part::name)
        .toList();
  }

  /** Parts whose mass is not known. */
  public List<String> unknown() {
    return parts.stream().filter(part -> part.kilograms().isEmpty()).map(Part::name).toList();
  }
}
