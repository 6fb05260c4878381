/**
 * What happens between the feedpoint and the transmitter, in circuit terms.
 *
 * <p>Impedances are R + jX in ohms with time convention exp(+jωt). SWR, return loss and mismatch
 * loss are always stated with their reference impedance.
 */
package org.spanwire.circuit;
