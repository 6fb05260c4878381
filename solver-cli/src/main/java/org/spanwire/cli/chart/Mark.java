package org.spanwire.cli.chart;

/**
 * A place of a picture that can be read out.
 *
 * @param x to the right, in the picture's units
 * @param y downwards
 * @param text what is there, with units
 */
public record Mark(double x, double y, String text) {}
