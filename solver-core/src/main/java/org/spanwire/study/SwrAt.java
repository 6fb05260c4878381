package org.spanwire.study;

/**
 * An SWR at a frequency.
 *
 * @param frequencyHz frequency in hertz
 * @param swr standing-wave ratio, 1 to infinity
 */
public record SwrAt(double frequencyHz, double swr) {}
