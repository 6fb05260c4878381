package org.spanwire.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.design.ExposureLimit;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;

/** Distances to keep, against a plain search over a fine grid and against the far field. */
class ExposureSurveyTest {

  private static final Conductor COPPER = Conductor.bare(Materials.COPPER, 0.001);
  private static final ExposureLimit LIMIT = ExposureLimit.find("icnirp-1998-public").orElseThrow();
  private static final double FREQUENCY = 14.1e6;

  private static Solution bent;

  @BeforeAll
  static void solveOnce() {
    bent =
        new Solver()
            .solve(
                Antenna.builder()
                    .wire(
                        "radiator",
                        COPPER,
                        new Point(0, 0, 5),
                        new Point(8, 0, 4),
                        new Point(8, 5, 3))
                    .feed("main", "radiator", Position.fraction(0.4))
                    .ground(Soil.of(13, 0.005))
                    .build(),
                FREQUENCY);
  }

  /** Distance in plan from the two straight runs of the wire. */
  private static double away(double x, double y) {
    double first = Math.hypot(x - Math.max(0, Math.min(8, x)), y);
    double second = Math.hypot(x - 8, y - Math.max(0, Math.min(5, y)));
    return Math.min(first, second);
  }

  /** No place of a fine grid beyond the distance exceeds the limit; one just within it does. */
  @Test
  void aPlainSearchOverAGridFindsTheSameDistance() {
    ExposureMap map = new ExposureMap(bent, 200);
    ExposureSurvey survey = map.survey(List.of(LIMIT), 1, 0);
    double furthest = 0;
    for (double x = -12; x <= 20; x += 0.4) {
      for (double y = -12; y <= 17; y += 0.4) {
        for (double z = 0.5; z <= 2; z += 0.5) {
          double away = away(x, y);
          if (away > furthest && survey.exposure(LIMIT, map.at(new Point(x, y, z))) > 1) {
            furthest = away;
          }
        }
      }
    }
    KeepOut found = survey.keepOut(LIMIT, 0);
    assertThat(furthest).isBetween(1.0, 10.0);
    assertThat(found.distance()).isBetween(furthest - 0.01, furthest + 0.4);
    assertThat(survey.exposure(LIMIT, found.at().orElseThrow())).isCloseTo(1, within(0.01));
    assertThat(away(found.at().get().place().x(), found.at().get().place().y()))
        .isCloseTo(found.distance(), within(0.01));
  }

  /** Far from a short dipole in free space the distance is that of a plane wave: √(30 P G)/E. */
  @Test
  void farAwayItIsTheDistanceOfThePlaneWave() {
    Solution dipole =
        new Solver()
            .solve(
                Antenna.builder()
                    .wire("d", COPPER, new Point(0, 0, 1), new Point(0, 2, 1))
                    .feed("main", "d", Position.fraction(0.5))
                    .ground(Ground.freeSpace())
                    .build(),
                28.5e6);
    ExposureMap map = new ExposureMap(dipole, 50_000);
    KeepOut found = map.survey(List.of(LIMIT), 1, 0).keepOut(LIMIT, 0);
    double gain = Math.pow(10, dipole.peakGain().gainDbi() / 10);
    double expected = Math.sqrt(30 * 50_000 * gain) / (0.073 * 376.730);
    assertThat(found.distance()).isCloseTo(expected, within(0.01 * expected));
    assertThat(map.screen(LIMIT, 1).distance()).isCloseTo(expected, within(1e-3 * expected));
    assertThat(map.screen(LIMIT, 1).valid()).isTrue();
  }

  /** Fields grow with the root of the power, and a pause is worth as much as less power. */
  @Test
  void powerAndDutyCountAlike() {
    KeepOut carrier = new ExposureMap(bent, 40).survey(List.of(LIMIT), 1, 0).keepOut(LIMIT, 0);
    KeepOut speech = new ExposureMap(bent, 200).survey(List.of(LIMIT), 0.2, 0).keepOut(LIMIT, 0);
    assertThat(speech.distance()).isCloseTo(carrier.distance(), within(0.02));
    assertThat(speech.exposure()).isCloseTo(carrier.exposure(), within(1e-9));
  }

  @Test
  void uncertaintyWidensTheDistanceToBothSides() {
    ExposureSurvey survey = new ExposureMap(bent, 200).survey(List.of(LIMIT), 1, 0);
    KeepOut found = survey.keepOut(LIMIT, 0.2);
    assertThat(found.shortest()).isLessThan(found.distance());
    assertThat(found.longest()).isGreaterThan(found.distance());
    KeepOut stronger =
        new ExposureMap(bent, 200 * 1.44).survey(List.of(LIMIT), 1, 0).keepOut(LIMIT, 0);
    assertThat(found.longest()).isCloseTo(stronger.distance(), within(0.05));
  }

  @Test
  void littlePowerKeepsTheLimitEverywhere() {
    KeepOut found = new ExposureMap(bent, 1e-3).survey(List.of(LIMIT), 1, 0).keepOut(LIMIT, 0.1);
    assertThat(found.distance()).isZero();
    assertThat(found.at()).isEmpty();
    assertThat(found.outline()).isEmpty();
    assertThat(found.exposure()).isBetween(0.0, 1.0);
  }

  @Test
  void refusesNoPower() {
    assertThatThrownBy(() -> new ExposureMap(bent, 0)).hasMessageContaining("power 0.0 W");
  }
}
