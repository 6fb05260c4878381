package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.circuit.ChainState;
import org.spanwire.result.PowerBudget;

/**
 * Where the transmitter's watts go. Every part is found on its own: the feed chain's from its
 * waves, the choke's from its current, heat in wires and fittings from theirs, the soil's from the
 * transmitted field, the sky's from the far field.
 *
 * @param availableWatts what the transmitter could give
 * @param entries from the transmitter to the sky
 */
public record Ledger(double availableWatts, List<Entry> entries) {

  /** Part of the power that the transmitter keeps. */
  public static final String MISMATCH = "mismatch";

  /** Heat in the choke at the top of the feed line. */
  public static final String CHOKE = "choke";

  /**
   * One part.
   *
   * @param part its name
   * @param watts its share
   */
  public record Entry(String part, double watts) {}

  /** Takes a copy. */
  public Ledger {
    entries = List.copyOf(entries);
  }

  /**
   * Adds up a chain and an antenna.
   *
   * @param chokeWatts heat in the choke at the top of the line at the chain's power
   * @param budget of the antenna for any drive, the choke's heat among that of the fittings
   */
  static Ledger of(ChainState chain, double chokeWatts, PowerBudget budget) {
    double scale = chain.deliveredPower() / budget.accepted();
    List<Entry> entries = new ArrayList<>();
    entries.add(new Entry(MISMATCH, chain.reflectedPower()));
    chain.losses().forEach(loss -> entries.add(new Entry(loss.name(), loss.watts())));
    entries.add(new Entry(CHOKE, chokeWatts));
    entries.add(new Entry("fittings", scale * budget.fittingLoss() - chokeWatts));
    entries.add(new Entry("conductors", scale * budget.conductorLoss()));
    entries.add(new Entry("soil", scale * budget.soilAbsorbed().orElse(0)));
    entries.add(new Entry("sky", scale * budget.radiated()));
    return new Ledger(chain.availablePower(), entries);
  }

  /** Sum of all parts over the available power, less 1: 0 but for the solver's error. */
  public double closure() {
    return entries.stream().mapToDouble(Entry::watts).sum() / availableWatts - 1;
  }

  /** Watts of a part. */
  public double watts(String part) {
    return entries.stream()
        .filter(entry -> entry.part().equals(part))
        .mapToDouble(Entry::watts)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("there is no part '" + part + "'"));
  }
}
