package org.spanwire.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanwire.Antenna;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Point;
import org.spanwire.medium.PerfectGround;

/** Reads the route of the feed line and holds it to the feed chain and the ground. */
final class FeedLineReader {

  private final Evaluator evaluator;
  private final AntennaReader geometry;

  FeedLineReader(Evaluator evaluator, AntennaReader geometry) {
    this.evaluator = evaluator;
    this.geometry = geometry;
  }

  FeedLine read(Item item, Antenna antenna, List<Stage> chain) {
    Fields fields = item.fields("path", "conductor", "earthed", "chokes", "polarity");
    requireOneLine(item, chain);
    requireTransformerAtFeedpoint(item, chain);
    Item path = fields.required("path", "[[9 m, 0, 0.2 m]]");
    List<Point> points = new ArrayList<>();
    path.items("a list of points after the feedpoint such as [[9 m, 0, 0.2 m]]")
        .forEach(point -> points.add(geometry.point(point)));
    boolean earthed =
        fields
            .optional("earthed")
            .map(e -> e.choice(Map.of("true", true, "false", false)))
            .orElse(false);
    Item place = fields.optional("earthed").orElse(path);
    if (points.isEmpty()) {
      throw path.fault(path.name() + " is empty; expected at least one point after the feedpoint");
    }
    checkEnd(place, earthed, points.get(points.size() - 1), antenna);
    return new FeedLine(
        geometry.conductor(fields.required("conductor", "jacket")),
        points,
        earthed,
        fields.optional("chokes").map(this::chokes).orElse(List.of()),
        fields
            .optional("polarity")
            .map(
                p ->
                    p.choice(
                        Map.of(
                            "first-point", FeedLine.Polarity.FIRST_POINT,
                            "last-point", FeedLine.Polarity.LAST_POINT)))
            .orElse(FeedLine.Polarity.FIRST_POINT));
  }

  /** Transformers and chokes stand at the feedpoint, then comes the line, and no choke after it. */
  private static void requireOneLine(Item item, List<Stage> chain) {
    long lines = chain.stream().filter(Stage.Line.class::isInstance).count();
    if (lines != 1) {
      throw item.fault(
          item.name()
              + " is the route of the feed chain's line, of which there are "
              + lines
              + "; give the feed-chain exactly one");
    }
    boolean behind = false;
    for (Stage stage : chain) {
      behind |= stage instanceof Stage.Line;
      if (behind && stage instanceof Stage.Choke) {
        throw item.fault(
            "the feed-chain has a choke between line and transmitter; with a "
                + item.name()
                + " write it there, as chokes: [{at: 14 m, impedance: 3 kohm}]");
      }
    }
  }

  /** The line ties to the transformer's common node, so nothing may lie between it and the arms. */
  private static void requireTransformerAtFeedpoint(Item item, List<Stage> chain) {
    Optional<Stage> before = Optional.empty();
    for (Stage stage : chain) {
      if (stage instanceof Stage.Line) {
        return;
      }
      if (stage instanceof Stage.Transformer && before.isPresent()) {
        throw item.fault(
            "the feed-chain has "
                + (before.get().kind().startsWith("a") ? "an " : "a ")
                + before.get().kind()
                + " between feedpoint and transformer, which a "
                + item.name()
                + " cannot tie to; move it to the transmitter's side of the transformer");
      }
      if (!(stage instanceof Stage.Choke) && before.isEmpty()) {
        before = Optional.of(stage);
      }
    }
  }

  private static void checkEnd(Item item, boolean earthed, Point end, Antenna antenna) {
    boolean perfect = antenna.ground() instanceof PerfectGround;
    if (earthed && !perfect) {
      throw item.fault(
          "an earthed feed line needs ground: perfect, since no wire may enter soil here; end it"
              + " above the soil with earthed: false, or lead it along a counterpoise");
    }
    if (earthed != (perfect && end.z() == 0)) {
      throw item.fault(
          earthed
              ? "the earthed feed line ends at z = " + end.z() + " m; lead its path to z = 0"
              : "the feed line ends on the ground; write earthed: true, or end it above z = 0");
    }
  }

  private List<FeedLine.Choke> chokes(Item item) {
    List<FeedLine.Choke> chokes = new ArrayList<>();
    for (Item each : item.items("a list such as [{at: 5 m, impedance: 3 kohm}]")) {
      Fields fields = each.fields("at", "impedance");
      LumpedImpedance impedance =
          new ChokeReader(evaluator).impedance(fields.required("impedance", "3 kohm"));
      chokes.add(new FeedLine.Choke(evaluator.position(fields.required("at", "5 m")), impedance));
    }
    return chokes;
  }
}
