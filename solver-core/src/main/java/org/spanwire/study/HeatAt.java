package org.spanwire.study;

/**
 * Heat in a part at a frequency.
 *
 * @param part name of the part
 * @param watts its heat at the transmitter's power
 * @param frequencyHz frequency in hertz
 */
public record HeatAt(String part, double watts, double frequencyHz) {}
