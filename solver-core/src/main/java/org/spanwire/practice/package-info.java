/**
 * What is done with an antenna once it is designed: cut lengths and trimming, mechanics, ratings,
 * exposure of people.
 *
 * <p>SI units throughout; electrical phasors are rms with time convention exp(+jωt).
 */
package org.spanwire.practice;
