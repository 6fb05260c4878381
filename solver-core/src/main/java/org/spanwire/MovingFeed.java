package org.spanwire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.mesh.FeedTrack;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.MeshDensity;
import org.spanwire.internal.mesh.Mesher;
import org.spanwire.internal.mesh.Port;
import org.spanwire.internal.moment.MomentFamily;
import org.spanwire.internal.moment.SoilKernels;
import org.spanwire.internal.moment.TrackSolution;
import org.spanwire.result.InputImpedance;
import org.spanwire.unit.PhysicalConstants;

/**
 * An antenna whose only feed is put at many places along its wire in turn, at any of several
 * frequencies and heights. One factorisation at a height and frequency serves all places: the gap
 * is replaced by a smooth window that the common mesh resolves, and the difference is that of an
 * infinitely long wire, which the rest of the antenna does not change. Made by {@link
 * Solver#movingFeed}. Immutable and safe for use by several threads.
 */
public final class MovingFeed {

  /**
   * Of the change that a narrower window makes. On straight and bent wires over soil, perfect
   * ground and in free space the error was at most 1.5 times that change, more only where the
   * change happened to be near zero.
   */
  private static final double ERROR_PER_WINDOW = 3;

  /** Tolerance that the coarsest track is made for, and by what each finer one is better. */
  private static final double COARSEST = 1e-3;

  private static final double BETTER = 3;
  private static final int FINEST = 5;

  /** A finer track is tried as long as fewer places than this share reach the tolerance. */
  private static final double ENOUGH = 0.8;

  /** Frequencies times lifts from which interpolated moments pay. */
  private static final int MANY = 8;

  private final Solver solver;
  private final Antenna lowest;
  private final Feed feed;
  private final double[] frequenciesHz;
  private final double lowestLift;
  private final FeedTrack track;
  private final Mesh mesh;
  private final TrackSolution.Frame frame;
  private final Optional<MomentFamily> moments;
  private final List<Optional<InputImpedance>> first;

  private MovingFeed(
      Solver solver,
      Antenna antenna,
      List<Position> places,
      double[] frequenciesHz,
      double[] lifts,
      int finer,
      int threads) {
    this.solver = solver;
    this.frequenciesHz = frequenciesHz;
    lowestLift = lifts[0];
    lowest = antenna.lifted(lowestLift);
    feed = antenna.feeds().get(0);
    List<Port> fixed = antenna.fittings().stream().map(Port::of).toList();
    double highestHz = frequenciesHz[frequenciesHz.length - 1];
    track =
        FeedTrack.of(
            lowest.wires(),
            fixed,
            lowest.ground(),
            Port.of(feed),
            distances(places),
            PhysicalConstants.wavelength(highestHz),
            finer);
    mesh = Mesher.mesh(lowest.wires(), fixed, lowest.ground(), highestHz, density(finer), track);
    solver.checkMemory(mesh);
    frame = new TrackSolution.Frame(mesh, track);
    first = track.roomy() == 0 ? nothing() : integrated(highestHz, 0);
    boolean many = frequenciesHz.length * lifts.length >= MANY;
    moments =
        many && isFineEnough()
            ? MomentFamily.of(
                mesh,
                lowest.ground(),
                frequenciesHz,
                Arrays.stream(lifts).map(lift -> lift - lowestLift).toArray(),
                solver.accuracy(),
                solver.soilKernels(),
                solver.familyBytes(),
                threads)
            : Optional.empty();
  }

  /** A track just fine enough for most places at the highest frequency and lowest height. */
  static MovingFeed of(
      Solver solver,
      Antenna antenna,
      List<Position> places,
      double[] frequenciesHz,
      double[] lifts,
      int threads) {
    double[] risingHz = rising(frequenciesHz);
    double[] risingLifts = rising(lifts);
    int finer = 0;
    double reach = COARSEST;
    while (reach > solver.options().tolerance() * (1 + 1e-9) && finer < FINEST) {
      reach /= BETTER;
      finer++;
    }
    while (true) {
      solver.goOn();
      MovingFeed moving =
          new MovingFeed(solver, antenna, places, risingHz, risingLifts, finer, threads);
      if (finer >= FINEST || moving.isFineEnough()) {
        return moving;
      }
      finer++;
    }
  }

  /** With no gap to grade towards, an order more costs little and sharpens the stated error. */
  private static MeshDensity density(int finer) {
    MeshDensity usual = MeshDensity.level(Math.min(finer, MeshDensity.FINEST_LEVEL));
    return new MeshDensity(usual.largest(), usual.growth(), usual.smallest(), usual.order() + 1);
  }

  private static double[] rising(double[] values) {
    return Arrays.stream(values).sorted().distinct().toArray();
  }

  private boolean isFineEnough() {
    return first.stream().filter(Optional::isPresent).count() >= ENOUGH * track.roomy();
  }

  private double[] distances(List<Position> places) {
    // A feed on a wire that does not exist is refused by the track.
    double length = lowest.wire(feed.wire()).map(Wire::length).orElse(0.0);
    return places.stream().mapToDouble(place -> place.distanceAlong(length)).toArray();
  }

  /** Whether a lift in metres is at least the lowest of those asked for. */
  public boolean covers(double liftMetres) {
    return liftMetres >= lowestLift;
  }

  /**
   * Input impedances with the feed at every place, in the order of the places.
   *
   * @param frequencyHz one of the frequencies asked for, in hertz
   * @param liftMetres one of the lifts asked for, in metres
   * @return empty for a place where the estimated error is above the wanted tolerance, where no
   *     window has room beside an end, bend or junction, or where the feed cannot be: it must be
   *     solved on its own
   */
  public List<Optional<InputImpedance>> solve(double frequencyHz, double liftMetres) {
    double highestHz = frequenciesHz[frequenciesHz.length - 1];
    if (!(frequencyHz > 0 && frequencyHz <= highestHz && covers(liftMetres))) {
      throw new IllegalArgumentException(
          "frequency " + frequencyHz + " Hz and lift " + liftMetres + " m were not asked for");
    }
    if (track.roomy() == 0 || frequencyHz == highestHz && liftMetres == lowestLift) {
      return first;
    }
    solver.goOn();
    double lift = liftMetres - lowestLift;
    return moments
        .filter(family -> family.covers(frequencyHz, lift))
        .map(family -> interpolated(family, frequencyHz, lift))
        .orElseGet(() -> integrated(frequencyHz, lift));
  }

  private List<Optional<InputImpedance>> interpolated(
      MomentFamily family, double frequencyHz, double lift) {
    try {
      return impedances(
          frame.solve(family, frequencyHz, lift),
          frequencyHz,
          Solver.INTERPOLATED * solver.accuracy());
    } catch (ArithmeticException e) {
      return nothing();
    }
  }

  private List<Optional<InputImpedance>> integrated(double frequencyHz, double lift) {
    SoilKernels tables = solver.soilKernels();
    try {
      return impedances(
          frame.solve(mesh.lifted(lift), lowest.ground(), frequencyHz, solver.accuracy(), tables),
          frequencyHz,
          solver.accuracy());
    } catch (ArithmeticException e) {
      return nothing();
    }
  }

  private List<Optional<InputImpedance>> nothing() {
    return Collections.nCopies(track.size(), Optional.empty());
  }

  private List<Optional<InputImpedance>> impedances(
      TrackSolution solved, double frequencyHz, double accuracy) {
    List<Optional<InputImpedance>> impedances = new ArrayList<>();
    for (int place = 0; place < track.size(); place++) {
      impedances.add(
          track.isCramped(place)
              ? Optional.empty()
              : Optional.of(impedance(solved, place, frequencyHz, accuracy))
                  .filter(z -> z.relativeError() <= solver.options().tolerance()));
    }
    return impedances;
  }

  private InputImpedance impedance(
      TrackSolution solved, int place, double frequencyHz, double accuracy) {
    Complex fine = impedance(solved, place, TrackSolution.Way.FINE, frequencyHz);
    if (fine.isInfinite()) {
      return new InputImpedance(fine, 0);
    }
    Complex narrower = impedance(solved, place, TrackSolution.Way.NARROWER, frequencyHz);
    Complex coarse = impedance(solved, place, TrackSolution.Way.COARSE, frequencyHz);
    return new InputImpedance(
        fine,
        ERROR_PER_WINDOW * fine.subtract(narrower).abs()
            + SolvedAntenna.errorPerOrder(solved.lowestOrder()) * fine.subtract(coarse).abs()
            + SolvedAntenna.PER_ACCURACY * accuracy * fine.abs());
  }

  private Complex impedance(
      TrackSolution solved, int place, TrackSolution.Way way, double frequencyHz) {
    Complex shunt = feed.shuntAdmittance(frequencyHz);
    Complex y;
    if (lowest.fittings().isEmpty()) {
      y = solved.admittance(place, way, 0, 0).add(shunt);
    } else {
      List<Complex> loads =
          lowest.fittings().stream().map(f -> f.impedance().at(frequencyHz)).toList();
      PortNetwork network =
          new PortNetwork(
              List.of(shunt), loads, (row, column) -> solved.admittance(place, way, row, column));
      y = network.admittanceMatrix()[0][0];
    }
    return y.equals(Complex.ZERO) ? Complex.INF : y.reciprocal();
  }
}
