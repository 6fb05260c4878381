package org.spanwire.internal.moment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.MeshDensity;
import org.spanwire.internal.mesh.Mesher;
import org.spanwire.internal.mesh.Port;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;

/** A family of matrices against matrices whose moments are integrated one by one. */
class MomentFamilyTest {

  private static final double ACCURACY = 1e-6;

  /** Of the port admittances; the interpolation of single pairs is held to ten times that. */
  private static final double AGREEMENT = 1e-6;

  private static final long BYTES = 1L << 28;

  private static final Conductor COATED =
      Conductor.bare(Materials.COPPER, 1e-3).withInsulation(new Insulation(6e-4, 2.3, 5e-4));

  private static final double[] BANDS = bands(3.5e6, 3.8e6, 7.0e6, 7.2e6, 14e6, 14.35e6);

  /** Shapes that bring all kinds of pairs: on one line, at corners, upright, far apart. */
  enum Shape {
    LEVEL(Wire.of("radiator", COATED, new Point(0, 0, 9), new Point(27, 0, 9))),
    INVERTED_V(
        Wire.of("radiator", COATED, new Point(-9, 0, 4), new Point(0, 0, 10), new Point(9, 2, 3))),
    WITH_LINE(
        Wire.of("radiator", COATED, new Point(-7, 0, 9), new Point(0, 0, 9)),
        Wire.of("arm", COATED, new Point(0, 0, 9), new Point(14, 0, 8)),
        Wire.of("line", COATED, new Point(0, 0, 9), new Point(0, 0, 1.2), new Point(-6, 0, 1)));

    private final List<Wire> wires;

    Shape(Wire... wires) {
      this.wires = List.of(wires);
    }

    Mesh mesh(Ground ground) {
      return Mesher.mesh(
          wires,
          List.of(Port.of(Feed.of("main", "radiator", Position.fraction(0.31)))),
          ground,
          BANDS[BANDS.length - 1],
          MeshDensity.level(0));
    }
  }

  enum Below {
    NOTHING(Ground.freeSpace()),
    PERFECT(Ground.perfect()),
    SOIL(Soil.of(13, 0.005)),
    DRY_SOIL(Soil.of(3, 1e-4));

    private final Ground ground;

    Below(Ground ground) {
      this.ground = ground;
    }
  }

  private static double[] bands(double... edges) {
    return IntStream.range(0, edges.length / 2)
        .boxed()
        .flatMap(
            b ->
                IntStream.rangeClosed(0, 6)
                    .mapToObj(i -> edges[2 * b] + (edges[2 * b + 1] - edges[2 * b]) * i / 6))
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  private static double difference(PortSolution a, PortSolution b) {
    return a.admittance(0, 0).subtract(b.admittance(0, 0)).abs() / b.admittance(0, 0).abs();
  }

  private static double worst(
      MomentFamily family, Mesh mesh, Ground ground, double[] frequencies, double[] lifts) {
    SoilKernels tables = new SoilKernels();
    double worst = 0;
    for (double frequency : frequencies) {
      for (double lift : lifts) {
        assertThat(family.covers(frequency, lift)).isTrue();
        worst =
            Math.max(
                worst,
                difference(
                    family.solve(frequency, lift),
                    PortSolution.solve(mesh.lifted(lift), ground, frequency, ACCURACY, tables)));
      }
    }
    return worst;
  }

  @ParameterizedTest
  @EnumSource(Below.class)
  void agreesWithSingleSolutionsOverFrequency(Below below) {
    for (Shape shape : Shape.values()) {
      Mesh mesh = shape.mesh(below.ground);
      MomentFamily family =
          MomentFamily.of(
                  mesh, below.ground, BANDS, new double[1], ACCURACY, new SoilKernels(), BYTES, 2)
              .orElseThrow();
      assertThat(family.frequencyNodes()).isLessThan(BANDS.length / 2);
      double[] between = {3.5e6, 3.7213e6, 7.1234e6, 14.0321e6, 14.35e6};
      assertThat(worst(family, mesh, below.ground, between, new double[1]))
          .as("%s", shape)
          .isLessThan(AGREEMENT);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Below.class,
      names = {"PERFECT", "SOIL", "DRY_SOIL"})
  void agreesWithSingleSolutionsOverHeight(Below below) {
    double[] lifts = IntStream.rangeClosed(0, 28).mapToDouble(i -> -0.5 + 0.25 * i).toArray();
    double[] band = bands(14e6, 14.35e6);
    for (Shape shape : Shape.values()) {
      Mesh mesh = shape.mesh(below.ground);
      MomentFamily family =
          MomentFamily.of(mesh, below.ground, band, lifts, ACCURACY, new SoilKernels(), BYTES, 2)
              .orElseThrow();
      assertThat(family.heightNodes()).isLessThan(lifts.length / 2);
      double[] between = {-0.5, 0.6123, 4.9};
      double[] frequencies = {14.1e6, 14.321e6};
      assertThat(worst(family, mesh, below.ground, frequencies, between))
          .as("%s", shape)
          .isLessThan(AGREEMENT);
    }
  }

  /** Fewer nodes than planned are noticed, in frequency (direct and reflected) and in height. */
  @Test
  void needsAllItsNodes() {
    Ground ground = Below.SOIL.ground;
    Mesh mesh = Shape.INVERTED_V.mesh(ground);
    double[] lifts = IntStream.rangeClosed(0, 40).mapToDouble(i -> -0.5 + 0.25 * i).toArray();
    FamilyPlan plan =
        FamilyPlan.of(mesh, ground, FamilyPlan.nodes(BANDS), lifts, ACCURACY).orElseThrow();
    List<FamilyPlan> fewer = new ArrayList<>();
    int[] direct = IntStream.of(plan.directCounts()).map(n -> Math.max(1, n - 3)).toArray();
    fewer.add(with(plan, direct, plan.frequencyCount(), plan.heightCount()));
    fewer.add(with(plan, plan.directCounts(), plan.frequencyCount() - 4, plan.heightCount()));
    fewer.add(with(plan, plan.directCounts(), plan.frequencyCount(), plan.heightCount() - 4));
    double[] frequencies = {3.55e6, 7.02e6, 14.05e6};
    double[] between = {-0.4, 8.3};
    MomentFamily whole = MomentFamily.of(plan, new SoilKernels(), 2);
    assertThat(worst(whole, mesh, ground, frequencies, between)).isLessThan(AGREEMENT);
    for (FamilyPlan each : fewer) {
      MomentFamily family = MomentFamily.of(each, new SoilKernels(), 2);
      assertThat(worst(family, mesh, ground, frequencies, between)).isGreaterThan(2 * AGREEMENT);
    }
  }

  private static FamilyPlan with(FamilyPlan plan, int[] direct, int frequencies, int heights) {
    return new FamilyPlan(
        plan.mesh(),
        plan.ground(),
        plan.accuracy(),
        plan.frequencies(),
        plan.lifts(),
        plan.heights(),
        frequencies,
        heights,
        direct);
  }

  @Test
  void givesTheSameBitsOnAnyNumberOfThreads() {
    Ground ground = Below.SOIL.ground;
    Mesh mesh = Shape.WITH_LINE.mesh(ground);
    List<double[]> matrices = new ArrayList<>();
    for (int threads : new int[] {1, 2, 8}) {
      matrices.add(
          MomentFamily.of(
                  mesh, ground, BANDS, new double[1], ACCURACY, new SoilKernels(), BYTES, threads)
              .orElseThrow()
              .matrix(7.0531e6, 0)
              .data);
    }
    assertThat(matrices.get(1)).isEqualTo(matrices.get(0));
    assertThat(matrices.get(2)).isEqualTo(matrices.get(0));
  }

  @Test
  void doesNotAnswerBeyondWhatItWasMadeFor() {
    Ground ground = Ground.perfect();
    Mesh mesh = Shape.LEVEL.mesh(ground);
    MomentFamily family =
        MomentFamily.of(
                mesh,
                ground,
                BANDS,
                new double[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10},
                ACCURACY,
                new SoilKernels(),
                BYTES,
                1)
            .orElseThrow();
    assertThat(family.covers(10.1e6, 0)).isFalse();
    assertThat(family.covers(7.1e6, 15)).isFalse();
    assertThat(family.covers(7.1e6, 4.5)).isTrue();
  }
}
