/**
 * Quantities with units, expressions over named quantities, and physical constants.
 *
 * <p>Values are SI inside: metre, hertz, ohm, henry, farad, siemens per metre, volt, watt, radian.
 * Percent is the number 0.01; decibel and dBi keep their own logarithmic number and combine with
 * nothing else.
 */
package org.spanwire.unit;
