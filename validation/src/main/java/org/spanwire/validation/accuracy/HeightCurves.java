package org.spanwire.validation.accuracy;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soils;
import org.spanwire.unit.PhysicalConstants;

/**
 * A level half-wave wire of copper at 7.1 MHz over four soils: impedance and gain against height.
 *
 * @param points soil by soil, heights rising
 */
record HeightCurves(List<Place> points) {

  static final String FILE = "height-curves.csv";

  static final List<String> SOILS = List.of("sea-water", "wet-ground", "medium-dry", "very-dry");

  private static final double FREQUENCY_HZ = 7.1e6;
  private static final double LENGTH = 0.48;
  private static final double RADIUS_METRES = 1e-3;
  private static final double LOWEST = 0.01;
  private static final double HIGHEST = 1;
  private static final int HEIGHTS = 81;
  private static final double ELEVATION_DEGREES = 30;

  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT
          .builder()
          .setRecordSeparator('\n')
          .setHeader("soil", "height_wavelengths", "resistance_ohm", "reactance_ohm", "gain_dbi")
          .get();

  /**
   * One height over one soil.
   *
   * @param soil name of the soil
   * @param height height in wavelengths
   * @param resistance input resistance in ohms
   * @param reactance input reactance in ohms
   * @param gainDbi gain at 30° elevation, broadside
   */
  record Place(String soil, double height, double resistance, double reactance, double gainDbi) {}

  HeightCurves {
    points = List.copyOf(points);
  }

  /** Solves all of them. */
  static HeightCurves solve() {
    Solver solver = new Solver();
    return new HeightCurves(
        SOILS.stream()
            .flatMap(
                soil ->
                    IntStream.range(0, HEIGHTS)
                        .parallel()
                        .mapToObj(i -> solve(solver, soil, height(i))))
            .toList());
  }

  private static double height(int i) {
    double exact = LOWEST * Math.pow(HIGHEST / LOWEST, (double) i / (HEIGHTS - 1));
    return Double.parseDouble(String.format(Locale.ROOT, "%.4g", exact));
  }

  /** Solves one. */
  static Place solve(Solver solver, String soil, double height) {
    double wavelength = PhysicalConstants.wavelength(FREQUENCY_HZ);
    double half = 0.5 * LENGTH * wavelength;
    double z = height * wavelength;
    Antenna antenna =
        Antenna.builder()
            .wire(
                "wire",
                Conductor.bare(Materials.COPPER, RADIUS_METRES),
                new Point(-half, 0, z),
                new Point(half, 0, z))
            .feed("feed", "wire", Position.fraction(0.5))
            .ground(Soils.find(soil).orElseThrow())
            .build();
    Solution solution = solver.solve(antenna, FREQUENCY_HZ);
    return new Place(
        soil,
        height,
        solution.impedance().getReal(),
        solution.impedance().getImaginary(),
        solution.gainAtElevation(ELEVATION_DEGREES).gainDbi());
  }

  /** Those that are kept, which the figures of the theory notes show. */
  static HeightCurves kept() {
    try (Reader in =
        new InputStreamReader(
            HeightCurves.class.getResourceAsStream(FILE), StandardCharsets.UTF_8)) {
      return new HeightCurves(
          FORMAT.builder().setSkipHeaderRecord(true).get().parse(in).stream()
              .map(HeightCurves::place)
              .toList());
    } catch (IOException e) {
      throw new UncheckedIOException(FILE, e);
    }
  }

  private static Place place(CSVRecord row) {
    return new Place(row.get(0), number(row, 1), number(row, 2), number(row, 3), number(row, 4));
  }

  private static double number(CSVRecord row, int column) {
    return Double.parseDouble(row.get(column));
  }

  /** The points over one soil. */
  List<Place> over(String soil) {
    return points.stream().filter(p -> p.soil.equals(soil)).toList();
  }

  /** Writes them to a file in a directory. */
  void write(Path directory) throws IOException {
    try (CSVPrinter out =
        new CSVPrinter(Files.newBufferedWriter(directory.resolve(FILE)), FORMAT)) {
      for (Place p : points) {
        out.printRecord(
            p.soil, p.height, fixed(p.resistance), fixed(p.reactance), fixed(p.gainDbi));
      }
    }
  }

  private static String fixed(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }
}
