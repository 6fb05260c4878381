package org.spanwire.design;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.PhysicalConstants;

/**
 * A limit of exposure to radio-frequency fields: unperturbed rms field strengths where a person
 * would be. The limits come from the data file {@code exposure-limits.yaml} beside this class; the
 * law of the place goes first.
 *
 * @param name as written in a design: "icnirp-2020-public"
 * @param title for reading
 * @param population whom it protects
 * @param averagingMinutes time over which the squared fields are averaged; 0 for values that hold
 *     at every moment
 * @param date when the values were last looked at, ISO 8601
 * @param source where they come from
 * @param rows values by frequency, rising
 */
public record ExposureLimit(
    String name,
    String title,
    Population population,
    double averagingMinutes,
    String date,
    String source,
    List<Row> rows) {

  private static final String FILE = "exposure-limits.yaml";
  private static final String FORMAT = "spanwire-exposure-limits/1";

  /** Whom a limit protects. */
  public enum Population {
    /** Everybody, at all times. */
    PUBLIC,
    /** Those who know of the field and are trained to keep out of it. */
    OCCUPATIONAL
  }

  /** A value times the frequency in megahertz to a power. */
  public record PowerLaw(double value, double exponent) {
    double at(double frequencyHz) {
      return value * Math.pow(frequencyHz * 1e-6, exponent);
    }
  }

  /**
   * Values over a range of frequency.
   *
   * @param fromHz where it begins, included
   * @param toHz where it ends, not included
   * @param electric V/m
   * @param magnetic A/m, if limited
   * @param powerDensity of a plane wave in W/m², if the text has one
   */
  public record Row(
      double fromHz,
      double toHz,
      PowerLaw electric,
      Optional<PowerLaw> magnetic,
      Optional<PowerLaw> powerDensity) {}

  /** Copies the list. */
  public ExposureLimit {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(population, "population");
    rows = List.copyOf(rows);
  }

  /** All limits that come with the program. */
  public static List<ExposureLimit> all() {
    return Shipped.LIMITS;
  }

  /** The limit of a name, if there is one. */
  public static Optional<ExposureLimit> find(String name) {
    return all().stream().filter(limit -> limit.name.equals(name)).findFirst();
  }

  /** Whether it says anything at a frequency in hertz. */
  public boolean covers(double frequencyHz) {
    return rows.stream().anyMatch(row -> contains(row, frequencyHz));
  }

  private static boolean contains(Row row, double frequencyHz) {
    return frequencyHz >= row.fromHz && frequencyHz < row.toHz;
  }

  private Row row(double frequencyHz) {
    return rows.stream()
        .filter(row -> contains(row, frequencyHz))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "limit "
                        + name
                        + " has no value at "
                        + frequencyHz * 1e-6
                        + " MHz; choose another limit"));
  }

  /**
   * Electric field strength in V/m.
   *
   * @throws IllegalArgumentException where it does not cover the frequency
   */
  public double electric(double frequencyHz) {
    return row(frequencyHz).electric.at(frequencyHz);
  }

  /** Magnetic field strength in A/m; empty if only the electric field is limited. */
  public OptionalDouble magnetic(double frequencyHz) {
    return at(row(frequencyHz).magnetic, frequencyHz);
  }

  /** Power density in W/m² that the text states for plane waves, if it does. */
  public OptionalDouble powerDensity(double frequencyHz) {
    return at(row(frequencyHz).powerDensity, frequencyHz);
  }

  private static OptionalDouble at(Optional<PowerLaw> law, double frequencyHz) {
    return law.isPresent() ? OptionalDouble.of(law.get().at(frequencyHz)) : OptionalDouble.empty();
  }

  /** Largest power density in W/m² of a plane wave that keeps both field strengths. */
  public double planeWaveDensity(double frequencyHz) {
    double eta = PhysicalConstants.IMPEDANCE_OF_FREE_SPACE;
    double electric = electric(frequencyHz);
    double magnetic = magnetic(frequencyHz).orElse(electric / eta);
    return Math.min(electric * electric / eta, magnetic * magnetic * eta);
  }

  /**
   * Factor on the squared field of a transmitter that pauses.
   *
   * @param duty average over peak power, over the averaging time
   */
  public double share(double duty) {
    return averagingMinutes == 0 ? 1 : duty;
  }

  /** Read when first asked for. */
  private static final class Shipped {
    static final List<ExposureLimit> LIMITS = read();

    private static List<ExposureLimit> read() {
      try (InputStream in = ExposureLimit.class.getResourceAsStream(FILE)) {
        String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        return limits(Document.parse(text, FILE, Optional.empty()).root());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  static List<ExposureLimit> limits(Item root) {
    Fields fields = root.fields("format", "date", "limits");
    Item format = fields.required("format", FORMAT);
    if (!format.text().equals(FORMAT)) {
      throw format.fault("format " + Words.quote(format.text()) + "; expected " + FORMAT);
    }
    String date = fields.required("date", "2026-01-31").text();
    Evaluator numbers = new Evaluator(Optional.empty(), Map.of());
    return List.copyOf(
        fields
            .required("limits", "{}")
            .names("limit")
            .map((name, item) -> limit(name, date, item, numbers))
            .values());
  }

  private static ExposureLimit limit(String name, String date, Item item, Evaluator numbers) {
    Fields fields = item.fields("title", "population", "averaging-minutes", "source", "rows");
    return new ExposureLimit(
        name,
        fields.required("title", "a title").text(),
        fields
            .required("population", "public")
            .choice(
                Map.of(
                    "public", Population.PUBLIC,
                    "occupational", Population.OCCUPATIONAL)),
        numbers.notNegative(fields.required("averaging-minutes", "6"), Dimension.NUMBER),
        date,
        fields.required("source", "the text").text(),
        fields.required("rows", "[]").items("a list of rows").stream()
            .map(row -> row(row, numbers))
            .toList());
  }

  private static Row row(Item item, Evaluator numbers) {
    Fields fields = item.fields("frequency", "e", "h", "s");
    Item range = fields.required("frequency", "[1 MHz, 30 MHz]");
    List<Item> ends = range.items("a list of two frequencies");
    if (ends.size() != 2) {
      throw range.fault(range.name() + " has " + ends.size() + " ends; expected two");
    }
    return new Row(
        numbers.positive(ends.get(0), Dimension.FREQUENCY),
        numbers.positive(ends.get(1), Dimension.FREQUENCY),
        powerLaw(fields.required("e", "28"), numbers),
        fields.optional("h").map(h -> powerLaw(h, numbers)),
        fields.optional("s").map(s -> powerLaw(s, numbers)));
  }

  private static PowerLaw powerLaw(Item item, Evaluator numbers) {
    if (item.isText()) {
      return new PowerLaw(numbers.positive(item, Dimension.NUMBER), 0);
    }
    List<Item> parts = item.items("a value, or [value, exponent]");
    if (parts.size() != 2) {
      throw item.fault(item.name() + " has " + parts.size() + " parts; expected two");
    }
    return new PowerLaw(
        numbers.positive(parts.get(0), Dimension.NUMBER),
        numbers.value(parts.get(1), Dimension.NUMBER));
  }
}
