package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.design.Stage;
import org.spanwire.result.Warning;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/**
 * What of a feed chain the SWR at the transmitter leaves out: everything but the ratios of ideal
 * transformers.
 */
public final class FeedChainDoubts {

  /** Name of the warning. */
  public static final String WARNING = "feed-chain-not-modelled";

  private FeedChainDoubts() {}

  /** One warning that names the stages left out, or none. */
  public static List<Warning> of(List<Stage> feedChain) {
    List<String> leftOut = new ArrayList<>();
    for (Stage stage : feedChain) {
      if (stage instanceof Stage.Choke choke) {
        leftOut.add("choke of " + new Quantity(choke.impedanceOhm(), Dimension.RESISTANCE));
      } else if (stage instanceof Stage.Line line) {
        leftOut.add(
            "line of "
                + new Quantity(line.length(), Dimension.LENGTH)
                + " and "
                + new Quantity(line.impedanceOhm(), Dimension.RESISTANCE));
      } else if (stage instanceof Stage.Transformer transformer
          && transformer.touchstone().isPresent()) {
        leftOut.add("measured transformer " + transformer.touchstone().get().getFileName());
      }
    }
    return leftOut.isEmpty()
        ? List.of()
        : List.of(
            new Warning(
                WARNING,
                String.join(", ", leftOut)
                    + ": left out; SWR is that behind ideal transformers only, a line's loss and transformation and a"
                    + " transformer's own faults come on top"));
  }
}
