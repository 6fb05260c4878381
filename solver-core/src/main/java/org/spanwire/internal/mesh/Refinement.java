package org.spanwire.internal.mesh;

/**
 * A stretch of a wire that is cut in a way of its own.
 *
 * @param wire index of the wire
 * @param from where it begins, metres along the wire
 * @param to where it ends
 * @param firstSize size of the first piece in metres
 * @param lastSize size of the last piece
 * @param largest largest piece in metres
 * @param growth ratio of neighbouring pieces, above 1
 * @param order polynomial order
 */
record Refinement(
    int wire,
    double from,
    double to,
    double firstSize,
    double lastSize,
    double largest,
    double growth,
    int order) {

  boolean covers(int wireIndex, double at) {
    return wireIndex == wire && at > from && at < to;
  }
}
