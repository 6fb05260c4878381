package org.spanwire.study;

import java.util.List;
import java.util.Map;
import org.spanwire.result.GainSample;
import org.spanwire.result.PeakGain;
import org.spanwire.result.Warning;

/**
 * An antenna over one band. SWR and impedance are those of the study's feed; the SWR is the same at
 * the feedpoint and at the transmitter as long as only ideal transformers lie between them.
 *
 * @param band name of the band
 * @param range its edges
 * @param swrLow SWR at the low edge
 * @param swrMiddle SWR at the middle frequency
 * @param swrHigh SWR at the high edge
 * @param worst largest SWR over the whole band
 * @param best smallest SWR over the band
 * @param direct where in the band the SWR is at most 2
 * @param feed what the feed sees at the best match
 * @param gapsMetres gap widths that were used, by feed
 * @param peak largest gain at the best match
 * @param gainSamples largest gain over azimuth at the study's elevations, at the best match
 * @param radiationEfficiency power radiated into the sky over power accepted, at the best match
 * @param points number of frequencies the curve over the band goes through
 * @param largestRelativeError largest estimated relative error of the impedances solved for
 * @param interpolationError largest error of |Γ| between the frequencies solved, estimated and
 *     checked at the best match
 * @param warnings named doubts, each once
 */
public record BandResponse(
    String band,
    FrequencyRange range,
    double swrLow,
    double swrMiddle,
    double swrHigh,
    SwrAt worst,
    SwrAt best,
    List<FrequencyRange> direct,
    SolvedFeed feed,
    Map<String, Double> gapsMetres,
    PeakGain peak,
    List<GainSample> gainSamples,
    double radiationEfficiency,
    int points,
    double largestRelativeError,
    double interpolationError,
    List<Warning> warnings) {

  /** Takes copies. */
  public BandResponse {
    direct = List.copyOf(direct);
    gapsMetres = Map.copyOf(gapsMetres);
    gainSamples = List.copyOf(gainSamples);
    warnings = List.copyOf(warnings);
  }

  /** The verdict on the worst SWR. */
  public Verdict verdict() {
    return Verdict.of(worst.swr());
  }
}
