package org.spanwire.study;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import org.spanwire.Solver;
import org.spanwire.design.Band;
import org.spanwire.design.Design;

/**
 * Results of a design with how far each may move before somebody should look: at every frequency of
 * the design and in the middle of every band the impedance, SWR, gain and efficiency, over every
 * band the extremes of SWR and the choke's heat. Values that are not finite are left out.
 *
 * <p>The limits are three times what the solver's tolerance allows a value to move, so that they
 * hold whatever changes within it, and are much smaller than what a few millimetres of wire do.
 *
 * @param entries in a fixed order, each place and quantity once
 */
public record Baseline(List<Entry> entries) {

  private static final double ROOM = 3;
  private static final int POINTS = 11;

  /**
   * One result.
   *
   * @param place a band's name, or a frequency such as "7.1 MHz"
   * @param quantity what, with its SI unit: "resistance_ohm"
   * @param value its value
   * @param limit largest change that is no drift, at least 0
   */
  public record Entry(String place, String quantity, double value, double limit) {
    /** Checks the numbers. */
    public Entry {
      Objects.requireNonNull(place, "place");
      Objects.requireNonNull(quantity, "quantity");
      if (!Double.isFinite(value) || !(limit >= 0) || Double.isInfinite(limit)) {
        throw new IllegalArgumentException(
            quantity
                + " "
                + value
                + " with limit "
                + limit
                + " must be finite, the limit not negative");
      }
    }

    private String key() {
      return place + "\n" + quantity;
    }
  }

  /**
   * A result then and now.
   *
   * @param place where
   * @param quantity what
   * @param was recorded value; empty if it was not recorded
   * @param is value now; empty if it is not there any more
   * @param limit largest change that is no drift
   */
  public record Change(
      String place, String quantity, OptionalDouble was, OptionalDouble is, double limit) {

    /** Whether it moved by more than its limit, appeared or vanished. */
    public boolean drifted() {
      return was.isEmpty()
          || is.isEmpty()
          || Math.abs(is.getAsDouble() - was.getAsDouble()) > limit;
    }
  }

  /** Takes a copy and refuses what stands there twice. */
  public Baseline {
    entries = List.copyOf(entries);
    Set<String> keys = new LinkedHashSet<>();
    for (Entry entry : entries) {
      if (!keys.add(entry.key())) {
        throw new IllegalArgumentException(
            entry.quantity() + " at " + entry.place() + " stands there twice; remove one of them");
      }
    }
  }

  /**
   * Solves a design.
   *
   * @param design with at least one frequency or band
   * @param threads number of threads; the result does not depend on it
   */
  public static Baseline of(Design design, Solver solver, int threads) {
    Installation installation = Installation.of(design);
    Map<String, Double> places = new LinkedHashMap<>();
    design.frequencies().forEach(f -> places.put(megahertz(f), f));
    design.bands().forEach(band -> places.put("middle of " + band.name(), band.middleHz()));
    List<SolvedFrequency> solved =
        new FrequencyStudy(List.of(), List.of(), 0, false)
            .run(solver, installation, List.copyOf(places.values()), threads);
    Recorder recorder = new Recorder(solver.options().tolerance());
    int next = 0;
    for (String place : places.keySet()) {
      recorder.frequency(place, solved.get(next++));
    }
    List<Band> bands = design.bands();
    if (!bands.isEmpty()) {
      new BandStudy(installation, List.of(), POINTS)
          .run(solver, bands, threads)
          .forEach(recorder::band);
    }
    return new Baseline(recorder.entries);
  }

  private static String megahertz(double hertz) {
    return BigDecimal.valueOf(hertz).movePointLeft(6).stripTrailingZeros().toPlainString() + " MHz";
  }

  /** Every result of this baseline and of a later one, in the order of this one. */
  public List<Change> compare(Baseline later) {
    Map<String, Entry> now = new LinkedHashMap<>();
    later.entries.forEach(entry -> now.put(entry.key(), entry));
    List<Change> changes = new ArrayList<>();
    for (Entry was : entries) {
      Entry is = now.remove(was.key());
      changes.add(
          new Change(
              was.place(),
              was.quantity(),
              OptionalDouble.of(was.value()),
              is == null ? OptionalDouble.empty() : OptionalDouble.of(is.value()),
              was.limit()));
    }
    now.values()
        .forEach(
            is ->
                changes.add(
                    new Change(
                        is.place(),
                        is.quantity(),
                        OptionalDouble.empty(),
                        OptionalDouble.of(is.value()),
                        is.limit())));
    return changes;
  }

  /** Gathers entries with their limits. */
  private static final class Recorder {

    private final double tolerance;
    private final List<Entry> entries = new ArrayList<>();

    Recorder(double tolerance) {
      this.tolerance = tolerance;
    }

    private void add(String place, String quantity, double value, double moves) {
      if (Double.isFinite(value) && Double.isFinite(moves)) {
        entries.add(new Entry(place, quantity, value, ROOM * moves));
      }
    }

    void frequency(String place, SolvedFrequency at) {
      SolvedFeed feed = at.feeds().get(0);
      double ohms = tolerance * feed.impedance().abs();
      add(place, "resistance_ohm", feed.impedance().getReal(), ohms);
      add(place, "reactance_ohm", feed.impedance().getImaginary(), ohms);
      double swr = feed.at(Plane.TRANSMITTER).swr();
      add(place, "swr", swr, swr * relativeSwr(feed));
      // Gain and efficiency move twice as much as the impedance; see Gauge.
      add(place, "gain_peak_dbi", at.peak().gainDbi(), 20 * Math.log10(1 + tolerance));
      add(
          place,
          "radiation_efficiency",
          at.radiationEfficiency(),
          2 * tolerance * at.radiationEfficiency());
    }

    /** What the tolerance may do to SWR behind any passive network: |δZ| / R. */
    private double relativeSwr(SolvedFeed feed) {
      return tolerance * feed.impedance().abs() / feed.impedance().getReal();
    }

    void band(BandResponse band) {
      PlaneResponse transmitter = band.at(Plane.TRANSMITTER);
      double relative = relativeSwr(band.feed());
      add(
          band.band(),
          "swr_minimum",
          transmitter.best().swr(),
          relative * transmitter.best().swr());
      add(
          band.band(),
          "swr_maximum",
          transmitter.worst().swr(),
          relative * transmitter.worst().swr());
      band.heat(Ledger.CHOKE)
          .ifPresent(
              heat ->
                  add(band.band(), "choke_heat_w", heat.watts(), 10 * tolerance * heat.watts()));
    }
  }
}
