package org.spanwire.study;

/**
 * The value of a requirement's quantity where it decides.
 *
 * @param gauge reads the quantity
 * @param operation the installation there
 * @param value the quantity's value
 * @param low smallest value that the numerical errors allow
 * @param high largest value that the numerical errors allow
 */
record Finding(Gauge gauge, Operation operation, double value, double low, double high) {}
