package org.spanwire.study;

import java.util.List;
import java.util.Optional;
import org.spanwire.Solution;
import org.spanwire.circuit.ChainState;
import org.spanwire.result.PowerBudget;

/**
 * An installation at one frequency.
 *
 * @param solution the antenna for the design's feed voltages; with a feed line, that of the wire
 *     cut at the feedpoint, with half the feed's gap at the end of each arm as its two feeds, the
 *     line as a further wire, and the choke at its top among the fittings
 * @param feeds the feeds in the order of the design, with the planes of the chain behind each
 * @param chain the chain at the transmitter's power, its last plane at the feedpoint; empty for
 *     several feeds
 * @param commonMode current on the outside of the feed line at the transmitter's power; empty
 *     without its route
 */
public record Operation(
    Solution solution,
    List<SolvedFeed> feeds,
    Optional<ChainState> chain,
    Optional<CommonMode> commonMode) {

  /** Takes a copy. */
  public Operation {
    feeds = List.copyOf(feeds);
  }

  /** Largest estimated relative error of the feeds' impedances. */
  double relativeError() {
    return feeds.stream().mapToDouble(SolvedFeed::relativeError).max().orElseThrow();
  }

  /** A feed by name. */
  public SolvedFeed feed(String name) {
    return feeds.stream()
        .filter(feed -> feed.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("there is no feed '" + name + "'"));
  }

  /**
   * Where the transmitter's watts go; empty for several feeds.
   *
   * @param budget {@link Solution#powerBudgetWithSoil} of {@link #solution}
   */
  public Optional<Ledger> ledger(PowerBudget budget) {
    return chain.map(
        state -> Ledger.of(state, commonMode.map(CommonMode::topWatts).orElse(0.0), budget));
  }
}
