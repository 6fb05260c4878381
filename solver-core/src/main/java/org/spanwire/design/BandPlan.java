package org.spanwire.design;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.spanwire.unit.Dimension;

/**
 * A list of bands. The plans come from the data file {@code band-plans.yaml} beside this class;
 * national rules differ from them and go first.
 *
 * @param name as written in a design: "iaru-region-1"
 * @param date when the edges were last looked at, ISO 8601
 * @param source where the edges come from
 * @param bands from the lowest frequency up
 */
public record BandPlan(String name, String date, String source, List<Band> bands) {

  private static final String FILE = "band-plans.yaml";
  private static final String FORMAT = "spanwire-band-plans/1";

  /** Copies the list. */
  public BandPlan {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(source, "source");
    bands = List.copyOf(bands);
  }

  /** All plans that come with the program. */
  public static List<BandPlan> all() {
    return Shipped.PLANS;
  }

  /** The plan of a name, if there is one. */
  public static Optional<BandPlan> find(String name) {
    return all().stream().filter(plan -> plan.name.equals(name)).findFirst();
  }

  /** The band of a name, if the plan has it. */
  public Optional<Band> band(String bandName) {
    return bands.stream().filter(band -> band.name().equals(bandName)).findFirst();
  }

  /** Read when first asked for. */
  private static final class Shipped {
    static final List<BandPlan> PLANS = read();

    private static List<BandPlan> read() {
      try (InputStream in = BandPlan.class.getResourceAsStream(FILE)) {
        String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        return plans(Document.parse(text, FILE, Optional.empty()).root());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  static List<BandPlan> plans(Item root) {
    Fields fields = root.fields("format", "date", "note", "plans");
    Item format = fields.required("format", FORMAT);
    if (!format.text().equals(FORMAT)) {
      throw format.fault("format " + Words.quote(format.text()) + "; expected " + FORMAT);
    }
    String date = fields.required("date", "2026-01-31").text();
    Evaluator numbers = new Evaluator(Optional.empty(), Map.of());
    Map<String, BandPlan> plans =
        fields
            .required("plans", "{}")
            .names("plan")
            .map((name, item) -> plan(name, date, item, numbers));
    return List.copyOf(plans.values());
  }

  private static BandPlan plan(String name, String date, Item item, Evaluator numbers) {
    Fields fields = item.fields("source", "bands");
    Map<String, Band> bands =
        fields
            .required("bands", "{}")
            .names("band")
            .map((band, edges) -> band(band, edges, numbers));
    return new BandPlan(
        name,
        date,
        fields.required("source", "a recommendation").text(),
        List.copyOf(bands.values()));
  }

  private static Band band(String name, Item item, Evaluator numbers) {
    List<Item> edges = item.items("a list of two edges");
    if (edges.size() != 2) {
      throw item.fault(item.name() + " has " + edges.size() + " edges; expected two");
    }
    double low = numbers.positive(edges.get(0), Dimension.FREQUENCY);
    double high = numbers.positive(edges.get(1), Dimension.FREQUENCY);
    return item.checked(() -> new Band(name, low, high));
  }
}
