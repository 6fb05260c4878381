package org.spanwire.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.Antenna;
import org.spanwire.design.CutRules;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;

class CutListTest {

  private static final CutRules EYE =
      new CutRules(CutRules.Datum.EYE, 0.060, 0.150, 0.030, 0.002, 0.005);
  private static final CutRules TIP =
      new CutRules(CutRules.Datum.TIP, 0.060, 0.150, 0.030, 0.002, 0.005);
  private static final Conductor STRAND = Conductor.perfect(0.001);

  /** Off centre, bent, gap 40 mm. */
  private static Antenna kit() {
    return Antenna.builder()
        .wire("radiator", STRAND, new Point(0, 0, 8), new Point(10, 0, 10), new Point(27.3, 0, 9))
        .feed(Feed.of("main", "radiator", Position.fraction(0.36)).withGap(0.04))
        .build();
  }

  /**
   * By hand: leg 1 runs from the bearing point of its eye, 36 % of the wire less half the gap. The
   * wire under no pull is shorter by 0.2 %; then come half the loop, 30 mm, the fold-back and the
   * terminal.
   */
  @Test
  void eyeToEyeAddsWhatTheEyesTake() {
    double length = Math.sqrt(104) + Math.sqrt(17.3 * 17.3 + 1);
    List<Leg> legs = CutList.of(kit(), EYE);
    assertThat(legs).hasSize(2);
    double first = 0.36 * length - 0.02;
    double second = 0.64 * length - 0.02;
    assertThat(legs.get(0).modelLength()).isCloseTo(first, within(1e-12));
    assertThat(legs.get(0).cutLength())
        .isCloseTo(first / 1.002 + 0.030 + 0.150 + 0.030, within(1e-12));
    assertThat(legs.get(1).madeUpLength()).isCloseTo(second / 1.002, within(1e-12));
    assertThat(legs.get(0).from().kind()).isEqualTo(Leg.End.Kind.FREE);
    assertThat(legs.get(0).to()).isEqualTo(new Leg.End(Leg.End.Kind.FEED, "main"));
  }

  @Test
  void tipToTipTakesTheEyesOutOfTheLength() {
    Leg eye = CutList.of(kit(), EYE).get(0);
    Leg tip = CutList.of(kit(), TIP).get(0);
    assertThat(eye.cutLength() - tip.cutLength()).isCloseTo(0.180, within(1e-12));
    assertThat(tip.madeUpLength()).isCloseTo(tip.modelLength() / 1.002 - 0.180, within(1e-12));
  }

  /** Model, cut to the millimetre on the bench, made up, and modelled again. */
  @Test
  void roundTripKeepsEveryLegToAMillimetre() {
    for (CutRules rules : List.of(EYE, TIP, CutRules.PLAIN)) {
      for (Leg leg : CutList.of(kit(), rules)) {
        double cut = Math.rint(1000 * leg.cutLength()) / 1000;
        assertThat(leg.modelLengthOf(cut)).isCloseTo(leg.modelLength(), within(0.001));
        assertThat(leg.modelLengthOf(leg.cutLength())).isCloseTo(leg.modelLength(), within(1e-12));
      }
      List<Leg> legs = CutList.of(kit(), rules);
      Antenna rebuilt = straight(legs.get(0), legs.get(1));
      for (int i = 0; i < 2; i++) {
        assertThat(CutList.of(rebuilt, rules).get(i).cutLength())
            .isCloseTo(legs.get(i).cutLength(), within(0.001));
      }
    }
  }

  private static Antenna straight(Leg first, Leg second) {
    double one = first.modelLengthOf(Math.rint(1000 * first.cutLength()) / 1000);
    double two = second.modelLengthOf(Math.rint(1000 * second.cutLength()) / 1000);
    return Antenna.builder()
        .wire("radiator", STRAND, new Point(0, 0, 9), new Point(one + 0.04 + two, 0, 9))
        .feed(Feed.of("main", "radiator", Position.distance(one + 0.02)).withGap(0.04))
        .build();
  }

  @Test
  void jointsAndGroundTakeTerminals() {
    Antenna antenna =
        Antenna.builder()
            .wire("mast", STRAND, new Point(0, 0, 0), new Point(0, 0, 10))
            .wire("hat", STRAND, new Point(-3, 0, 10), new Point(0, 0, 10), new Point(3, 0, 10))
            .feed("base", "mast", Position.fraction(0))
            .ground(org.spanwire.medium.Ground.perfect())
            .build();
    List<Leg> legs = CutList.of(antenna, EYE);
    assertThat(legs).hasSize(2);
    assertThat(legs.get(0).from().kind()).isEqualTo(Leg.End.Kind.FEED);
    assertThat(legs.get(0).to().kind()).isEqualTo(Leg.End.Kind.JOINT);
    assertThat(legs.get(1).from().kind()).isEqualTo(Leg.End.Kind.FREE);
    assertThat(legs.get(1).to().kind()).isEqualTo(Leg.End.Kind.FREE);
  }

  @Test
  void trimKeepsTheRatioOfTheLegs() {
    Antenna antenna = kit();
    Feed feed = antenna.feeds().get(0);
    Trim trim = Trim.of(antenna, feed);
    for (double metres : new double[] {0.3, -0.3}) {
      Antenna trimmed = trim.apply(antenna, metres);
      Wire before = antenna.wires().get(0);
      Wire after = trimmed.wires().get(0);
      assertThat(after.length()).isCloseTo(before.length() - metres, within(1e-12));
      assertThat(trimmed.feeds().get(0).at().distanceAlong(after.length()))
          .isCloseTo(0.36 * after.length(), within(1e-12));
      // The feed has not moved in space: the wire is taken off at the ends.
      assertThat(after.path().get(1)).isEqualTo(before.path().get(1));
    }
    Antenna unfed = Antenna.builder().wire(antenna.wires().get(0)).build();
    assertThat(new Trim("radiator", 1, 0).apply(unfed, 12).wires().get(0).path()).hasSize(2);
    assertThatThrownBy(() -> trim.apply(antenna, 50)).hasMessageContaining("nothing would be left");
  }

  @Test
  void loopHasNoEndToTrim() {
    Point start = new Point(0, 0, 5);
    Antenna loop =
        Antenna.builder()
            .wire("loop", STRAND, start, new Point(9, 0, 5), new Point(5, 7, 5), start)
            .feed("main", "loop", Position.fraction(0.2))
            .build();
    assertThatThrownBy(() -> Trim.of(loop, loop.feeds().get(0)))
        .hasMessageContaining("no free end");
    assertThat(CutList.of(loop, EYE)).allMatch(leg -> leg.from().kind() != Leg.End.Kind.FREE);
  }
}
