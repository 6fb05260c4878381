/**
 * The door: describe an {@link org.spanwire.Antenna}, hand it to a {@link org.spanwire.Solver} with
 * {@link org.spanwire.SolverOptions}, read the {@link org.spanwire.Solution}.
 *
 * <h2>Conventions of the whole library</h2>
 *
 * <ul>
 *   <li>Time convention exp(+jωt): an inductive impedance has a positive imaginary part, a lossy
 *       permittivity a negative one. Phasors are rms, so complex power is V·I*.
 *   <li>SI units in {@code double}; a value in another unit carries it in its name ({@code
 *       gainDbi}, {@code elevationDegrees}).
 *   <li>Right-handed x, y, z in metres; z points up and the ground surface is z = 0. Elevation
 *       counts from the horizon, azimuth counter-clockwise from +x.
 *   <li>Positive current runs toward increasing distance along a wire's path.
 *   <li>Gain counts conductor and ground loss; directivity counts neither; mismatch is in neither
 *       of them, it belongs to realized gain. An SWR or a return loss is always stated with its
 *       reference impedance.
 *   <li>Complex numbers are {@link org.apache.commons.math3.complex.Complex}.
 *   <li>Values are immutable. An array that is handed out is a fresh copy.
 * </ul>
 */
package org.spanwire;
