package org.spanwire.internal.basis;

import java.util.List;
import org.spanwire.internal.mesh.Piece;

/**
 * A current along pieces: on piece i, I(t) = Σ_k (re[i][k] + j im[i][k]) P_k(t) amperes rms with
 * Legendre polynomials P_k, t from −1 to 1. The current need not vanish at free ends, so that a
 * prescribed current can be expressed too.
 *
 * @param pieces the pieces
 * @param re real parts of the Legendre coefficients, one row for each piece
 * @param im imaginary parts
 */
public record CurrentExpansion(List<Piece> pieces, double[][] re, double[][] im) {

  /** Checks that shapes agree. The arrays are not copied: the engine hands them over for good. */
  public CurrentExpansion {
    pieces = List.copyOf(pieces);
    if (re.length != pieces.size() || im.length != pieces.size()) {
      throw new IllegalArgumentException("one row of coefficients for each piece expected");
    }
  }
}
