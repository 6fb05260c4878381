package org.spanwire.cli.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jsoup.nodes.Element;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.Design;
import org.spanwire.design.FeedLine;
import org.spanwire.design.Hang;
import org.spanwire.design.Parameter;
import org.spanwire.design.Spread;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/**
 * Where everything goes.
 *
 * @param report what is reported
 */
record HangSection(DesignReport report) implements Section {

  /** Least height in metres of a wire's end: common practice, no source. */
  private static final double OUT_OF_REACH = 3;

  @Override
  public String id() {
    return "hang";
  }

  @Override
  public String title() {
    return "Where to hang it";
  }

  @Override
  public void write(Page page) {
    Design design = report.design();
    Element terms = page.terms();
    heights(report).ifPresent(heights -> Page.term(terms, "height", heights));
    HeightRanges.of(report).ifPresent(h -> Page.term(terms, h.question(), h.answer()));
    Page.term(terms, "lowest wire", lowest());
    for (Feed feed : design.antenna().feeds()) {
      Page.term(terms, "feedpoint " + feed.name(), place(design, feed));
    }
    design.feedLine().ifPresent(line -> Page.term(terms, "feed line", line(line)));
    ExposureSection.distances(report)
        .forEach((floor, distances) -> Page.term(terms, floor, distances));
    Page.TableRows rows =
        page.table("Points in metres", "wire", "point", "x", "y", "above the ground");
    for (Wire wire : report.installation().wires()) {
      List<Point> path = wire.path();
      for (int i = 0; i < path.size(); i++) {
        boolean end = i == 0 || i == path.size() - 1;
        if (end || !hangsInACurve(wire)) {
          rows.row(
              wire.name(),
              i == 0 ? "first" : end ? "last" : "bend " + i,
              Numbers.fixed(path.get(i).x(), 2),
              Numbers.fixed(path.get(i).y(), 2),
              Numbers.fixed(path.get(i).z(), 2));
        }
      }
    }
  }

  /** Whether gravity bends the wire: its ends alone then tell where to hang it. */
  private boolean hangsInACurve(Wire wire) {
    Hang hang = report.design().hangs().get(wire.name());
    return hang != null && hang.shape().isPresent();
  }

  /** The parameter for the height and what is uncertain of it, if the design has one. */
  static Optional<String> heights(DesignReport report) {
    return report
        .map()
        .map(map -> report.design().parameters().get(map.up().parameter()))
        .filter(parameter -> parameter.value().dimension().equals(Dimension.LENGTH))
        .map(HangSection::range);
  }

  private static String range(Parameter parameter) {
    Quantity value = parameter.value();
    String words = value + " as designed";
    if (parameter.spread().isPresent()) {
      Spread spread = parameter.spread().get();
      double half =
          spread instanceof Spread.Uniform uniform
              ? uniform.halfWidth().value()
              : 2 * ((Spread.Normal) spread).sigma().value();
      words +=
          ", "
              + new Quantity(parameter.nearestAllowed(value.value() - half), value.dimension())
              + " to "
              + new Quantity(parameter.nearestAllowed(value.value() + half), value.dimension())
              + " taken into account";
    }
    return words;
  }

  private String lowest() {
    Point lowest = null;
    String name = "";
    for (Wire wire : report.design().antenna().wires()) {
      for (Point point : wire.path()) {
        if (lowest == null || point.z() < lowest.z()) {
          lowest = point;
          name = wire.name();
        }
      }
    }
    return name
        + " comes down to "
        + Numbers.fixed(lowest.z(), 2)
        + " m"
        + (lowest.z() < OUT_OF_REACH
            ? ": within reach, so fence it off, or hang it higher"
            : "; keep all of it at least 3 m up, and 3 m from any power line even when it falls");
  }

  private static String place(Design design, Feed feed) {
    Wire wire = design.antenna().wire(feed.wire()).orElseThrow();
    double at = feed.at().distanceAlong(wire.length());
    Point point = wire.at(at);
    return String.format(
        Locale.ROOT,
        "on wire %s, %.2f m from its first point and %.2f m from its last; x %.2f m, y %.2f m,"
            + " %.2f m up",
        wire.name(),
        at,
        wire.length() - at,
        point.x(),
        point.y(),
        point.z());
  }

  private String line(FeedLine line) {
    Wire route =
        report.installation().wires().stream()
            .filter(wire -> wire.name().equals(FeedLine.NAME))
            .findFirst()
            .orElseThrow();
    boolean last = line.polarity() == FeedLine.Polarity.LAST_POINT;
    return Numbers.fixed(route.length(), 2)
        + " m from the feedpoint along the points below; hot terminal to the arm towards the wire's "
        + (last ? "last" : "first")
        + " point; "
        + (line.earthed() ? "earthed" : "not earthed")
        + " at its far end";
  }
}
