package org.spanwire.cli.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.spanwire.design.ExposureLimit;
import org.spanwire.design.ExposureRules;
import org.spanwire.practice.FarFieldScreen;
import org.spanwire.practice.KeepOut;
import org.spanwire.study.BandExposure;

/** The outcome of {@code spanwire exposure} for reading. */
public final class ExposureText {

  /** More limits than fit beside one another go into a further table. */
  private static final int LIMITS_PER_TABLE = 4;

  /** How to read {@link #distance}. */
  public static final String KEY =
      "Metres in plan from the nearest conductor, the feed line included, with the range of their"
          + " uncertainty. E or H: the field that decides. kept: the limit is kept everywhere on"
          + " the floor; how much of it is used up at the strongest place.";

  /** Cautions for whoever judges by distances. */
  public static final List<String> CAUTIONS =
      List.of(
          ExposureReport.NO_CERTIFICATE,
          "Closer than 0.2 m to a wire or to the feed line nothing is judged: whoever touches it"
              + " can be burnt. Metal nearby, a handrail or a roof, raises fields beyond these.",
          "People with implants need more distance; ask their physicians.");

  private final ExposureReport report;
  private final ExposureRules rules;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  ExposureText(ExposureReport report, Palette palette) {
    this.report = report;
    this.rules = report.rules();
    this.palette = palette;
  }

  String render() {
    out.append(palette.heading(report.conditions().design().title())).append("\n\n");
    Paragraph.write(out, "", 0, ExposureReport.NO_CERTIFICATE);
    out.append('\n');
    for (double floor : rules.floors()) {
      out.append(palette.heading(floorHeading(floor))).append('\n');
      forLimits(limits -> distances(floor, limits));
    }
    Paragraph.write(out, "", 0, KEY);
    out.append('\n');
    screens();
    report.conditions().text(out, palette);
    conditions();
    SolveText.warnings(out, palette, report.warnings());
    out.append('\n');
    Conditions.cautions(out, palette);
    for (String caution : CAUTIONS) {
      Paragraph.write(out, "  - ", 4, caution);
    }
    return out.toString();
  }

  /** What a floor is, and where the people on it are. */
  public static String floorHeading(double floor) {
    String people =
        Numbers.significant(floor + 0.5, 4)
            + " m to "
            + Numbers.significant(floor + 2, 4)
            + " m up";
    return floor == 0
        ? "Distance to keep on the ground, " + people
        : "Distance to keep on a floor or at a window "
            + Numbers.significant(floor, 4)
            + " m above the ground, "
            + people;
  }

  /** The limits in groups that fit a table. */
  private void forLimits(Function<List<ExposureLimit>, Table> table) {
    List<ExposureLimit> limits = rules.limits();
    for (int from = 0; from < limits.size(); from += LIMITS_PER_TABLE) {
      int to = Math.min(limits.size(), from + LIMITS_PER_TABLE);
      out.append(table.apply(limits.subList(from, to)).render()).append('\n');
    }
  }

  private static Table columns(Table table, List<ExposureLimit> limits) {
    for (ExposureLimit limit : limits) {
      int split = limit.name().indexOf('-', limit.name().indexOf('-') + 1);
      table.word(
          split < 0
              ? limit.name().substring(0, limit.name().indexOf('-'))
              : limit.name().substring(0, split),
          limit.name().substring((split < 0 ? limit.name().indexOf('-') : split) + 1));
    }
    return table;
  }

  private Table distances(double floor, List<ExposureLimit> limits) {
    Table table = columns(new Table().word("band").number("power at", "antenna, W"), limits);
    for (BandExposure band : report.bands()) {
      List<String> row = new ArrayList<>();
      row.add(band.band());
      row.add(Numbers.fixed(band.antennaWatts(), 1));
      for (ExposureLimit limit : limits) {
        row.add(find(band, floor, limit).map(r -> distance(r.keepOut())).orElse("-"));
      }
      table.row(row.toArray(new String[0]));
    }
    return table;
  }

  /** The row of a floor and a limit. */
  public static Optional<BandExposure.Row> find(
      BandExposure band, double floor, ExposureLimit limit) {
    return band.rows().stream()
        .filter(row -> row.keepOut().floor() == floor)
        .filter(row -> row.keepOut().limit().name().equals(limit.name()))
        .findFirst();
  }

  /** A distance with its range and the field that decides, or how much of the limit is used up. */
  public static String distance(KeepOut keepOut) {
    String field = keepOut.electricDecides() ? " E" : " H";
    if (keepOut.longest() == 0) {
      return "kept, " + percent(keepOut.exposure()) + field;
    }
    return Numbers.fixed(up(keepOut.distance()), 1)
        + " ("
        + Numbers.fixed(keepOut.shortest(), 1)
        + "-"
        + Numbers.fixed(up(keepOut.longest()), 1)
        + ")"
        + field;
  }

  /** To the next decimetre, the safe side. */
  public static double up(double metres) {
    return Math.ceil(10 * metres - 1e-9) / 10;
  }

  private static String percent(double share) {
    return share < 0.01
        ? "below 1 %"
        : String.format(Locale.ROOT, "%.0f %%", Math.ceil(100 * share));
  }

  private void screens() {
    out.append(palette.heading("What the far field alone would say, at the largest gain"))
        .append('\n');
    double floor = rules.floors().get(0);
    forLimits(
        limits -> {
          Table table = columns(new Table().word("band").number("valid from", "m"), limits);
          for (BandExposure band : report.bands()) {
            List<String> row = new ArrayList<>();
            row.add(band.band());
            row.add(
                Numbers.fixed(
                    FarFieldScreen.validFrom(band.rows().get(0).keepOut().frequencyHz()), 1));
            for (ExposureLimit limit : limits) {
              row.add(find(band, floor, limit).map(r -> screen(r.screen())).orElse("-"));
            }
            table.row(row.toArray(new String[0]));
          }
          return table;
        });
    Paragraph.write(
        out,
        "",
        0,
        "From the antenna, in metres. invalid: nearer than a wavelength over 2 pi, where the formula"
            + " does not hold; it does not know the feed line either. Go by the tables above.");
    out.append('\n');
  }

  /** The distance of the far-field formula, and whether it holds there. */
  public static String screen(FarFieldScreen screen) {
    return Numbers.fixed(screen.distance(), 1) + (screen.valid() ? "" : " invalid");
  }

  private void conditions() {
    rulesInWords(report).forEach(entry -> Conditions.line(out, entry.name(), entry.value()));
  }

  /** What exposure was judged by. */
  public static List<Conditions.Entry> rulesInWords(ExposureReport report) {
    ExposureRules rules = report.rules();
    List<Conditions.Entry> entries = new ArrayList<>();
    entries.add(
        new Conditions.Entry(
            "power",
            Numbers.significant(report.powerWatts(), 6)
                + " W from the transmitter into the feed chain, as through a tuner; at the antenna less"
                + " what the chain loses"));
    entries.add(
        new Conditions.Entry(
            "mode",
            rules.mode().label()
                + ", average over peak power "
                + Conditions.percent(rules.mode().duty())
                + ", "
                + Conditions.percent(rules.transmitting())
                + " of the averaging time transmitted"));
    entries.add(
        new Conditions.Entry(
            "uncertainty",
            "from the spreads of the design's parameters, at their ends, and the computation"));
    for (ExposureLimit limit : rules.limits()) {
      entries.add(
          new Conditions.Entry(
              "limit",
              limit.name()
                  + ": "
                  + limit.title()
                  + (limit.averagingMinutes() == 0
                      ? ", not averaged"
                      : ", averaged over "
                          + Numbers.significant(limit.averagingMinutes(), 3)
                          + " min")
                  + " ("
                  + limit.source()
                  + "; "
                  + limit.date()
                  + ")"));
    }
    return entries;
  }
}
