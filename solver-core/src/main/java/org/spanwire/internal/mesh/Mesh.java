package org.spanwire.internal.mesh;

import java.util.List;
import org.spanwire.geometry.Wire;

/**
 * Wires cut into pieces. Pieces of one wire follow each other along its path.
 *
 * @param wires the wires in order
 * @param pieces all pieces
 * @param order polynomial order of each piece
 * @param wire index of each piece's wire
 * @param distance distance of each piece's start from the wire's first point in metres
 * @param startNode node at each piece's start
 * @param endNode node at each piece's end
 * @param nodes number of nodes
 * @param grounded for each node whether it stands on perfect ground
 * @param gaps the ports in the order they were asked for
 */
public record Mesh(
    List<Wire> wires,
    List<Piece> pieces,
    int[] order,
    int[] wire,
    double[] distance,
    int[] startNode,
    int[] endNode,
    int nodes,
    boolean[] grounded,
    List<Gap> gaps) {

  /** The same mesh farther up. */
  public Mesh lifted(double metres) {
    if (metres == 0) {
      return this;
    }
    return new Mesh(
        wires.stream().map(wire -> wire.lifted(metres)).toList(),
        pieces.stream().map(piece -> piece.lifted(metres)).toList(),
        order,
        wire,
        distance,
        startNode,
        endNode,
        nodes,
        grounded,
        gaps);
  }

  /** Number of pieces. */
  public int size() {
    return pieces.size();
  }

  /** Highest polynomial order. */
  public int highestOrder() {
    int highest = 0;
    for (int p : order) {
      highest = Math.max(highest, p);
    }
    return highest;
  }

  /** Lowest polynomial order. */
  public int lowestOrder() {
    int lowest = Integer.MAX_VALUE;
    for (int p : order) {
      lowest = Math.min(lowest, p);
    }
    return lowest;
  }
}
