package org.spanwire.result;

import java.util.OptionalDouble;

/**
 * The largest gain over all directions (over ground: over the upper hemisphere), found by search.
 *
 * @param gainDbi gain in dBi, conductor and ground loss counted, mismatch not
 * @param elevationDegrees elevation of the peak; empty if the gain is the same at all elevations
 * @param azimuthDegrees azimuth of the peak, 0 up to 360; empty where azimuth has no meaning, at
 *     the zenith or for a pattern that is the same all around
 */
public record PeakGain(
    double gainDbi, OptionalDouble elevationDegrees, OptionalDouble azimuthDegrees) {}
