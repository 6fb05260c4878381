package org.spanwire.cli.report;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.cli.output.Numbers;
import org.spanwire.geometry.Feed;
import org.spanwire.practice.Corona;
import org.spanwire.practice.Ratings;
import org.spanwire.practice.WireCooling;
import org.spanwire.study.BandPortrait;

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

  private static Ratings.Limit lowest(BandPortrait portrait, OperatingMode mode) {
    return portrait.ratings().limits(PLACES, Corona.WEATHERED, WireCooling.SUMMER, mode).get(0);
  }

  /** The lowest limit that the wires set over all bands, in words. */
  static Optional<String> limit(DesignReport report) {
    return report.portraits().stream()
        .min(
            Comparator.comparingDouble(
                p -> lowest(p, OperatingMode.CARRIER).envelopeWatts(OperatingMode.CARRIER)))
        .map(
            p -> {
              Ratings.Limit limit = lowest(p, OperatingMode.CARRIER);
              return watts(limit.envelopeWatts(OperatingMode.CARRIER))
                  + " into the antenna on "
                  + p.band()
                  + " ("
                  + cause(limit)
                  + ", continuous carrier); parts of the feed chain usually bear less";
            });
  }

  private static String cause(Ratings.Limit limit) {
    return (limit.cause() == Ratings.Limit.Cause.CORONA ? "corona" : "heat")
        + " on "
        + limit.part();
  }

  private static String watts(double watts) {
    return Double.isInfinite(watts)
        ? "none"
        : watts >= 10_000
            ? Numbers.significant(watts / 1000, 2) + " kW"
            : Numbers.significant(watts, 2) + " W";
  }

  @Override
  public void write(Page page) {
    page.paragraph(
        "At the best match of each band and the power that the feed chain delivers there. Voltages"
            + " of wires are those against the ground, to some percent over soil. The limit is that of"
            + " the wires alone, by corona on a weathered wire or by heat in still summer air, as the"
            + " average power of a continuous carrier into the antenna.");
    Page.TableRows rows =
        page.table(
            "Voltage and current, rms",
            "band",
            "into the antenna",
            "feedpoint",
            "feedpoint",
            "highest on wire",
            "peak",
            "where",
            "largest current",
            "wires' limit",
            "set by");
    for (BandPortrait portrait : report.portraits()) {
      row(rows, portrait);
    }
  }

  private void row(Page.TableRows rows, BandPortrait portrait) {
    List<Ratings.Place> places = portrait.ratings().places(PLACES);
    Ratings.Place volts =
        places.stream().max(Comparator.comparingDouble(Ratings.Place::volts)).orElseThrow();
    double amperes = places.stream().mapToDouble(Ratings.Place::amperes).max().orElseThrow();
    Ratings.Limit limit = lowest(portrait, OperatingMode.CARRIER);
    Feed feed = report.design().antenna().feeds().get(0);
    double resistance = portrait.operation().feed(feed.name()).impedance().getReal();
    double current = Math.sqrt(portrait.deliveredWatts() / resistance);
    double voltage = current * portrait.operation().feed(feed.name()).impedance().abs();
    rows.bandRow(
        portrait.band(),
        watts(portrait.deliveredWatts()),
        Numbers.significant(voltage, 3) + " V",
        Numbers.significant(current, 3) + " A",
        Numbers.significant(volts.volts(), 3) + " V",
        Numbers.significant(volts.peakVolts(), 3) + " V",
        volts.wire() + ", " + Numbers.fixed(volts.distance(), 1) + " m",
        Numbers.significant(amperes, 3) + " A",
        watts(limit.envelopeWatts(OperatingMode.CARRIER)),
        cause(limit));
  }
}
