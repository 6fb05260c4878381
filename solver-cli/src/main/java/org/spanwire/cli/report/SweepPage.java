package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepRow;

/**
 * A sweep over a grid as a page: curves over one parameter, maps over two, for more a map for each
 * combination of the first ones; and every row as a table.
 *
 * @param sweep the sweep
 * @param rows all of its rows
 * @param tolerance wanted relative accuracy of impedances
 * @param version version of the program
 */
public record SweepPage(Sweep sweep, List<SweepRow> rows, double tolerance, String version) {

  /** More would make a page that no browser likes. */
  private static final int MOST_ROWS = 20_000;

  private static final int MOST_PICTURES = 80;

  /** Takes a copy. */
  public SweepPage {
    rows = List.copyOf(rows);
  }

  /** Why a sweep is no page, or an empty text. */
  public static String obstacle(Sweep sweep) {
    if (!(sweep.space() instanceof ParameterGrid grid)) {
      return "draws a grid; leave out --sample, or take --format csv";
    }
    if (sweep.rows().count() > MOST_ROWS) {
      return String.format(
          "%d rows are too many for a page, which takes %d; give smaller counts, or take --format"
              + " csv",
          sweep.rows().count(), MOST_ROWS);
    }
    long pictures =
        slices(grid) * SweepGrid.groups(sweep).size() * sweep.request().columns().size();
    return pictures > MOST_PICTURES
        ? String.format(
            "%d pictures are too many for a page, which takes %d; name the parameters with most"
                + " values last, or give smaller counts",
            pictures, MOST_PICTURES)
        : "";
  }

  /** Number of combinations of all parameters but the two that are drawn. */
  private static long slices(ParameterGrid grid) {
    return grid.axes().stream()
        .limit(Math.max(0, grid.axes().size() - 2))
        .mapToLong(axis -> axis.values().size())
        .reduce(1, (a, b) -> a * b);
  }

  /** The whole page. */
  public String html() {
    SweepGrid grid = new SweepGrid(sweep, rows);
    long count = slices((ParameterGrid) sweep.space());
    long each = sweep.space().count() / count;
    int leading = Math.max(0, grid.axes().size() - 2);
    List<SweepPictures.Slice> slices =
        LongStream.range(0, count)
            .mapToObj(
                i ->
                    new SweepPictures.Slice(
                        grid.settings(sweep.space().at(i * each), leading), i * each))
            .toList();
    List<SweepGrid.Group> groups = SweepGrid.groups(sweep);
    Page page = new Page("Sweep", sweep.base().title(), version);
    page.choice(
        count > 1 ? "Slices to show" : "Frequencies to show",
        count > 1
            ? slices.stream().map(SweepPictures.Slice::name).toList()
            : groups.stream().map(SweepGrid.Group::name).toList());
    List<Section> sections = new ArrayList<>();
    sections.add(new SweepSummary(grid));
    for (int column = 0; column < grid.columns().size(); column++) {
      sections.add(new SweepPictures(grid, column, groups, slices));
    }
    sections.add(new SweepTable(grid));
    sections.add(new SweepConditions(grid, tolerance, version));
    page.sections(sections);
    return page.html();
  }
}
