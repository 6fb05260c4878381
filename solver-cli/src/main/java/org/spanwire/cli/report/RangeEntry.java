package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.cli.output.Conditions;
import org.spanwire.cli.output.ExposureText;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.ExposureLimit;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.practice.SpanState;
import org.spanwire.study.BandCurves;
import org.spanwire.study.BandExposure;
import org.spanwire.study.BandResponse;
import org.spanwire.study.BandSummary;
import org.spanwire.study.Plane;
import org.spanwire.study.Verdict;

/**
 * One design in a comparison, in words.
 *
 * @param title of the design
 * @param address of its own page, relative to the comparison
 * @param bands its bands
 * @param facts answers by table and column; all entries have the same tables and columns
 */
public record RangeEntry(
    String title, String address, List<InBand> bands, Map<String, Map<String, Answer>> facts) {

  /** Column of the power that some part does not bear. */
  static final String LIMIT = "largest power";

  /**
   * A design in a band.
   *
   * @param band name of the band
   * @param lowHz its lower edge in hertz
   * @param verdict by the worst SWR of the design as it stands
   * @param worst that SWR
   * @param worstWithSpreads worst SWR with each uncertain parameter at the ends of its spread;
   *     empty if the design states no spread
   */
  public record InBand(
      String band, double lowHz, Verdict verdict, double worst, OptionalDouble worstWithSpreads) {}

  /**
   * An answer, or why there is none.
   *
   * @param text the answer; empty if there is none
   * @param why the reason if there is none, otherwise empty
   */
  public record Answer(String text, String why) {

    static Answer of(String text) {
      return new Answer(text, "");
    }

    static Answer none(String why) {
      return new Answer("", why);
    }
  }

  /** Takes copies that keep their order. */
  public RangeEntry {
    bands = List.copyOf(bands);
    facts = new LinkedHashMap<>(facts);
  }

  /**
   * What a report says, as far as it is compared.
   *
   * @param address of the report's own page, relative to the comparison
   */
  public static RangeEntry of(DesignReport report, String address) {
    Map<String, Map<String, Answer>> facts = new LinkedHashMap<>();
    facts.put("Power and people", power(report));
    facts.put("Size and weight", size(report));
    facts.put("What the figures hold for", conditions(report));
    return new RangeEntry(report.design().title(), address, bands(report), facts);
  }

  private static List<InBand> bands(DesignReport report) {
    List<InBand> bands = new ArrayList<>();
    for (int i = 0; i < report.bands().bands().size(); i++) {
      BandResponse band = report.bands().bands().get(i);
      BandCurves curves = report.curves().get(i);
      bands.add(
          new InBand(
              band.band(),
              band.range().lowHz(),
              band.verdict(),
              band.at(Plane.TRANSMITTER).worst().swr(),
              curves.extremes().isEmpty()
                  ? OptionalDouble.empty()
                  : OptionalDouble.of(curves.worstSwrInBand())));
    }
    return bands;
  }

  private static Map<String, Answer> power(DesignReport report) {
    Map<String, Answer> facts = new LinkedHashMap<>();
    facts.put(
        LIMIT,
        RatingSection.limit(report, OperatingMode.CARRIER)
            .map(Answer::of)
            .orElseGet(() -> Answer.none("no part of it has a known limit")));
    BandSummary summary = report.bands().summary();
    facts.put(
        "gets hottest",
        summary
            .burnsFirst()
            .map(
                heat ->
                    Answer.of(
                        heat.heat().part()
                            + ", "
                            + Numbers.fixed(heat.heat().watts(), 1)
                            + " W on "
                            + heat.band()))
            .orElseGet(
                () ->
                    Answer.none(
                        report.bands().unknownHeat().isEmpty()
                            ? "it has no transformer and no choke"
                            : "not known: " + String.join("; ", report.bands().unknownHeat()))));
    facts.put("keep away", keepAway(report));
    facts.put(
        "judged by",
        Answer.of(
            report.exposure().rules().limits().stream()
                    .map(ExposureLimit::name)
                    .collect(Collectors.joining(", "))
                + "; "
                + report.exposure().rules().mode().word()
                + ", "
                + Numbers.significant(100 * report.exposure().rules().transmitting(), 3)
                + " % of the time"));
    return facts;
  }

  /** The largest distance over bands, floors and limits, its uncertainty added. */
  private static Answer keepAway(DesignReport report) {
    String furthest = "";
    double most = 0;
    for (BandExposure band : report.exposure().bands()) {
      for (BandExposure.Row row : band.rows()) {
        if (row.keepOut().longest() > most) {
          most = row.keepOut().longest();
          furthest = band.band();
        }
      }
    }
    return Answer.of(
        most == 0
            ? "limits kept everywhere"
            : Numbers.fixed(ExposureText.up(most), 1) + " m, on " + furthest);
  }

  private static Map<String, Answer> size(DesignReport report) {
    List<Point> points =
        report.design().antenna().wires().stream().map(Wire::path).flatMap(List::stream).toList();
    Map<String, Answer> facts = new LinkedHashMap<>();
    facts.put("across, m", Answer.of(Numbers.fixed(report.across(), 1)));
    facts.put("wires, m high", Answer.of(heights(points)));
    facts.put(
        "wire to cut, m",
        Answer.of(
            Numbers.fixed(
                report.cut().legs().stream().mapToDouble(leg -> leg.cutLength()).sum(), 1)));
    facts.put("hangs", Answer.of(report.cut().kitText().hanging()));
    String straight = "its wires are drawn straight; hang says how they hang";
    List<SpanState> states = report.cut().spans();
    facts.put(
        "pull at a support",
        states.stream()
            .filter(state -> state.name().equals(SpanState.STILL))
            .max(Comparator.comparingDouble(SpanState::supportPull))
            .map(state -> Answer.of(Numbers.fixed(state.supportPull(), 0) + " N in still air"))
            .orElseGet(() -> Answer.none(straight)));
    facts.put(
        "margin to breaking",
        states.stream()
            .filter(state -> state.breakingMargin().isPresent())
            .min(Comparator.comparingDouble(state -> state.breakingMargin().getAsDouble()))
            .map(
                state ->
                    Answer.of(Numbers.fixed(state.breakingMargin(), 1) + " in " + state.name()))
            .orElseGet(
                () ->
                    Answer.none(
                        states.isEmpty() ? straight : "the strength of its wire is not stated")));
    return facts;
  }

  private static String heights(List<Point> points) {
    DoubleSummaryStatistics heights = points.stream().mapToDouble(Point::z).summaryStatistics();
    String lowest = Numbers.fixed(heights.getMin(), 1);
    String highest = Numbers.fixed(heights.getMax(), 1);
    return lowest.equals(highest) ? highest : lowest + " to " + highest;
  }

  private static Map<String, Answer> conditions(DesignReport report) {
    Map<String, Answer> facts = new LinkedHashMap<>();
    Map<String, String> known =
        report.bands().conditions().entries().stream()
            .collect(
                Collectors.toMap(
                    Conditions.Entry::name, Conditions.Entry::value, (first, second) -> first));
    for (String name : List.of("ground", "transformer", "line", "power")) {
      facts.put(
          name,
          known.containsKey(name)
              ? Answer.of(known.get(name))
              : Answer.none("the design has none"));
    }
    return facts;
  }
}
