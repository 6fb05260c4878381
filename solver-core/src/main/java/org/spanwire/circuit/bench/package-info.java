/**
 * Transformers and chokes on the bench: what measurements say about a wound unit, and what to wind.
 *
 * <p>Impedances are R + jX in ohms with time convention exp(+jωt); losses in dB are positive.
 */
package org.spanwire.circuit.bench;
