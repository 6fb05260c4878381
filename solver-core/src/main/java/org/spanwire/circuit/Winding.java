package org.spanwire.circuit;

import java.util.Locale;
import java.util.Objects;
import org.spanwire.circuit.WoundTransformer.Connection;

/**
 * How a transformer is wound: the same line with the same number of turns on a core (stack) of its
 * own, as often as the connection asks.
 *
 * @param connection how the lines are joined
 * @param core core (stack) of each line
 * @param turns turns of each line, at least 1
 * @param line one line; long enough for its turns
 * @param leakageInductance in series with each line, henries, not negative
 * @param strayCapacitance across each winding, farads, not negative
 */
public record Winding(
    Connection connection,
    ToroidCore core,
    int turns,
    TransmissionLine line,
    double leakageInductance,
    double strayCapacitance) {

  /** Checks the ranges. */
  public Winding {
    Objects.requireNonNull(connection, "connection");
    Objects.requireNonNull(core, "core");
    Objects.requireNonNull(line, "line");
    double needed = turns * core.turnLength();
    if (line.length() < needed * (1 - 1e-9)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "winding line of %.4g m is too short for %d turns of %.4g m around the core; lengthen"
                  + " it or take fewer turns",
              line.length(),
              turns,
              core.turnLength()));
    }
    core.winding(turns, strayCapacitance);
  }

  /** The wound unit as a network. */
  public WoundTransformer transformer() {
    return new WoundTransformer(
        connection, line, core.winding(turns, strayCapacitance), leakageInductance);
  }

  /**
   * The same with other turns, the line lengthened or shortened by what they take around the core.
   */
  public Winding withTurns(int number) {
    double length = line.length() + (number - turns) * core.turnLength();
    return new Winding(
        connection, core, number, line.withLength(length), leakageInductance, strayCapacitance);
  }
}
