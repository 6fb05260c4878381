package org.spanwire.internal.mesh;

/**
 * A port as it lies on the mesh: the pieces it covers, end to end.
 *
 * @param name name of the feed or fitting
 * @param wire index of the wire
 * @param pieces indices of the covered pieces
 * @param width total length of the covered pieces in metres; at a wire's end on perfect ground that
 *     is half the gap of wire and image
 * @param nominal gap width in metres as asked for or by default
 */
public record Gap(String name, int wire, int[] pieces, double width, double nominal) {}
