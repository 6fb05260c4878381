package org.spanwire.study;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanwire.result.GainSample;
import org.spanwire.result.PeakGain;
import org.spanwire.result.Warning;

/**
 * An installation over one band. The best match is that at the transmitter.
 *
 * @param band name of the band
 * @param range its edges
 * @param planes SWR at the feedpoint, at the transformer's input if there is one, and at the
 *     transmitter
 * @param feed what the feed sees at the best match
 * @param gapsMetres gap widths that were used, by feed
 * @param peak largest gain at the best match
 * @param gainSamples largest gain over azimuth at the study's elevations, at the best match
 * @param radiationEfficiency power radiated into the sky over power accepted, at the best match
 * @param heat the largest heat of every part between transmitter and antenna over the frequencies
 *     solved, at the transmitter's power; the choke's only with the feed line's route
 * @param points number of frequencies the curve over the band goes through
 * @param largestRelativeError largest estimated relative error of the impedances solved for
 * @param interpolationError largest error of |Γ| between the frequencies solved, estimated and
 *     checked at the best match
 * @param warnings named doubts, each once
 */
public record BandResponse(
    String band,
    FrequencyRange range,
    List<PlaneResponse> planes,
    SolvedFeed feed,
    Map<String, Double> gapsMetres,
    PeakGain peak,
    List<GainSample> gainSamples,
    double radiationEfficiency,
    List<HeatAt> heat,
    int points,
    double largestRelativeError,
    double interpolationError,
    List<Warning> warnings) {

  /** Takes copies. */
  public BandResponse {
    planes = List.copyOf(planes);
    heat = List.copyOf(heat);
    gapsMetres = Map.copyOf(gapsMetres);
    gainSamples = List.copyOf(gainSamples);
    warnings = List.copyOf(warnings);
  }

  /**
   * SWR at a plane.
   *
   * @throws IllegalArgumentException if the chain has no such plane
   */
  public PlaneResponse at(Plane plane) {
    return find(plane)
        .orElseThrow(() -> new IllegalArgumentException("the chain has no plane " + plane.label()));
  }

  /** SWR at a plane, if the chain has it. */
  public Optional<PlaneResponse> find(Plane plane) {
    return planes.stream().filter(each -> each.plane() == plane).findFirst();
  }

  /** The verdict on the worst SWR at the transmitter. */
  public Verdict verdict() {
    return at(Plane.TRANSMITTER).verdict();
  }

  /** The largest heat of a part, if it is known. */
  public Optional<HeatAt> heat(String part) {
    return heat.stream().filter(each -> each.part().equals(part)).findFirst();
  }
}
