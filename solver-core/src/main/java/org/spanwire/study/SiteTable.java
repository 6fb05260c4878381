package org.spanwire.study;

import java.util.List;
import java.util.Optional;
import org.spanwire.design.Band;
import org.spanwire.medium.Ground;
import org.spanwire.unit.Quantity;

/**
 * SWR at the transmitter over and around the bands of a design for every ground, feed line and
 * height that it may meet where it is put up.
 *
 * @param grounds what may lie below, at least one
 * @param lineLengths lengths of the feed line in metres, rising; none if the design has not one
 *     line
 * @param height the parameter for the height with its values
 * @param bands the bands
 * @param frequenciesHz of each band, in hertz, evenly spaced, the band's edges among them
 * @param curves by ground, then line, then height
 * @param interpolationError estimate of the largest error of |Γ| between the solved frequencies
 */
public record SiteTable(
    List<Ground> grounds,
    List<Double> lineLengths,
    ParameterGrid.Axis height,
    List<Band> bands,
    List<List<Double>> frequenciesHz,
    List<Place> curves,
    double interpolationError) {

  /**
   * One ground, line and height.
   *
   * @param swr of each band at its frequencies; empty if it cannot be modelled
   * @param reason why it cannot be modelled
   */
  public record Place(List<List<Double>> swr, Optional<String> reason) {
    /** Takes copies. */
    public Place {
      swr = swr.stream().map(List::copyOf).toList();
    }
  }

  /** Takes copies. */
  public SiteTable {
    grounds = List.copyOf(grounds);
    lineLengths = List.copyOf(lineLengths);
    bands = List.copyOf(bands);
    frequenciesHz = frequenciesHz.stream().map(List::copyOf).toList();
    curves = List.copyOf(curves);
  }

  /** Number of feed lines looked at, at least 1. */
  public int lines() {
    return Math.max(1, lineLengths.size());
  }

  /** The heights. */
  public List<Quantity> heights() {
    return height.values();
  }

  /** What there is for a ground, a line and a height, by their indices. */
  public Place at(int ground, int line, int height) {
    return curves.get((ground * lines() + line) * heights().size() + height);
  }
}
