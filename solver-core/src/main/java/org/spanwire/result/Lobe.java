package org.spanwire.result;

import java.util.OptionalDouble;

/**
 * A local maximum of gain over all directions.
 *
 * @param gainDbi gain in dBi
 * @param elevationDegrees elevation above the horizon
 * @param azimuthDegrees azimuth, 0 up to 360; empty at the zenith or nadir and for a lobe that is
 *     the same all around
 */
public record Lobe(double gainDbi, double elevationDegrees, OptionalDouble azimuthDegrees) {}
