package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.result.PeakGain;

/** Made-up bands. */
class BandSummaryTest {

  private static BandResponse band(String name, double worst, HeatAt... heat) {
    FrequencyRange range = new FrequencyRange(7e6, 7.2e6);
    SwrAt at = new SwrAt(7e6, worst);
    return new BandResponse(
        name,
        range,
        List.of(new PlaneResponse(Plane.TRANSMITTER, 50, worst, worst, worst, at, at, List.of())),
        new SolvedFeed("main", new Complex(50, 0), 0.1, 0.004, List.of()),
        Map.of(),
        new PeakGain(2, OptionalDouble.of(90), OptionalDouble.empty()),
        List.of(),
        0.5,
        List.of(heat),
        11,
        1e-4,
        1e-5,
        List.of());
  }

  @Test
  void sortsBandsByWhatTheyNeed() {
    BandSummary summary =
        new BandSummary(List.of(band("a", 1.5), band("b", 4), band("c", 2), band("d", 20)));
    assertThat(summary.with(Verdict.DIRECT)).containsExactly("a", "c");
    assertThat(summary.with(Verdict.TUNABLE)).isEmpty();
    assertThat(summary.with(Verdict.WIDE_TUNER)).containsExactly("b");
    assertThat(summary.with(Verdict.UNUSABLE)).containsExactly("d");
  }

  @Test
  void whatIsWoundOnCoresBurnsFirst() {
    BandSummary summary =
        new BandSummary(
            List.of(
                band("a", 1.5, new HeatAt("line", 30, 7e6), new HeatAt("transformer", 3, 7e6)),
                band("b", 1.5, new HeatAt("line 2", 40, 7e6), new HeatAt(Ledger.CHOKE, 8, 7.1e6))));
    assertThat(summary.burnsFirst())
        .contains(new BandSummary.PartHeat("b", new HeatAt(Ledger.CHOKE, 8, 7.1e6)));
    assertThat(summary.others())
        .extracting(each -> each.heat().watts())
        .containsExactly(40.0, 30.0);
  }

  @Test
  void aTrapBurnsToo() {
    HeatAt trap = new HeatAt("trap", 9, 7e6);
    BandSummary summary =
        new BandSummary(
            List.of(
                band("a", 1.5, new HeatAt("tuner", 20, 7e6), trap, new HeatAt("choke", 8, 7e6))));
    assertThat(summary.burnsFirst()).contains(new BandSummary.PartHeat("a", trap));
    assertThat(summary.others()).extracting(each -> each.heat().part()).containsExactly("tuner");
  }

  @Test
  void theRoundingOfALosslessPartIsNoHeat() {
    BandSummary summary =
        new BandSummary(List.of(band("a", 1.5, new HeatAt("transformer", 1e-14, 7e6))));
    assertThat(summary.burnsFirst()).isEmpty();
    assertThat(summary.others()).isEmpty();
  }
}
