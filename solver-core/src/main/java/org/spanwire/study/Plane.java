package org.spanwire.study;

/** A place of the feed chain where SWR is judged, looking towards the antenna. */
public enum Plane {
  /** The two terminals of the antenna. */
  FEEDPOINT("feedpoint"),
  /** The transmitter's side of the transformer nearest to the feedpoint. */
  TRANSFORMER_INPUT("transformer-input"),
  /** The transmitter's terminals, before any tuner. */
  TRANSMITTER("transmitter");

  private final String label;

  Plane(String label) {
    this.label = label;
  }

  /** The word used in outputs. */
  public String label() {
    return label;
  }
}
