package org.spanwire.internal.field;

import org.apache.commons.math3.complex.Complex;

/**
 * The far electric field in a direction, r E e^{+jk0r} with r measured from the origin, volts rms;
 * time convention exp(+jωt).
 *
 * @param theta component along increasing polar angle (downward at the horizon): vertical
 *     polarisation
 * @param phi component along increasing azimuth: horizontal polarisation
 */
public record RadiatedField(Complex theta, Complex phi) {}
