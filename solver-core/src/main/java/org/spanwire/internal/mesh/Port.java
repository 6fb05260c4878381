package org.spanwire.internal.mesh;

import java.util.List;
import java.util.stream.Stream;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;

/**
 * A gap asked for by a feed or a fitting.
 *
 * @param subject feed or fitting
 * @param name its name
 * @param wire name of the wire
 * @param at place of its centre
 * @param gap wanted width in metres; NaN for two wire diameters
 */
public record Port(
    GeometryException.Subject subject, String name, String wire, Position at, double gap) {

  /** The port of a feed. */
  public static Port of(Feed feed) {
    return new Port(
        GeometryException.Subject.FEED,
        feed.name(),
        feed.wire(),
        feed.at(),
        feed.gap().orElse(Double.NaN));
  }

  /** The port of a fitting. */
  public static Port of(Fitting fitting) {
    return new Port(
        GeometryException.Subject.FITTING,
        fitting.name(),
        fitting.wire(),
        fitting.at(),
        fitting.gap().orElse(Double.NaN));
  }

  /** The ports of feeds, then those of fittings. */
  public static List<Port> of(List<Feed> feeds, List<Fitting> fittings) {
    return Stream.concat(feeds.stream().map(Port::of), fittings.stream().map(Port::of)).toList();
  }

  /** Width of the gap in metres on its wire. */
  double gap(Wire on) {
    return Double.isNaN(gap) ? 4 * on.conductor().radius() : gap;
  }

  GeometryException fault(String message) {
    return new GeometryException(
        subject,
        name,
        subject.name().toLowerCase(java.util.Locale.ROOT) + " '" + name + "': " + message);
  }
}
