package org.spanwire.study;

import java.util.List;
import java.util.Map;
import org.spanwire.practice.FarFieldScreen;
import org.spanwire.practice.KeepOut;
import org.spanwire.result.Warning;

/**
 * Exposure over a band, at the frequency of the band that reaches furthest for each limit.
 *
 * @param band name of the band
 * @param gapsMetres gap widths that were used, by feed
 * @param antennaWatts largest peak envelope power in watts at the antenna's feed
 * @param largestRelativeError largest estimated relative error of the impedances solved for
 * @param rows one for each floor and each limit that covers the band, floors first
 * @param warnings named doubts
 */
public record BandExposure(
    String band,
    Map<String, Double> gapsMetres,
    double antennaWatts,
    double largestRelativeError,
    List<Row> rows,
    List<Warning> warnings) {

  /**
   * A floor and a limit.
   *
   * @param keepOut the distance to keep
   * @param screen what the far field alone would say
   */
  public record Row(KeepOut keepOut, FarFieldScreen screen) {}

  /** Copies the lists. */
  public BandExposure {
    gapsMetres = Map.copyOf(gapsMetres);
    rows = List.copyOf(rows);
    warnings = List.copyOf(warnings);
  }
}
