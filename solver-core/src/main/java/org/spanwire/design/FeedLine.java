package org.spanwire.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;

/**
 * The route of the feed chain's line: its outside as a conductor of the antenna.
 *
 * @param conductor the outside of the line
 * @param path the points after the feedpoint, where it begins; at least one
 * @param earthed whether its far end stands on perfect ground; it ends free if not
 * @param chokes chokes along it
 * @param polarity which side of the radiator the transformer's hot terminal goes to
 */
public record FeedLine(
    Conductor conductor, List<Point> path, boolean earthed, List<Choke> chokes, Polarity polarity) {

  /** Name of the line among the wires and in messages. */
  public static final String NAME = "feed-line";

  /**
   * A choke along the line.
   *
   * @param at where, from the feedpoint
   * @param impedance its common-mode impedance
   */
  public record Choke(Position at, LumpedImpedance impedance) {
    /** Checks that both are there. */
    public Choke {
      Objects.requireNonNull(at, "at");
      Objects.requireNonNull(impedance, "impedance");
    }
  }

  /** The side of the radiator that the hot terminal is joined to. */
  public enum Polarity {
    /** The arm towards the wire's first point. */
    FIRST_POINT,
    /** The arm towards the wire's last point. */
    LAST_POINT
  }

  /** Copies the lists. */
  public FeedLine {
    Objects.requireNonNull(conductor, "conductor");
    Objects.requireNonNull(polarity, "polarity");
    path = List.copyOf(path);
    chokes = List.copyOf(chokes);
    if (path.isEmpty()) {
      throw new IllegalArgumentException("feed line has no point but the feedpoint; add one");
    }
  }

  /**
   * The line with another length: its path cut short, or led on in the direction of its last leg.
   *
   * @param feedpoint where it begins
   * @param metres its length, positive
   */
  public FeedLine ofLength(Point feedpoint, double metres) {
    List<Point> points = new ArrayList<>();
    Point from = feedpoint;
    double left = metres;
    for (int i = 0; i < path.size(); i++) {
      Point to = path.get(i);
      double leg = from.distance(to);
      boolean last = i == path.size() - 1;
      if (last || left <= leg) {
        double t = left / leg;
        points.add(
            new Point(
                from.x() + t * (to.x() - from.x()),
                from.y() + t * (to.y() - from.y()),
                from.z() + t * (to.z() - from.z())));
        break;
      }
      points.add(to);
      left -= leg;
      from = to;
    }
    return new FeedLine(conductor, points, earthed, chokes, polarity);
  }

  /** The line with its hot terminal on a side of the radiator. */
  public FeedLine withPolarity(Polarity side) {
    return new FeedLine(conductor, path, earthed, chokes, side);
  }
}
