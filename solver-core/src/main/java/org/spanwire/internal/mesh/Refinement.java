package org.spanwire.internal.mesh;

/**
 * A stretch of a wire that is cut by a density of its own.
 *
 * @param wire index of the wire
 * @param from where it begins, metres along the wire
 * @param to where it ends
 * @param firstSize size of the first piece in metres
 * @param lastSize size of the last piece
 * @param density how it is cut in between
 */
record Refinement(
    int wire, double from, double to, double firstSize, double lastSize, MeshDensity density) {}
