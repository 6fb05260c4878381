package org.spanwire.internal.field;

/**
 * A power found by integration.
 *
 * @param watts the power
 * @param errorWatts estimate of its absolute error; whoever asked for a tolerance compares it with
 *     that
 */
public record PowerIntegral(double watts, double errorWatts) {}
