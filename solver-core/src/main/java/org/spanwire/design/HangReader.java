package org.spanwire.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Span;
import org.spanwire.geometry.SpanLoad;
import org.spanwire.geometry.SpanShape;
import org.spanwire.medium.MechanicalProperties;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.PhysicalConstants;

/** Reads how a wire hangs, and hangs it. */
final class HangReader {

  private static final double SAME_LENGTH = 1e-9;

  private final Evaluator evaluator;

  HangReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  /** A mass at a place of the wire. */
  private record Load(Position at, double mass) {}

  /**
   * Hangs a wire.
   *
   * @param ends the two supports
   */
  Hang hang(String wire, Item item, List<Point> ends, MechanicalProperties mechanical) {
    Fields fields = item.fields("tension", "sag", "length", "loads");
    String rule = fields.only("tension", "sag", "length");
    if (ends.size() != 2) {
      throw item.fault(
          item.name()
              + " hangs a path of "
              + ends.size()
              + " points; expected two, the supports: the points between follow from the hanging");
    }
    List<Load> loads =
        fields
            .optional("loads")
            .map(l -> l.items("a list such as [{at: 36 %, mass: 1.8 kg}]").stream().map(this::load))
            .map(stream -> stream.toList())
            .orElse(List.of());
    Item given = fields.required(rule, "");
    Dimension dimension = rule.equals("tension") ? Dimension.FORCE : Dimension.LENGTH;
    double value =
        rule.equals("sag")
            ? evaluator.notNegative(given, dimension)
            : evaluator.positive(given, dimension);
    if (rule.equals("sag") && value == 0) {
      return new Hang(wire, mechanical, Optional.empty());
    }
    Function<Span, SpanShape> hanging =
        switch (rule) {
          case "tension" -> span -> span.ofTension(value);
          case "sag" -> span -> span.ofSag(value);
          default -> span -> span.ofLength(value);
        };
    return new Hang(
        wire, mechanical, Optional.of(item.checked(() -> shape(ends, mechanical, loads, hanging))));
  }

  private Load load(Item item) {
    Fields fields = item.fields("at", "mass");
    return new Load(
        evaluator.position(fields.required("at", "36 %")),
        evaluator.positive(fields.required("mass", "1.8 kg"), Dimension.MASS));
  }

  /** Where a load stands as a distance, the fraction follows from the length: repeated to rest. */
  private static SpanShape shape(
      List<Point> ends,
      MechanicalProperties mechanical,
      List<Load> loads,
      Function<Span, SpanShape> hanging) {
    double length = ends.get(0).distance(ends.get(1));
    SpanShape shape = null;
    for (int i = 0; i < 50; i++) {
      Span span =
          new Span(
              ends.get(0),
              ends.get(1),
              spanLoad(mechanical, loads, length),
              Double.POSITIVE_INFINITY);
      shape = hanging.apply(span);
      if (Math.abs(shape.length() - length) <= SAME_LENGTH * length) {
        return shape;
      }
      length = shape.length();
    }
    return shape;
  }

  private static SpanLoad spanLoad(
      MechanicalProperties mechanical, List<Load> loads, double length) {
    double gravity = PhysicalConstants.STANDARD_GRAVITY;
    List<SpanLoad.PointLoad> points = new ArrayList<>();
    for (Load load : loads) {
      points.add(
          new SpanLoad.PointLoad(
              load.at().distanceAlong(length) / length,
              new Vector3D(0, 0, -load.mass() * gravity)));
    }
    return new SpanLoad(new Vector3D(0, 0, -mechanical.massPerMetre() * gravity), points);
  }
}
