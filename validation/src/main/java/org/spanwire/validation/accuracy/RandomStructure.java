package org.spanwire.validation.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.spanwire.Antenna;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * A random structure: one to six copper wires of 0.05 λ to 1.3 λ, radii of 1e-5 λ to 5e-3 λ, in any
 * direction, joined or apart, straight or bent, one or two feeds anywhere, in free space, over
 * perfect ground or over soil. The same seed and number give the same structure.
 *
 * @param number which of the sequence
 * @param below kind of ground
 * @param antenna the structure
 * @param frequencyHz 3 MHz to 300 MHz
 */
record RandomStructure(int number, Below below, Antenna antenna, double frequencyHz) {

  /** Kind of ground. */
  enum Below {
    FREE_SPACE("free space"),
    PERFECT("perfect ground"),
    SOIL("soil");

    private final String label;

    Below(String label) {
      this.label = label;
    }

    String label() {
      return label;
    }
  }

  private static final int MOST_WIRES = 6;

  static RandomStructure of(long seed, int number) {
    SplittableRandom random = new SplittableRandom(seed + 1_000_003L * number);
    double frequencyHz = 1e6 * logarithmic(random, 3, 300);
    double pick = random.nextDouble();
    Below below = pick < 0.7 ? Below.FREE_SPACE : pick < 0.93 ? Below.PERFECT : Below.SOIL;
    Antenna antenna =
        new Builder(random, PhysicalConstants.wavelength(frequencyHz), below).antenna();
    return new RandomStructure(number, below, antenna, frequencyHz);
  }

  private static double logarithmic(SplittableRandom random, double from, double to) {
    return from * Math.pow(to / from, random.nextDouble());
  }

  /** Draws one structure. */
  private static final class Builder {
    private final SplittableRandom random;
    private final double wavelength;
    private final Below below;
    private final List<Wire> wires = new ArrayList<>();

    Builder(SplittableRandom random, double wavelength, Below below) {
      this.random = random;
      this.wavelength = wavelength;
      this.below = below;
    }

    Antenna antenna() {
      int count = 1 + random.nextInt(MOST_WIRES);
      double radius = radius();
      for (int w = 0; w < count; w++) {
        if (random.nextInt(3) == 0) {
          radius = radius();
        }
        wires.add(new Wire("w" + w, Conductor.bare(Materials.COPPER, radius), path(start(w == 0))));
      }
      Antenna.Builder antenna = Antenna.builder().ground(ground());
      wires.forEach(antenna::wire);
      int feeds = random.nextInt(4) == 0 ? 2 : 1;
      for (int f = 0; f < feeds; f++) {
        antenna.feed("f" + f, "w" + random.nextInt(count), Position.fraction(random.nextDouble()));
      }
      return antenna.build();
    }

    private double radius() {
      return wavelength * logarithmic(random, 1e-5, 5e-3);
    }

    private Ground ground() {
      return switch (below) {
        case FREE_SPACE -> Ground.freeSpace();
        case PERFECT -> Ground.perfect();
        case SOIL -> Soil.of(3 + 27 * random.nextDouble(), logarithmic(random, 1e-4, 0.1));
      };
    }

    /** Half of the wires join an earlier one at one of its path points. */
    private Point start(boolean first) {
      if (!first && random.nextBoolean()) {
        List<Point> path = wires.get(random.nextInt(wires.size())).path();
        return path.get(random.nextInt(path.size()));
      }
      double x = wavelength * (random.nextDouble() - 0.5);
      double y = wavelength * (random.nextDouble() - 0.5);
      double height = wavelength * logarithmic(random, 0.02, 1);
      boolean standing = below == Below.PERFECT && random.nextInt(3) == 0;
      return new Point(x, y, standing ? 0 : height);
    }

    private List<Point> path(Point start) {
      double left = wavelength * logarithmic(random, 0.05, 1.3);
      int stretches = 1 + (random.nextInt(3) == 0 ? 1 + random.nextInt(2) : 0);
      List<Point> path = new ArrayList<>();
      path.add(start);
      for (int i = 0; i < stretches; i++) {
        path.add(next(path.get(i), left / stretches));
      }
      return path;
    }

    /** A point at a distance in a random direction, one wire in four level; above any ground. */
    private Point next(Point from, double distance) {
      double up = random.nextInt(4) == 0 ? 0 : 2 * random.nextDouble() - 1;
      if (below != Below.FREE_SPACE && from.z() + up * distance <= 0) {
        up = Math.abs(up);
      }
      double level = Math.sqrt(1 - up * up);
      double azimuth = 2 * Math.PI * random.nextDouble();
      return new Point(
          from.x() + distance * level * Math.cos(azimuth),
          from.y() + distance * level * Math.sin(azimuth),
          from.z() + distance * up);
    }
  }
}
