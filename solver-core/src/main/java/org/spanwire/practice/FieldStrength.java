package org.spanwire.practice;

import org.spanwire.geometry.Point;

/**
 * Field strengths where a person is, rms over time at the peak of the envelope.
 *
 * @param place where
 * @param electric V/m
 * @param magnetic A/m
 */
public record FieldStrength(Point place, double electric, double magnetic) {}
