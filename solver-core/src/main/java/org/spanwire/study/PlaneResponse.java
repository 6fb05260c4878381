package org.spanwire.study;

import java.util.List;

/**
 * SWR over a band at one plane of the feed chain.
 *
 * @param plane where
 * @param referenceOhm reference impedance there in ohms
 * @param low SWR at the low edge
 * @param middle SWR at the middle frequency
 * @param high SWR at the high edge
 * @param worst largest SWR over the whole band
 * @param best smallest SWR over the band
 * @param direct where in the band the SWR is at most 2
 */
public record PlaneResponse(
    Plane plane,
    double referenceOhm,
    double low,
    double middle,
    double high,
    SwrAt worst,
    SwrAt best,
    List<FrequencyRange> direct) {

  /** Takes a copy. */
  public PlaneResponse {
    direct = List.copyOf(direct);
  }

  /** The verdict on the worst SWR. */
  public Verdict verdict() {
    return Verdict.of(worst.swr());
  }
}
