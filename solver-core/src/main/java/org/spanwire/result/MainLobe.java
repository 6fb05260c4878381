package org.spanwire.result;

import java.util.OptionalDouble;

/**
 * The shape of the main lobe (IEEE Std 145-2013).
 *
 * @param peak the largest gain and its direction
 * @param elevationBeamwidthDegrees half-power beamwidth in the vertical plane through the peak; a
 *     ground cuts the lobe off at the horizon; empty where the gain does not fall to one half
 * @param azimuthBeamwidthDegrees half-power beamwidth in azimuth at the peak's elevation; empty
 *     where azimuth has no meaning or the gain does not fall to one half
 * @param frontToBackDb gain at the peak over gain at the same elevation and the opposite azimuth;
 *     infinite for a null, empty where azimuth has no meaning
 */
public record MainLobe(
    PeakGain peak,
    OptionalDouble elevationBeamwidthDegrees,
    OptionalDouble azimuthBeamwidthDegrees,
    OptionalDouble frontToBackDb) {}
