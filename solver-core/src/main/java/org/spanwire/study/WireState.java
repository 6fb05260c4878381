package org.spanwire.study;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Point;

/**
 * What flows and stands at a place of a wire.
 *
 * @param wire name of the wire
 * @param distance metres from its first point
 * @param place where in space
 * @param current rms amperes, positive toward increasing distance
 * @param charge rms coulombs per metre; within ten diameters of a wire's end, where the model is a
 *     tube with a sharp rim, that at ten diameters
 */
public record WireState(
    String wire, double distance, Point place, Complex current, Complex charge) {}
