/**
 * What happens between the feedpoint and the transmitter, in circuit terms.
 *
 * <p>{@link org.spanwire.circuit.NPort} is a network at one frequency, {@link
 * org.spanwire.circuit.Network} one against frequency: lines, ladders, transformers, attenuators,
 * or data read by {@link org.spanwire.circuit.Touchstone}. {@link org.spanwire.circuit.FeedChain}
 * puts them in a row and says where the watts go. Of every 2-port port 1 looks towards the
 * transmitter; of a three-terminal transformer ports 2 and 3 are the terminals towards the wire's
 * first and last point, all against the node to which the outside of the feed line ties.
 *
 * <p>Impedances are R + jX in ohms with time convention exp(+jωt), voltages and currents rms. An
 * open circuit is {@link org.apache.commons.math3.complex.Complex#INF}, a short circuit zero. SWR,
 * return loss and mismatch loss are always stated with their reference impedance.
 */
package org.spanwire.circuit;
