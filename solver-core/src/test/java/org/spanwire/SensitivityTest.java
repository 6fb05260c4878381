package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;
import org.spanwire.result.Sensitivity;

/** Slopes from one solution are held to differences of others at a far tighter tolerance. */
class SensitivityTest {

  private static final double LENGTH = 20.3;
  private static final double DIAMETER = 2e-3;
  private static final Solver USUAL = new Solver();
  private static final Solver TIGHT = new Solver(new SolverOptions(1e-5));

  /** A span over soil with everything that may change. */
  private record Kit(
      double length,
      double offset,
      double height,
      double drop,
      double diameter,
      double coat,
      double permittivity,
      double conductivity,
      double henries,
      double farads) {

    static final Kit NOMINAL =
        new Kit(LENGTH, 0.36, 9, 1.5, DIAMETER, 0.6e-3, 13, 5e-3, 4e-6, 4e-12);

    Antenna over(Ground ground) {
      Conductor strand =
          Conductor.bare(Materials.COPPER, diameter / 2)
              .withInsulation(new Insulation(coat, 2.3, 5e-4));
      return Antenna.builder()
          .wire("span", strand, new Point(0, 0, height), new Point(length, 0, height - drop))
          .feed(
              Feed.of("main", "span", Position.fraction(offset))
                  .withGap(8e-3)
                  .withCapacitance(farads))
          .fitting(
              new Fitting(
                  "coil",
                  "span",
                  Position.distance(15),
                  OptionalDouble.empty(),
                  f -> new Complex(3, 2 * Math.PI * f * henries)))
          .ground(ground)
          .build();
    }

    Antenna overSoil() {
      return over(Soil.of(permittivity, conductivity));
    }

    Kit with(
        double moreLength, double moreOffset, double moreHeight, double moreDrop, double more) {
      return new Kit(
          length + moreLength,
          offset + moreOffset,
          height + moreHeight,
          drop + moreDrop,
          diameter + more,
          coat,
          permittivity,
          conductivity,
          henries,
          farads);
    }

    Kit with(double moreCoat, double permittivity, double conductivity) {
      return new Kit(
          length,
          offset,
          height,
          drop,
          diameter,
          coat + moreCoat,
          this.permittivity + permittivity,
          this.conductivity + conductivity,
          henries,
          farads);
    }

    Kit withParts(double moreHenries, double moreFarads) {
      return new Kit(
          length,
          offset,
          height,
          drop,
          diameter,
          coat,
          permittivity,
          conductivity,
          henries + moreHenries,
          farads + moreFarads);
    }
  }

  private static Arguments of(String name, DoubleFunction<Kit> changed, double reach) {
    DoubleFunction<Antenna> antenna = t -> changed.apply(t).overSoil();
    return Arguments.of(name, antenna, reach);
  }

  static Stream<Arguments> parameters() {
    Kit kit = Kit.NOMINAL;
    return Stream.of(
        of("length", t -> kit.with(t, 0, 0, 0, 0), 0.1),
        of("offset", t -> kit.with(0, t, 0, 0, 0), 3e-3),
        of("height", t -> kit.with(0, 0, t, 0, 0), 0.1),
        of("height of one end", t -> kit.with(0, 0, 0, t, 0), 0.05),
        of("diameter", t -> kit.with(0, 0, 0, 0, t), 5e-5),
        of("coat", t -> kit.with(t, 0, 0), 3e-5),
        of("permittivity", t -> kit.with(0, t, 0), 0.3),
        of("conductivity", t -> kit.with(0, 0, t), 2e-4),
        of("fitting", t -> kit.withParts(t, 0), 1e-7),
        of("capacitance", t -> kit.withParts(0, t), 1e-13));
  }

  private static Complex difference(DoubleFunction<Antenna> changed, double step, double hertz) {
    Complex up = TIGHT.solve(changed.apply(step), hertz).impedance();
    Complex down = TIGHT.solve(changed.apply(-step), hertz).impedance();
    return up.subtract(down).divide(2 * step);
  }

  /** Central differences of two steps, extrapolated. */
  private static Complex extrapolated(DoubleFunction<Antenna> changed, double reach, double hertz) {
    Complex narrow = difference(changed, reach / 2, hertz);
    Complex wide = difference(changed, reach, hertz);
    return narrow.multiply(4).subtract(wide).divide(3);
  }

  /**
   * A slope errs as its solution does: by 2e-4 and 3e-6 at most where the tolerances say 1e-3,
   * 1e-4.
   */
  @ParameterizedTest(name = "{0}")
  @MethodSource("parameters")
  void equalsDifferencesOfSolutions(String name, DoubleFunction<Antenna> changed, double reach) {
    double hertz = 14.2e6;
    Complex expected = extrapolated(changed, reach, hertz);
    Complex usual = slope(USUAL, changed, reach, hertz);
    assertThat(usual.subtract(expected).abs()).isLessThan(1e-3 * expected.abs());
    Complex tighter = slope(new Solver(new SolverOptions(1e-4)), changed, reach, hertz);
    assertThat(tighter.subtract(expected).abs()).isLessThan(2e-5 * expected.abs());
  }

  private static Complex slope(
      Solver solver, DoubleFunction<Antenna> changed, double reach, double hertz) {
    Sensitivity found = solver.solve(changed.apply(0), hertz).sensitivity(changed, reach);
    assertThat(found.relativeError()).isLessThan(3e-3);
    return found.impedance().get(0);
  }

  @Test
  void everyPortHasItsSlopes() {
    DoubleFunction<Antenna> changed =
        t ->
            Antenna.builder()
                .wire(
                    "fed",
                    Conductor.perfect(1e-3),
                    new Point(0, 0, 8),
                    new Point(12, 0, 8),
                    new Point(19, 3 + t, 7))
                .wire("other", Conductor.perfect(2e-3), new Point(0, 4, 6), new Point(18, 4 - t, 9))
                .feed(Feed.of("one", "fed", Position.distance(5 + t)))
                .feed(Feed.of("two", "fed", Position.fraction(0.8)))
                .feed(Feed.of("three", "other", Position.fraction(0.4)).withVoltage(Complex.I))
                .ground(Ground.perfect())
                .build();
    double reach = 0.05;
    Solution solution = new Solver(new SolverOptions(1e-4)).solve(changed.apply(0), 9e6);
    Sensitivity found = solution.sensitivity(changed, reach);
    Complex[][] up = TIGHT.solve(changed.apply(reach / 4), 9e6).admittanceMatrix();
    Complex[][] down = TIGHT.solve(changed.apply(-reach / 4), 9e6).admittanceMatrix();
    double largest = 0;
    for (int i = 0; i < 3; i++) {
      largest = Math.max(largest, found.admittance().get(i).get(i).abs());
    }
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        Complex expected = up[i][j].subtract(down[i][j]).divide(reach / 2);
        Complex slope = found.admittance().get(i).get(j);
        assertThat(slope).isEqualTo(found.admittance().get(j).get(i));
        assertThat(slope.subtract(expected).abs()).isLessThan(1e-3 * largest);
      }
    }
    Complex before = TIGHT.solve(changed.apply(-reach / 4), 9e6).impedance("three");
    Complex after = TIGHT.solve(changed.apply(reach / 4), 9e6).impedance("three");
    Complex expected = after.subtract(before).divide(reach / 2);
    assertThat(found.impedance().get(2).subtract(expected).abs()).isLessThan(1e-3 * expected.abs());
  }

  /**
   * Without loss and ground an antenna λ times as large behaves at a λ-th of the frequency as it
   * did: Euler's theorem on homogeneous functions then has Σ x ∂Z/∂x over all its dimensions x
   * equal to f ∂Z/∂f, for every such antenna and exactly.
   */
  @Test
  void slopesOfAllDimensionsAddUpToThatOfFrequency() {
    double hertz = 8e6;
    double[] sizes = {7, 5, 1.5e-3, 6e-3};
    double sum = 0;
    Complex total = Complex.ZERO;
    Solution solution = new Solver(new SolverOptions(1e-5)).solve(bent(sizes), hertz);
    for (int i = 0; i < sizes.length; i++) {
      int index = i;
      Sensitivity found =
          solution.sensitivity(
              t -> {
                double[] changed = sizes.clone();
                changed[index] += t;
                return bent(changed);
              },
              0.01 * sizes[i]);
      total = total.add(found.impedance().get(0).multiply(sizes[i]));
      sum += found.impedance().get(0).abs() * sizes[i];
    }
    double step = 0.002 * hertz;
    Complex up = TIGHT.solve(bent(sizes), hertz + step).impedance();
    Complex down = TIGHT.solve(bent(sizes), hertz - step).impedance();
    Complex expected = up.subtract(down).multiply(hertz / (2 * step));
    assertThat(total.subtract(expected).abs()).isLessThan(1e-4 * sum);
  }

  /** The feed a third along the first leg. */
  private static Antenna bent(double[] sizes) {
    return Antenna.builder()
        .wire(
            "bent",
            Conductor.perfect(sizes[2]),
            new Point(0, 0, 0),
            new Point(sizes[0], 0, 0),
            new Point(sizes[0], sizes[1], 0))
        .feed(Feed.of("main", "bent", Position.distance(sizes[0] / 3)).withGap(sizes[3]))
        .build();
  }

  @Test
  void whereSymmetryForbidsASlopeThereIsNone() {
    DoubleFunction<Antenna> moved =
        t -> Kit.NOMINAL.with(0, 0.14 + t, 0, -1.5, 0).withParts(-4e-6, 0).over(Ground.perfect());
    DoubleFunction<Antenna> bare =
        t -> {
          Antenna.Builder builder = Antenna.builder().ground(Ground.perfect());
          moved.apply(t).wires().forEach(builder::wire);
          moved.apply(t).feeds().forEach(builder::feed);
          return builder.build();
        };
    Solution solution = USUAL.solve(bare.apply(0), 7.1e6);
    Sensitivity found = solution.sensitivity(bare, 3e-3);
    // The whole wire's worth of slope would change the impedance by less than a millionth.
    assertThat(found.impedance().get(0).abs()).isLessThan(1e-6 * solution.impedance().abs());
  }

  /** Steps so wide that the slope is no longer straight show in the stated error. */
  @Test
  void statedErrorCoversWideSteps() {
    Kit kit = Kit.NOMINAL;
    DoubleFunction<Antenna> changed = t -> kit.with(t, 0, 0, 0, 0).overSoil();
    Solution solution = new Solver(new SolverOptions(1e-5)).solve(changed.apply(0), 14.2e6);
    Complex expected = solution.sensitivity(changed, 0.05).impedance().get(0);
    for (double reach : new double[] {0.5, 1, 2}) {
      Sensitivity found = solution.sensitivity(changed, reach);
      assertThat(found.impedance().get(0).subtract(expected).abs())
          .as("reach %s", reach)
          .isLessThan((found.relativeError() + 1e-5) * expected.abs());
    }
  }

  @Test
  void sameBitsEveryTime() {
    DoubleFunction<Antenna> changed = t -> Kit.NOMINAL.with(t, 0, 0, 0, 0).overSoil();
    Sensitivity one = USUAL.solve(changed.apply(0), 7.1e6).sensitivity(changed, 0.1);
    Sensitivity other = new Solver().solve(changed.apply(0), 7.1e6).sensitivity(changed, 0.1);
    assertThat(other).isEqualTo(one);
  }

  @Test
  void antennasOfOtherPartsAreRefused() {
    Antenna kit = Kit.NOMINAL.overSoil();
    Solution solution = USUAL.solve(kit, 7.1e6);
    List<DoubleFunction<Antenna>> others =
        List.of(
            t -> Kit.NOMINAL.over(Ground.perfect()),
            t -> kit.toBuilder().wire(kit.wires().get(0).lifted(3)).build(),
            // The feed passes the coil.
            t -> Kit.NOMINAL.with(0, 0.4 + 0.1 * Math.signum(t), 0, 0, 0).overSoil());
    for (DoubleFunction<Antenna> other : others) {
      assertThatThrownBy(() -> solution.sensitivity(other, 0.1))
          .isInstanceOf(GeometryException.class)
          .hasMessageContaining("the changed antenna");
    }
    assertThatThrownBy(() -> solution.sensitivity(t -> kit, 0))
        .hasMessageContaining("reach 0.0 must be positive");
  }

  @Test
  void whatChangesNothingHasNoSlope() {
    Antenna kit = Kit.NOMINAL.overSoil();
    Sensitivity found = USUAL.solve(kit, 7.1e6).sensitivity(t -> kit, 1);
    assertThat(found.impedance().get(0).abs()).isEqualTo(0, within(0.0));
    assertThat(found.relativeError()).isEqualTo(0, within(0.0));
  }
}
