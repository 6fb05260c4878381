package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.cli.output.Numbers;
import org.spanwire.cli.output.RatingTables;
import org.spanwire.practice.Ratings;
import org.spanwire.study.BandPortrait;
import org.spanwire.study.BandRating;

/**
 * Voltages, currents and limits.
 *
 * @param report what is reported
 */
record RatingSection(DesignReport report) implements Section {

  private static final int PLACES = 41;

  @Override
  public String id() {
    return "ratings";
  }

  @Override
  public String title() {
    return "Voltages, currents and limits";
  }

  /** The lowest limit over all bands in a mode, in words. */
  static Optional<String> limit(DesignReport report, OperatingMode mode) {
    return report.bands().ratings().stream()
        .min(Comparator.comparingDouble(band -> band.lowest(mode).envelopeWatts(mode)))
        .map(
            band -> {
              BandRating.Limit limit = band.lowest(mode);
              return Numbers.significant(Math.floor(limit.envelopeWatts(mode)), 3)
                  + " W"
                  + (mode == OperatingMode.CARRIER ? " of steady carrier" : " peak")
                  + ", by "
                  + RatingTables.setBy(limit)
                  + " on "
                  + band.band();
            });
  }

  @Override
  public void write(Page page) {
    RatingTables ratings = report.bands().ratingTables().orElseThrow();
    page.paragraph(
        "The transmitter's power goes into the feed chain as through a tuner without loss, so a"
            + " mismatch spares no part.");
    table(
        page,
        "What the parts bear while a steady carrier of "
            + Numbers.significant(report.bands().powerWatts(), 6)
            + " W is sent",
        ratings.loadColumns(),
        ratings.loadRows());
    table(
        page,
        "Largest peak envelope power, and the part that sets it",
        ratings.limitColumns(),
        ratings.limitRows());
    page.paragraph(ratings.key());
    places(page);
  }

  private static void table(
      Page page, String caption, List<String> columns, List<List<String>> cells) {
    Page.TableRows rows = page.table(caption, columns.toArray(new String[0]));
    cells.forEach(row -> rows.bandRow(row.toArray(new String[0])));
  }

  /** Where on the wires the voltage is highest; without a tuner. */
  private void places(Page page) {
    List<List<String>> cells = new ArrayList<>();
    for (BandPortrait portrait : report.portraits()) {
      Ratings.Place highest =
          portrait.ratings().places(PLACES).stream()
              .max(Comparator.comparingDouble(Ratings.Place::volts))
              .orElseThrow();
      cells.add(
          List.of(
              portrait.band(),
              Numbers.fixed(portrait.deliveredWatts(), 1),
              Numbers.fixed(highest.volts(), 0),
              Numbers.fixed(highest.peakVolts(), 0),
              highest.wire(),
              Numbers.fixed(highest.distance(), 1)));
    }
    table(
        page,
        "Highest voltage on the wires at the best match, without a tuner",
        List.of("band", "into the antenna, W", "V rms", "V peak", "on wire", "m along it"),
        cells);
    page.paragraph(
        "Counted from the wire's first point; along an arm to its last point from the feedpoint.");
  }
}
