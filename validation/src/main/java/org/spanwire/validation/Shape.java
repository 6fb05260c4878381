package org.spanwire.validation;

import java.util.Arrays;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanwire.Antenna;

/**
 * The structures that a case can ask for, each built from a few parameters with lengths in
 * wavelengths.
 */
enum Shape {
  /** Nothing to solve: a function of material, line or mismatch. */
  NONE(p -> Antenna.builder().build()),

  /** Straight wire with one feed, tilted from the z axis, its centre at a height. */
  DIPOLE(
      StraightShapes::dipole,
      "length",
      "feedFraction",
      "height",
      "tiltDegrees",
      "azimuthDegrees",
      "shift",
      "reversed"),

  /**
   * Two parallel wires along z, a lateral spacing and an axial offset apart, both fed at their
   * centres.
   */
  DIPOLE_PAIR(StraightShapes::pair, "length", "spacing", "offset", "secondRadius", "phaseDegrees"),

  /** Vertical wire on perfect ground, fed at its foot. */
  MONOPOLE(StraightShapes::monopole, "length"),

  /** Parallel elements along a boom, one of them fed. */
  YAGI(StraightShapes::yagi, "lengths", "spacings", "driven"),

  /** Regular polygon in place of a circle, fed in the middle of a side. */
  LOOP(BentShapes::loop, "circumference", "radiusRatio", "sides", "sameArea"),

  /** Two straight arms that meet under an angle, fed at the apex. */
  VEE(BentShapes::vee, "arm", "apexDegrees"),

  /** Two parallel wires joined at their ends, one of them fed at its centre. */
  FOLDED_DIPOLE(BentShapes::folded, "length", "spacing", "secondRadius");

  /** A reference to a method without state. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final Function<Parameters, Antenna> antenna;

  /** Cannot be changed. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final Set<String> names;

  Shape(Function<Parameters, Antenna> antenna, String... own) {
    this.antenna = antenna;
    this.names =
        Stream.concat(Parts.PARAMETER_NAMES.stream(), Arrays.stream(own))
            .collect(Collectors.toUnmodifiableSet());
  }

  /** The names of the parameters that the structure depends on. */
  Set<String> parameterNames() {
    return names;
  }

  Antenna antenna(Parameters parameters) {
    return antenna.apply(parameters);
  }
}
