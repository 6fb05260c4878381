/**
 * How exact Spanwire is by its own measure: convergence against unknowns, honesty of the stated
 * error on random structures, and a search for inputs that break it.
 */
package org.spanwire.validation.accuracy;
