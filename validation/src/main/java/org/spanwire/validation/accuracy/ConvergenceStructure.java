package org.spanwire.validation.accuracy;

import java.util.function.Consumer;
import org.spanwire.Antenna;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;

/** The structures of the convergence tables; all lengths are in wavelengths. */
enum ConvergenceStructure {
  DIPOLE("Straight dipole, 0.5 λ, radius 1e-4 λ, fed in the middle", Parts::dipole),
  OFF_CENTRE("Wire of 4 λ, radius 1e-4 λ, fed at 15 %", Parts::offCentre),
  VEE("V of two legs of 0.25 λ at 90°, radius 1e-4 λ, fed at the apex", Parts::vee),
  JUNCTION("Five wires of 0.2 λ to 0.3 λ from one point, radius 1e-4 λ", Parts::junction),
  FOLDED_DIPOLE("Folded dipole, 0.48 λ, radius 5e-4 λ, spacing 8 radii", Parts::foldedDipole),
  SQUARE_LOOP("Square loop of 1.05 λ, radius 1e-4 λ, fed in a side", Parts::squareLoop),
  YAGI("Three-element Yagi, radius 1e-3 λ, spacing 0.2 λ", Parts::yagi);

  private final String title;

  /** A reference to a method without state. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final Consumer<Parts> parts;

  ConvergenceStructure(String title, Consumer<Parts> parts) {
    this.title = title;
    this.parts = parts;
  }

  String title() {
    return title;
  }

  /** The structure for a wavelength in metres, perfectly conducting and in free space. */
  Antenna antenna(double wavelength) {
    Parts collected = new Parts(wavelength);
    parts.accept(collected);
    return collected.antenna.build();
  }

  /** Collects wires given in wavelengths. */
  private static final class Parts {
    private final Antenna.Builder antenna = Antenna.builder();
    private final double wavelength;

    Parts(double wavelength) {
      this.wavelength = wavelength;
    }

    private void wire(String name, double radius, double... coordinates) {
      Point[] path = new Point[coordinates.length / 3];
      for (int i = 0; i < path.length; i++) {
        path[i] =
            new Point(
                coordinates[3 * i] * wavelength,
                coordinates[3 * i + 1] * wavelength,
                coordinates[3 * i + 2] * wavelength);
      }
      antenna.wire(name, Conductor.perfect(radius * wavelength), path);
    }

    private void feed(String wire, double fraction) {
      antenna.feed("main", wire, Position.fraction(fraction));
    }

    void dipole() {
      wire("radiator", 1e-4, 0, 0, 0, 0.5, 0, 0);
      feed("radiator", 0.5);
    }

    void offCentre() {
      wire("radiator", 1e-4, 0, 0, 0, 4, 0, 0);
      feed("radiator", 0.15);
    }

    void vee() {
      wire("radiator", 1e-4, 0.25, 0, 0, 0, 0, 0, 0, 0.25, 0);
      feed("radiator", 0.5);
    }

    void junction() {
      wire("fed", 1e-4, 0, 0, 0, 0.25, 0, 0);
      wire("up", 1e-4, 0, 0, 0, 0, 0, 0.22);
      wire("side", 1e-4, 0, 0, 0, 0, 0.3, 0);
      wire("back", 1e-4, 0, 0, 0, -0.12, -0.16, 0);
      wire("down", 1e-4, 0, 0, 0, -0.14, 0.1, -0.2);
      feed("fed", 0.3);
    }

    void foldedDipole() {
      double spacing = 8 * 5e-4;
      wire("loop", 5e-4, 0, 0, 0, 0.48, 0, 0, 0.48, spacing, 0, 0, spacing, 0, 0, 0, 0);
      antenna.feed("main", "loop", Position.distance(0.24 * wavelength));
    }

    void squareLoop() {
      double side = 1.05 / 4;
      wire("loop", 1e-4, 0, 0, 0, side, 0, 0, side, side, 0, 0, side, 0, 0, 0, 0);
      feed("loop", 0.125);
    }

    void yagi() {
      wire("reflector", 1e-3, -0.241, -0.2, 0, 0.241, -0.2, 0);
      wire("driven", 1e-3, -0.228, 0, 0, 0.228, 0, 0);
      wire("director", 1e-3, -0.221, 0.2, 0, 0.221, 0.2, 0);
      feed("driven", 0.5);
    }
  }
}
