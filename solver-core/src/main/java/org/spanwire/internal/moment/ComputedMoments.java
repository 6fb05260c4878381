package org.spanwire.internal.moment;

import java.util.List;
import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.medium.Ground;
import org.spanwire.medium.PerfectGround;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/** Moments at one frequency, integrated when they are asked for. */
final class ComputedMoments implements MomentSource {

  private final PairFill fill;
  private final boolean perfect;
  private final List<ReflectedKernel> soil;

  /**
   * The moments of a mesh, those of equal pairs integrated once.
   *
   * @param accuracy wanted relative accuracy of the integrals
   * @param tables kernels over soil, built here if they are not known
   */
  static MomentSource of(
      Mesh mesh, Ground ground, double frequencyHz, double accuracy, SoilKernels tables) {
    return new EqualPairs(mesh, new ComputedMoments(mesh, ground, frequencyHz, accuracy, tables));
  }

  /** Every pair integrated on its own. */
  ComputedMoments(
      Mesh mesh, Ground ground, double frequencyHz, double accuracy, SoilKernels tables) {
    this(
        mesh,
        ground,
        frequencyHz,
        accuracy,
        ground instanceof Soil below
            ? List.of(tables.kernel(below, frequencyHz, mesh, SoilKernels.SHARE * accuracy))
            : List.of());
  }

  /**
   * Moments with a kernel at hand.
   *
   * @param soil the kernel over soil, none over other ground
   */
  ComputedMoments(
      Mesh mesh, Ground ground, double frequencyHz, double accuracy, List<ReflectedKernel> soil) {
    fill = new PairFill(mesh, new double[] {PhysicalConstants.wavenumber(frequencyHz)}, accuracy);
    perfect = ground instanceof PerfectGround;
    this.soil = soil;
  }

  @Override
  public void direct(int i, int j, double[] re, double[] im) {
    fill.direct(i, j, 1, new double[][] {re}, new double[][] {im});
  }

  @Override
  public boolean reflects() {
    return perfect || !soil.isEmpty();
  }

  @Override
  public void reflected(int i, int j, double[][] re, double[][] im) {
    if (perfect) {
      fill.image(i, j, 1, re, im);
    } else {
      fill.soil(i, j, soil, re, im);
    }
  }
}
