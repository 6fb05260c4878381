package org.spanwire.internal.moment;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import org.spanwire.internal.halfspace.KernelRegion;
import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.math.Parallel;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/** Integrates the moments of a family at its nodes. */
final class FamilyFill {

  private final FamilyPlan plan;
  private final double[] wavenumbers;

  /** For every node in height the mesh there. */
  private final List<Mesh> lifted = new ArrayList<>();

  /** Over soil, for every node in height a kernel for every node in frequency. */
  private final List<List<ReflectedKernel>> kernels;

  private FamilyFill(FamilyPlan plan, SoilKernels tables, int threads) {
    this.plan = plan;
    wavenumbers = new double[plan.mostFrequencies()];
    for (int f = 0; f < wavenumbers.length; f++) {
      wavenumbers[f] = PhysicalConstants.wavenumber(plan.frequencies().node(f));
    }
    for (int h = 0; h < plan.heightCount(); h++) {
      lifted.add(plan.mesh().lifted(plan.lift(h)));
    }
    kernels = plan.ground() instanceof Soil soil ? kernels(soil, tables, threads) : List.of();
  }

  /**
   * Moments of the pairs of one piece with itself and those after it.
   *
   * @param direct for every pair its nodes in frequency one after the other, real parts first
   * @param reflected for every pair, node in height and node in frequency the two channels, real
   *     parts first
   */
  record Row(double[][] direct, double[][] reflected) {}

  static List<Row> rows(FamilyPlan plan, SoilKernels tables, int threads) {
    FamilyFill fill = new FamilyFill(plan, tables, threads);
    List<Callable<Row>> tasks = new ArrayList<>();
    for (int i = 0; i < plan.mesh().size(); i++) {
      int row = i;
      tasks.add(() -> fill.row(row));
    }
    return Parallel.run(threads, tasks);
  }

  private List<List<ReflectedKernel>> kernels(Soil soil, SoilKernels tables, int threads) {
    List<KernelRegion> regions = regions();
    double tolerance = SoilKernels.SHARE * plan.accuracy();
    List<Callable<ReflectedKernel>> tasks = new ArrayList<>();
    for (int h = 0; h < plan.heightCount(); h++) {
      KernelRegion region = regions.get(h);
      Mesh mesh = lifted.get(h);
      for (int f = 0; f < plan.frequencyCount(); f++) {
        double frequency = plan.frequencies().node(f);
        tasks.add(() -> tables.kernel(soil, frequency, region, mesh, tolerance));
      }
    }
    List<ReflectedKernel> built = Parallel.run(threads, tasks);
    List<List<ReflectedKernel>> byHeight = new ArrayList<>();
    for (int h = 0; h < plan.heightCount(); h++) {
      byHeight.add(built.subList(h * plan.frequencyCount(), (h + 1) * plan.frequencyCount()));
    }
    return byHeight;
  }

  /** Its own for every height where all wires lie at one, so that tables are lines; else one. */
  private List<KernelRegion> regions() {
    List<KernelRegion> each = lifted.stream().map(SoilKernels::region).toList();
    KernelRegion first = each.get(0);
    if (first.zetaMin() == first.zetaMax()) {
      return each.stream().map(SoilKernels::rounded).toList();
    }
    double low = each.stream().mapToDouble(KernelRegion::zetaMin).min().orElseThrow();
    double high = each.stream().mapToDouble(KernelRegion::zetaMax).max().orElseThrow();
    KernelRegion common = SoilKernels.rounded(new KernelRegion(first.rhoMax(), low, high));
    return Collections.nCopies(each.size(), common);
  }

  private Row row(int i) {
    int n = plan.mesh().size();
    double[][] direct = new double[n - i][];
    double[][] reflected = new double[plan.reflects() ? n - i : 0][];
    int largest = (plan.mesh().highestOrder() + 1) * (plan.mesh().highestOrder() + 1);
    int channels = Math.max(wavenumbers.length, 2 * plan.frequencyCount());
    double[][] re = new double[channels][largest];
    double[][] im = new double[channels][largest];
    PairFill fill = new PairFill(plan.mesh(), wavenumbers, plan.accuracy());
    List<PairFill> above =
        lifted.stream()
            .map(
                mesh ->
                    mesh == plan.mesh() ? fill : new PairFill(mesh, wavenumbers, plan.accuracy()))
            .toList();
    for (int j = i; j < n; j++) {
      int size = (plan.mesh().order()[i] + 1) * (plan.mesh().order()[j] + 1);
      direct[j - i] = direct(fill, i, j, size, re, im);
      if (plan.reflects()) {
        reflected[j - i] = reflected(above, i, j, size, re, im);
      }
    }
    return new Row(direct, reflected);
  }

  private double[] direct(PairFill fill, int i, int j, int size, double[][] re, double[][] im) {
    int count = plan.directCount(i, j);
    fill.direct(i, j, count, re, im);
    double[] kept = new double[2 * size * count];
    double centres = PairDistances.direct(piece(i), piece(j));
    for (int c = 0; c < count; c++) {
      turn(re[c], im[c], wavenumbers[c] * centres, 1, size, kept, 2 * size * c);
    }
    return kept;
  }

  private double[] reflected(
      List<PairFill> above, int i, int j, int size, double[][] re, double[][] im) {
    int count = plan.frequencyCount();
    double[] kept = new double[4 * size * count * plan.heightCount()];
    for (int h = 0; h < plan.heightCount(); h++) {
      if (kernels.isEmpty()) {
        above.get(h).image(i, j, count, re, im);
      } else {
        above.get(h).soil(i, j, kernels.get(h), re, im);
      }
      double centres = PairDistances.reflected(piece(i), piece(j), plan.lift(h));
      for (int c = 0; c < 2 * count; c++) {
        int at = 2 * size * (2 * count * h + c);
        turn(re[c], im[c], wavenumbers[c / 2] * centres, centres, size, kept, at);
      }
    }
    return kept;
  }

  private Piece piece(int i) {
    return plan.mesh().pieces().get(i);
  }

  /** Writes values times exp(j phase) and a factor. */
  private static void turn(
      double[] re, double[] im, double phase, double factor, int size, double[] to, int at) {
    double c = factor * Math.cos(phase);
    double s = factor * Math.sin(phase);
    for (int n = 0; n < size; n++) {
      to[at + n] = re[n] * c - im[n] * s;
      to[at + size + n] = re[n] * s + im[n] * c;
    }
  }
}
