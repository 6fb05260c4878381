/**
 * Kernels of the potentials reflected by a homogeneous half-space, source and observer in air:
 * direct quadrature of the Sommerfeld integrals, tables for look-up, and the limit of perfect
 * ground. Time convention exp(+jωt), z up, ground at z = 0.
 */
package org.spanwire.internal.halfspace;
