package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.Design;
import org.spanwire.design.Stage;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.medium.Soils;
import org.spanwire.study.SiteTable;

/**
 * The outcome of {@code spanwire report --on-site}.
 *
 * @param bands the design judged over its bands as it stands, with what that holds for
 * @param table what may be measured where it is put up
 * @param nominal the place of the table that is nearest to the design
 * @param input what identifies the input
 */
public record SiteReport(
    BandsReport bands, SiteTable table, Nominal nominal, DesignReport.Input input) {

  /**
   * Indices of a place in the table.
   *
   * @param ground of the ground
   * @param line of the feed line
   * @param height of the height
   */
  public record Nominal(int ground, int line, int height) {

    /** The place with curves that is nearest to a design. */
    public static Nominal of(SiteTable table, Design design) {
      double length =
          design.feedChain().stream()
              .filter(Stage.Line.class::isInstance)
              .mapToDouble(stage -> ((Stage.Line) stage).length())
              .sum();
      double height = design.parameters().get(table.height().parameter()).value().value();
      Comparator<Nominal> byDistance =
          Comparator.<Nominal>comparingInt(
                  n -> table.grounds().get(n.ground).equals(design.antenna().ground()) ? 0 : 1)
              .thenComparingDouble(
                  n ->
                      table.lineLengths().isEmpty()
                          ? 0
                          : Math.abs(table.lineLengths().get(n.line) - length))
              .thenComparingDouble(n -> Math.abs(table.heights().get(n.height).value() - height));
      List<Nominal> all = new ArrayList<>();
      for (int ground = 0; ground < table.grounds().size(); ground++) {
        for (int line = 0; line < table.lines(); line++) {
          for (int h = 0; h < table.heights().size(); h++) {
            if (table.at(ground, line, h).reason().isEmpty()) {
              all.add(new Nominal(ground, line, h));
            }
          }
        }
      }
      return all.stream()
          .min(byDistance)
          .orElseThrow(
              () ->
                  new IllegalArgumentException(
                      "at none of these heights the design can be modelled: "
                          + table.curves().get(0).reason().orElseThrow()));
    }
  }

  /** The whole page. */
  public String html() {
    Page page =
        new Page("On site", bands.conditions().design().title(), bands.conditions().version());
    page.bands(table.bands().stream().map(band -> band.name()).toList());
    page.sections(
        List.of(
            new SiteUseSection(),
            new SiteSection(this),
            new SiteTableSection(this),
            new ConditionSection(bands, input)));
    page.script("site.js");
    return page.html();
  }

  SiteTable.Place nominalPlace() {
    return table.at(nominal.ground(), nominal.line(), nominal.height());
  }

  List<String> grounds() {
    return table.grounds().stream().map(SiteReport::name).toList();
  }

  private static String name(Ground ground) {
    if (ground instanceof Soil soil) {
      boolean known = Soils.find(soil.name()).isPresent() || soil.table().isPresent();
      return (known ? soil.name() + ": " : "")
          + "permittivity "
          + Numbers.significant(soil.relativePermittivity(), 4)
          + ", "
          + Numbers.significant(1e3 * soil.conductivity(), 4)
          + " mS/m";
    }
    return ground instanceof FreeSpace ? "none: free space" : "perfectly conducting";
  }

  /** Names of the lines; "as designed" where there is no choice. */
  List<String> lines() {
    return table.lineLengths().isEmpty()
        ? List.of("as designed")
        : table.lineLengths().stream().map(m -> Numbers.significant(m, 4) + " m").toList();
  }

  List<String> heights() {
    return table.heights().stream().map(Object::toString).toList();
  }

  /** Why places have no curves, if some have none. */
  Optional<String> missing() {
    return table.curves().stream().flatMap(place -> place.reason().stream()).findFirst();
  }
}
