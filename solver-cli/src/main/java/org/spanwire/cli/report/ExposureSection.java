package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.spanwire.cli.output.Conditions;
import org.spanwire.cli.output.ExposureReport;
import org.spanwire.cli.output.ExposureText;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.ExposureLimit;
import org.spanwire.practice.FarFieldScreen;
import org.spanwire.practice.KeepOut;
import org.spanwire.study.BandExposure;

/**
 * How far people must keep away.
 *
 * @param report what is reported
 */
record ExposureSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "exposure";
  }

  @Override
  public String title() {
    return "How far people must keep away";
  }

  /**
   * The largest distance of any limit by band, with its uncertainty added, in words for each floor.
   */
  static Map<String, String> distances(DesignReport report) {
    Map<String, String> words = new LinkedHashMap<>();
    for (double floor : report.exposure().rules().floors()) {
      String place = floor == 0 ? "on the ground" : Numbers.significant(floor, 3) + " m up";
      words.put(
          "keep away, " + place,
          report.exposure().bands().stream()
              .map(band -> band.band() + ": " + metres(furthest(band, floor)))
              .collect(Collectors.joining("; ")));
    }
    return words;
  }

  private static double furthest(BandExposure band, double floor) {
    return band.rows().stream()
        .map(BandExposure.Row::keepOut)
        .filter(keepOut -> keepOut.floor() == floor)
        .mapToDouble(KeepOut::longest)
        .max()
        .orElse(0);
  }

  private static String metres(double distance) {
    return distance == 0 ? "limits kept" : Numbers.fixed(ExposureText.up(distance), 1) + " m";
  }

  @Override
  public void write(Page page) {
    ExposureReport exposure = report.exposure();
    page.paragraph(ExposureReport.NO_CERTIFICATE);
    for (double floor : exposure.rules().floors()) {
      table(
          page,
          ExposureText.floorHeading(floor),
          "power at antenna",
          band -> Numbers.fixed(band.antennaWatts(), 1) + " W",
          (band, limit) ->
              ExposureText.find(band, floor, limit).map(r -> ExposureText.distance(r.keepOut())));
    }
    page.paragraph(ExposureText.KEY);
    double first = exposure.rules().floors().get(0);
    table(
        page,
        "What the far field alone would say, metres from the antenna",
        "valid from",
        band ->
            Numbers.fixed(FarFieldScreen.validFrom(band.rows().get(0).keepOut().frequencyHz()), 1)
                + " m",
        (band, limit) ->
            ExposureText.find(band, first, limit).map(r -> ExposureText.screen(r.screen())));
    page.paragraph(
        "Invalid: nearer than a wavelength over 2 pi, where the formula does not hold. Go by the"
            + " tables above.");
    page.list(ExposureText.CAUTIONS, "cautions");
    page.list(
        ExposureText.rulesInWords(exposure).stream().map(ExposureSection::words).toList(), "plain");
  }

  private static String words(Conditions.Entry entry) {
    return entry.name() + ": " + entry.value();
  }

  /** A cell for a band and a limit, if the limit covers the band. */
  private interface Cell {
    Optional<String> of(BandExposure band, ExposureLimit limit);
  }

  private void table(
      Page page,
      String caption,
      String second,
      Function<BandExposure, String> secondOf,
      Cell cell) {
    List<ExposureLimit> limits = report.exposure().rules().limits();
    List<String> columns = new ArrayList<>(List.of("band", second));
    limits.forEach(limit -> columns.add(limit.name()));
    Page.TableRows rows = page.table(caption, columns.toArray(new String[0]));
    for (BandExposure band : report.exposure().bands()) {
      List<String> cells = new ArrayList<>(List.of(band.band(), secondOf.apply(band)));
      limits.forEach(limit -> cells.add(cell.of(band, limit).orElse("-")));
      rows.bandRow(cells.toArray(new String[0]));
    }
  }
}
