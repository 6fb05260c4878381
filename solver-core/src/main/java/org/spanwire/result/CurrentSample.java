package org.spanwire.result;

import org.apache.commons.math3.complex.Complex;

/**
 * Current at a place of a wire.
 *
 * @param wire name of the wire
 * @param distance distance from the wire's first point in metres
 * @param current rms phasor in amperes, positive toward increasing distance
 */
public record CurrentSample(String wire, double distance, Complex current) {}
