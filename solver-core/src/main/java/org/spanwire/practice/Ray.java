package org.spanwire.practice;

import org.spanwire.geometry.Point;

/**
 * A level way from a conductor outward, in plan.
 *
 * @param x where it starts, metres
 * @param y where it starts, metres
 * @param azimuth its direction in radians counter-clockwise from +x
 */
record Ray(double x, double y, double azimuth) {

  /** The place at a distance along it and a height, both in metres. */
  Point at(double distance, double height) {
    return new Point(x + distance * Math.cos(azimuth), y + distance * Math.sin(azimuth), height);
  }

  /** The ray midway to a neighbour. */
  Ray toward(Ray other) {
    return new Ray(0.5 * (x + other.x), 0.5 * (y + other.y), 0.5 * (azimuth + other.azimuth));
  }
}
