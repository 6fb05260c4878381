package org.spanwire.internal.linear;

/**
 * The inverse of a complex symmetric matrix as A⁻¹ = W Wᵀ with W upper triangular, for bilinear
 * forms bᵀA⁻¹c of very many vectors with few entries each: t = Wᵀ b costs one row of W for every
 * entry of b, and bᵀA⁻¹c is the sum of the products of two such vectors. The leading part of t
 * belongs to the leading block of A. Safe for use by several threads.
 */
public final class InverseRoot {

  private final double[][] re;
  private final double[][] im;

  /** Takes rows of full length with zeros before the diagonal. */
  InverseRoot(double[][] re, double[][] im) {
    this.re = re;
    this.im = im;
  }

  /** Number of rows. */
  public int size() {
    return re.length;
  }

  /**
   * t = Wᵀ b.
   *
   * @param rows where b has entries
   * @param values the entries
   * @param tRe real parts of t, overwritten
   * @param tIm imaginary parts
   */
  public void project(int[] rows, double[] values, double[] tRe, double[] tIm) {
    java.util.Arrays.fill(tRe, 0);
    java.util.Arrays.fill(tIm, 0);
    int n = re.length;
    for (int i = 0; i < rows.length; i++) {
      double[] rowRe = re[rows[i]];
      double[] rowIm = im[rows[i]];
      double value = values[i];
      for (int j = rows[i]; j < n; j++) {
        tRe[j] += value * rowRe[j];
        tIm[j] += value * rowIm[j];
      }
    }
  }
}
