package org.spanwire.circuit.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.spanwire.circuit.NetworkData;

/**
 * A transformer as it was measured.
 *
 * @param name what it is called
 * @param method how it was measured
 * @param readings rising in frequency, at least one
 */
public record MeasuredUnit(String name, Method method, List<UnitReading> readings) {

  /** Ways of measuring. */
  public enum Method {
    /** One unit as a 3-port. */
    UNIT("unit", "one unit"),
    /** Two equal units joined at their antenna sides. */
    PAIR("pair", "one of a pair of equal units back to back"),
    /** Three units in three pairs. */
    THREE_UNITS("three-units", "one of three units in three pairs back to back"),
    /** One unit, ended by a resistor in series with a port. */
    SERIES_RESISTOR("series-resistor", "one unit into a series resistor"),
    /** One unit, ended by a pad of least loss before a port. */
    MINIMUM_LOSS_PAD("minimum-loss-pad", "one unit into a minimum-loss pad"),
    /** The two outputs of one unit beside each other. */
    BALANCE("balance", "the two outputs of one unit");

    private final String label;
    private final String words;

    Method(String label, String words) {
      this.label = label;
      this.words = words;
    }

    /** The word used in files and outputs. */
    public String label() {
      return label;
    }

    /** What was measured. */
    public String words() {
      return words;
    }

    /** Whether {@link BackToBack#BLIND_SPOT} applies. */
    public boolean hidesImbalance() {
      return this == PAIR || this == THREE_UNITS;
    }
  }

  /** Checks the order and copies the list. */
  public MeasuredUnit {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(method, "method");
    readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("unit " + name + " has no readings; give at least one");
    }
    for (int i = 1; i < readings.size(); i++) {
      double frequency = readings.get(i).frequencyHz();
      if (!(frequency > readings.get(i - 1).frequencyHz())) {
        throw new IllegalArgumentException(
            "reading at " + frequency + " Hz is not above the one before; sort them");
      }
    }
  }

  /**
   * From measured network parameters: three ports are one unit, port 1 unbalanced; two ports a pair
   * of equal units back to back.
   *
   * @param name of the unit
   * @param data parameters against frequency, whatever their references
   * @param unbalancedOhm nominal impedance of the unbalanced port in ohms
   * @param balancedOhm nominal impedance across the outputs in ohms
   * @throws IllegalArgumentException if the data have another number of ports or pass no signal
   */
  public static MeasuredUnit of(
      String name, NetworkData data, double unbalancedOhm, double balancedOhm) {
    if (data.ports() != 2 && data.ports() != 3) {
      throw new IllegalArgumentException(
          "has " + data.ports() + " ports; expected 3 of a unit, or 2 of a pair");
    }
    List<UnitReading> readings = new ArrayList<>();
    double[] frequencies = data.frequencies();
    for (int i = 0; i < frequencies.length; i++) {
      if (data.ports() == 3) {
        readings.add(
            UnitReading.of(
                BalunReading.of(frequencies[i], data.sample(i), unbalancedOhm, balancedOhm)));
      } else {
        BackToBack pair = BackToBack.ofEqualUnits(data.sample(i).renormalized(unbalancedOhm));
        readings.add(
            UnitReading.ofLoss(
                frequencies[i], pair.unitLossDb(), OptionalDouble.of(pair.inputReturnLossDb())));
      }
    }
    return new MeasuredUnit(name, data.ports() == 3 ? Method.UNIT : Method.PAIR, readings);
  }
}
