package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jsoup.nodes.Element;
import org.spanwire.cli.output.Numbers;

/**
 * Several designs side by side, with a link to the page of each.
 *
 * @param version version of the program
 * @param entries the designs, at least two
 */
public record RangeReport(String version, List<RangeEntry> entries) {

  /** Stands where a design has no answer. */
  private static final String NONE = "–";

  /** Takes a copy. */
  public RangeReport {
    entries = List.copyOf(entries);
  }

  /** The whole page. */
  public String html() {
    Page page = new Page("Comparison", entries.size() + " designs side by side", version);
    List<Section> sections = new ArrayList<>();
    sections.add(new Bands());
    entries.get(0).facts().keySet().forEach(title -> sections.add(new Facts(title)));
    page.sections(sections);
    return page.html();
  }

  /** Names of all bands, by frequency. */
  private List<String> bandNames() {
    Set<String> names = new LinkedHashSet<>();
    entries.stream()
        .flatMap(entry -> entry.bands().stream())
        .sorted(Comparator.comparingDouble(RangeEntry.InBand::lowHz))
        .forEach(band -> names.add(band.band()));
    return List.copyOf(names);
  }

  private static void link(Element row, RangeEntry entry) {
    row.child(0).text("").appendElement("a").attr("href", entry.address()).text(entry.title());
  }

  private static String[] cells(String first, List<String> others) {
    List<String> cells = new ArrayList<>(others);
    cells.add(0, first);
    return cells.toArray(new String[0]);
  }

  /** Verdicts and worst SWR by band. */
  private final class Bands implements Section {

    @Override
    public String id() {
      return "answers";
    }

    @Override
    public String title() {
      return "Bands";
    }

    @Override
    public void write(Page page) {
      List<String> names = bandNames();
      Page.TableRows verdicts =
          page.table(
              "Verdict by band, and the worst SWR at the transmitter before any tuner",
              cells("design", names));
      for (RangeEntry entry : entries) {
        List<Optional<RangeEntry.InBand>> bands = inOrder(entry, names);
        Element row =
            verdicts.row(
                cells(
                    entry.title(),
                    bands.stream()
                        .map(
                            band ->
                                band.map(b -> b.verdict().label() + " " + Numbers.swr(b.worst()))
                                    .orElse(NONE))
                        .toList()));
        link(row, entry);
        for (int i = 0; i < bands.size(); i++) {
          if (bands.get(i).isPresent()) {
            Page.verdict(row.child(i + 1), bands.get(i).get().verdict());
          }
        }
      }
      page.paragraph(SummarySection.verdicts());
      Page.TableRows spreads =
          page.table(
              "Worst SWR with each uncertain parameter at the ends of its spread",
              cells("design", names));
      for (RangeEntry entry : entries) {
        link(spreads.row(cells(entry.title(), spreads(entry, names))), entry);
      }
      page.paragraph(
          NONE
              + " in a band: the design is not meant for it"
              + (entries.stream().anyMatch(RangeReport::statesNoSpread)
                  ? ", or it states no spread, as how the height differs from place to place."
                  : ".")
              + " The spreads are those that each design states.");
    }

    private static List<Optional<RangeEntry.InBand>> inOrder(RangeEntry entry, List<String> names) {
      return names.stream()
          .map(name -> entry.bands().stream().filter(b -> b.band().equals(name)).findFirst())
          .toList();
    }

    private static List<String> spreads(RangeEntry entry, List<String> names) {
      return inOrder(entry, names).stream()
          .map(
              band ->
                  band.filter(b -> b.worstWithSpreads().isPresent())
                      .map(b -> Numbers.swr(b.worstWithSpreads().getAsDouble()))
                      .orElse(NONE))
          .toList();
    }
  }

  private static boolean statesNoSpread(RangeEntry entry) {
    return entry.bands().stream().allMatch(band -> band.worstWithSpreads().isEmpty());
  }

  /** One table of answers. */
  private final class Facts implements Section {

    private final String title;

    private Facts(String title) {
      this.title = title;
    }

    @Override
    public String id() {
      return title.toLowerCase(Locale.ROOT).replace(' ', '-');
    }

    @Override
    public String title() {
      return title;
    }

    @Override
    public void write(Page page) {
      List<String> columns = List.copyOf(entries.get(0).facts().get(title).keySet());
      Page.TableRows rows = page.table(title + " of every design", cells("design", columns));
      List<String> whys = new ArrayList<>();
      for (RangeEntry entry : entries) {
        Map<String, RangeEntry.Answer> answers = entry.facts().get(title);
        List<String> texts = new ArrayList<>();
        for (String column : columns) {
          RangeEntry.Answer answer = answers.get(column);
          texts.add(answer.text().isEmpty() ? NONE : answer.text());
          if (answer.text().isEmpty()) {
            whys.add(entry.title() + ", " + column + ": " + answer.why() + ".");
          }
        }
        link(rows.row(cells(entry.title(), texts)), entry);
      }
      if (columns.contains(RangeEntry.LIMIT)) {
        page.paragraph(
            "The largest power counts the wire and those parts whose ratings the design states.");
      }
      if (!whys.isEmpty()) {
        page.paragraph("Why there is " + NONE + ":");
        page.list(whys, "plain");
      }
    }
  }
}
