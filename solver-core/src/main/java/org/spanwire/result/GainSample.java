package org.spanwire.result;

import java.util.OptionalDouble;

/**
 * Gain at an elevation.
 *
 * @param elevationDegrees elevation above the horizon
 * @param azimuthDegrees azimuth counter-clockwise from +x, 0 up to 360; empty if the gain is the
 *     same all around
 * @param gainDbi gain in dBi; negative infinity in a null
 */
public record GainSample(double elevationDegrees, OptionalDouble azimuthDegrees, double gainDbi) {}
