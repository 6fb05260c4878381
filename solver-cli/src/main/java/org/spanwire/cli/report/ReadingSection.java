package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.BandCurves;
import org.spanwire.study.BandResponse;
import org.spanwire.study.Plane;

/**
 * What a meter at the transmitter's place is expected to read at first switch-on, and what it means
 * if it does not. The causes are common practice, no source; their figures are the design's.
 *
 * @param report what is reported
 */
record ReadingSection(DesignReport report) implements Section {

  private static final List<List<String>> CAUSES =
      List.of(
          List.of(
              "best match lower in frequency on every band, by the same share",
              "the wire is electrically too long: wet or thicker insulation, stretch, a longer cut",
              "trim a little at a time by the trim table, both legs in their ratio"),
          List.of(
              "best match higher on every band, by the same share",
              "the wire is too short, or its insulation thinner than in the design",
              "let out the fold-back or add wire; trim nothing"),
          List.of(
              "one or two bands off, the others as expected",
              "another height or another soil than the design's; a roof, gutter or tree nearby",
              "compare with the table of deviations; change the height before the wire"),
          List.of(
              "SWR low and flat everywhere, outside the bands as well",
              "loss hides the antenna: water in the line or connectors, a faulty transformer",
              "measure the line alone with its far end open, then the transformer on a resistor"),
          List.of(
              "SWR high everywhere, no dip at all",
              "a break or a short: connector, terminal, wire",
              "transmitter off: test for continuity from leg to line"),
          List.of(
              "readings move when the line is touched, moved or coiled",
              "current on the outside of the line",
              "check the choke; take another length of line"),
          List.of(
              "SWR climbs while transmitting and recovers afterwards",
              "transformer or choke is at its limit of heat",
              "stop; send with less power or in a mode with less average power"),
          List.of(
              "readings lower after rain, frost or snow, and back when dry",
              "water and ice on the insulation",
              "leave the wire as it is; take off ice only from a safe place"));

  @Override
  public String id() {
    return "readings";
  }

  @Override
  public String title() {
    return "First switch-on: what to read";
  }

  @Override
  public void write(Page page) {
    page.paragraph(
        "Least power, nobody near wire or line. Read the SWR at the transmitter's end of the line,"
            + " without a tuner. In brackets: from lowest to highest over the design's spreads.");
    expected(page);
    if (!report.curves().get(0).extremes().isEmpty()) {
      deviations(page);
    }
    Page.TableRows causes =
        page.table("What a deviation means", "it reads", "likely because", "what to do");
    causes.words();
    CAUSES.forEach(cause -> causes.row(cause.toArray(new String[0])));
  }

  private void expected(Page page) {
    Page.TableRows rows =
        page.table(
            "SWR expected",
            "band",
            "at the lower edge",
            "at the upper edge",
            "lowest",
            "lowest at, MHz");
    for (int band = 0; band < report.curves().size(); band++) {
      BandCurves curves = report.curves().get(band);
      BandResponse response = report.bands().bands().get(band);
      rows.bandRow(
          curves.band().name(),
          at(curves, curves.band().lowHz()),
          at(curves, curves.band().highHz()),
          Numbers.swr(response.at(Plane.TRANSMITTER).best().swr()),
          Numbers.fixed(response.at(Plane.TRANSMITTER).best().frequencyHz() / 1e6, 3));
    }
  }

  private static String at(BandCurves curves, double hertz) {
    int i = curves.frequenciesHz().indexOf(hertz);
    String swr = Numbers.swr(curves.nominal().swr().get(i));
    return curves.extremes().isEmpty()
        ? swr
        : swr
            + " ("
            + Numbers.swr(curves.lowestSwr().get(i))
            + " to "
            + Numbers.swr(curves.highestSwr().get(i))
            + ")";
  }

  /** Where every band has its best match as something deviates. */
  private void deviations(Page page) {
    List<BandCurves.Curve> first = report.curves().get(0).extremes();
    List<String> columns = new ArrayList<>(List.of("band", "as designed"));
    first.forEach(curve -> columns.add(SwrSection.name(curve)));
    Page.TableRows rows =
        page.table(
            "SWR at both edges, and where it is lowest, when one thing deviates",
            columns.toArray(new String[0]));
    for (BandCurves curves : report.curves()) {
      List<String> cells =
          new ArrayList<>(List.of(curves.band().name(), deviation(curves, curves.nominal())));
      first.forEach(
          one -> cells.add(curves.like(one).map(curve -> deviation(curves, curve)).orElse("-")));
      rows.bandRow(cells.toArray(new String[0]));
    }
    page.paragraph(
        "A dash in place of a frequency: the curve falls or rises over the whole range shown, so its"
            + " lowest place lies outside.");
  }

  private static String deviation(BandCurves curves, BandCurves.Curve curve) {
    List<Double> swr = curve.swr();
    int best =
        IntStream.range(0, swr.size())
            .reduce((a, b) -> swr.get(b) < swr.get(a) ? b : a)
            .orElseThrow();
    boolean outside = best == 0 || best == swr.size() - 1;
    return Numbers.swr(swr.get(curves.frequenciesHz().indexOf(curves.band().lowHz())))
        + " and "
        + Numbers.swr(swr.get(curves.frequenciesHz().indexOf(curves.band().highHz())))
        + "; "
        + (outside ? "-" : Numbers.fixed(curves.frequenciesHz().get(best) / 1e6, 2) + " MHz");
  }
}
