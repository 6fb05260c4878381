/**
 * Fields of a given current: far field over any ground, gain and its maxima, power radiated to the
 * sky, power absorbed by soil.
 *
 * <p>Phasors are rms with time convention exp(+jωt); angles in degrees at the border, elevation
 * from the horizon, azimuth counter-clockwise from +x.
 */
package org.spanwire.internal.field;
