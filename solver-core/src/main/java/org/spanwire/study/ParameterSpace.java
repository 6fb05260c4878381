package org.spanwire.study;

import java.util.List;
import org.spanwire.unit.Quantity;

/** Places in the space of a design's parameters, in a fixed order. */
public sealed interface ParameterSpace permits ParameterGrid, ParameterSample {

  /** Names of the parameters, in the order of {@link #at}. */
  List<String> parameters();

  /** Number of places. */
  long count();

  /**
   * The values of the parameters at a place.
   *
   * @param place 0 to {@link #count} − 1
   */
  List<Quantity> at(long place);
}
