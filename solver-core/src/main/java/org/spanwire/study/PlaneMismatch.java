package org.spanwire.study;

import org.spanwire.circuit.Mismatch;

/**
 * What is seen at a plane.
 *
 * @param plane where
 * @param mismatch impedance there against the plane's reference
 */
public record PlaneMismatch(Plane plane, Mismatch mismatch) {}
