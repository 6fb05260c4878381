package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.spanwire.design.Design;
import org.spanwire.design.FeedLine;
import org.spanwire.design.Parameter;
import org.spanwire.design.Stage;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.medium.Soils;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.SiteStudy;
import org.spanwire.study.WorstSwrMap;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;
import picocli.CommandLine.Option;

/** What an antenna may meet where it is put up. */
final class SiteOptions {

  private static final List<String> SOILS = List.of("very-dry", "medium-dry", "wet-ground");
  private static final int HEIGHTS_PER_SIDE = 2;
  private static final int LENGTHS_TO_AVOID = 9;

  @Option(
      names = "--heights",
      paramLabel = "H",
      split = ",",
      converter = Converters.Length.class,
      description =
          "On site: heights to choose from, such as 5m,7m,9m; default: over the limits of the"
              + " parameter that --map names second.")
  private List<Double> heights = new ArrayList<>();

  @Option(
      names = "--soils",
      paramLabel = "NAME",
      split = ",",
      description =
          "On site: soils to choose from, by name; default: the design's, very-dry, medium-dry,"
              + " wet-ground.")
  private List<String> soils = new ArrayList<>();

  @Option(
      names = "--line-lengths",
      paramLabel = "FROM:TO:COUNT",
      converter = Converters.Lengths.class,
      description =
          "On site: lengths of the feed line to choose from; on the install sheet: lengths to look"
              + " at for those to avoid. Default: half to one and a half times the design's.")
  private Optional<List<Double>> lineLengths = Optional.empty();

  /** Refuses what the page would not show. */
  void check(boolean onSite, boolean installSheet) {
    if (!onSite && !(heights.isEmpty() && soils.isEmpty())) {
      throw new InputException(
          (heights.isEmpty() ? "--soils" : "--heights")
              + ": is for the page on site; add --on-site");
    }
    if (!onSite && !installSheet && lineLengths.isPresent()) {
      throw new InputException(
          "--line-lengths: is for the page on site and the install sheet; add --on-site or"
              + " --install-sheet");
    }
  }

  /** Everything the options name; checked, nothing solved. */
  SiteStudy study(Design design, String heightName) {
    Parameter height = design.parameters().get(heightName);
    if (height == null || !height.value().dimension().equals(Dimension.LENGTH)) {
      throw new InputException(
          design.source()
              + ": has no parameter '"
              + heightName
              + "' for the height; name it by --map offset,NAME");
    }
    if (design.antenna().ground() instanceof FreeSpace) {
      throw new InputException(
          design.source()
              + ": has no ground to be at a height above; add ground: {soil: medium-dry}");
    }
    try {
      return new SiteStudy(design, axis(height), grounds(design), lengths(design));
    } catch (IllegalArgumentException e) {
      throw new InputException(design.source() + ": " + e.getMessage());
    }
  }

  private ParameterGrid.Axis axis(Parameter height) {
    if (heights.isEmpty()) {
      return WorstSwrMap.axis(height, HEIGHTS_PER_SIDE);
    }
    return new ParameterGrid.Axis(
        height.name(),
        heights.stream().sorted().map(metres -> new Quantity(metres, Dimension.LENGTH)).toList());
  }

  private List<Ground> grounds(Design design) {
    Set<Ground> grounds = new LinkedHashSet<>();
    if (soils.isEmpty()) {
      grounds.add(design.antenna().ground());
    }
    for (String name : soils.isEmpty() ? SOILS : soils) {
      Soil soil =
          Soils.find(name)
              .orElseThrow(
                  () ->
                      new InputException(
                          "--soils "
                              + name
                              + ": is no soil known by name; known are "
                              + Soils.all().stream()
                                  .map(Soil::name)
                                  .collect(Collectors.joining(", "))));
      grounds.add(soil);
    }
    return List.copyOf(grounds);
  }

  private List<Double> lengths(Design design) {
    if (lineLengths.isPresent()) {
      return lineLengths.get();
    }
    boolean free = design.feedLine().stream().noneMatch(FeedLine::earthed);
    return SiteStudy.lines(design) == 1 && free
        ? List.of(round(0.5 * length(design)), length(design), round(1.5 * length(design)))
        : List.of();
  }

  /** Lengths to look at for those to avoid; none if the design's line has no free end. */
  List<Double> lengthsToAvoid(Design design) {
    if (design.feedLine().isEmpty() || design.feedLine().get().earthed()) {
      return List.of();
    }
    double length = length(design);
    return lineLengths.orElseGet(
        () ->
            IntStream.range(0, LENGTHS_TO_AVOID)
                .mapToObj(i -> round(length * (0.5 + (double) i / (LENGTHS_TO_AVOID - 1))))
                .distinct()
                .toList());
  }

  /** To half a metre, as lines are cut. */
  private static double round(double metres) {
    return Math.max(0.5, Math.rint(2 * metres) / 2);
  }

  /** Of all lines of the chain in metres. */
  static double length(Design design) {
    return design.feedChain().stream()
        .filter(Stage.Line.class::isInstance)
        .mapToDouble(stage -> ((Stage.Line) stage).length())
        .sum();
  }
}
