package org.spanwire.study;

import java.util.List;

/** What a sweep can give at every point. */
public enum SweepQuantity {
  /** Input impedance. */
  IMPEDANCE("impedance", "resistance_ohm", "reactance_ohm"),
  /** Estimated error of the magnitude of the impedance at the feedpoint. */
  IMPEDANCE_ERROR("impedance-error", "impedance_error_ohm"),
  /** Standing-wave ratio. */
  SWR("swr", "swr"),
  /** Return loss, positive for a passive load. */
  RETURN_LOSS("return-loss", "return_loss_db"),
  /** Mismatch loss. */
  MISMATCH_LOSS("mismatch-loss", "mismatch_loss_db"),
  /** Largest gain over all directions, and where it points. */
  GAIN("gain", "gain_dbi", "gain_elevation_deg", "gain_azimuth_deg"),
  /** Power radiated into the sky over power accepted. */
  EFFICIENCY("efficiency", "radiation_efficiency"),
  /** Number of unknowns solved for. */
  UNKNOWNS("unknowns", "unknowns");

  private final String label;
  private final List<String> columns;

  SweepQuantity(String label, String... columns) {
    this.label = label;
    this.columns = List.of(columns);
  }

  /** Whether it takes a solution of the antenna, more than the feedpoint's impedance. */
  boolean needsField() {
    return this == GAIN || this == EFFICIENCY || this == UNKNOWNS;
  }

  /** The word that asks for it. */
  public String label() {
    return label;
  }

  /** Names of its columns, with units. */
  public List<String> columns() {
    return columns;
  }
}
