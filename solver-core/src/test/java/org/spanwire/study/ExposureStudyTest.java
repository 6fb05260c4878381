package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.result.Warning;

/** What the spreads of a design do to the distance to keep. */
class ExposureStudyTest {

  private static BandExposure exposure(String height) {
    String thick = height.contains("thick") ? "thick" : "2 mm";
    Design design =
        DesignReader.read(
            """
            format: spanwire-design/1
            title: Low hut dipole
            parameters: {height: HEIGHT}
            conductors: {strand: {material: copper, diameter: THICK}}
            wires: {radiator: {conductor: strand, path: [[0, 0, height], [20.2, 0, height]]}}
            feeds: {main: {wire: radiator, at: 50 %}}
            ground: perfect
            bands: {plan: iaru-region-1, use: [40 m]}
            power: 400 W
            exposure: {limits: [icnirp-2020-public], mode: carrier, floors: [1 m]}
            """
                .replace("HEIGHT", height)
                .replace("THICK", thick),
            "low.yaml");
    return new ExposureStudy(design, design.exposureRules().orElseThrow())
        .run(new Solver(new SolverOptions(2e-3)), design.bands(), 2)
        .get(0);
  }

  private static double longest(BandExposure exposure) {
    return exposure.rows().get(0).keepOut().longest();
  }

  /** An end of a spread beyond the limits must not drop out of the uncertainty. */
  @Test
  void aSpreadBeyondTheLimitsCountsUpToThem() {
    BandExposure cut = exposure("{value: 3 m, spread: 1.5 m, limits: [2.8 m, 3.2 m]}");
    BandExposure narrow = exposure("{value: 3 m, spread: 0.2 m}");
    BandExposure known = exposure("3 m");
    assertThat(cut.warnings()).isEmpty();
    assertThat(longest(cut)).isCloseTo(longest(narrow), within(1e-9));
    assertThat(longest(cut)).isGreaterThan(longest(known) + 0.02);
  }

  /** One end below the ground, or a wire as thick as nothing: the other end still counts. */
  @Test
  void anEndThatCannotBeModelledIsLeftOutAndNamed() {
    for (String parameters :
        List.of("3 m, thick: {value: 2 mm, spread: 3 mm}", "{value: 3 m, spread: 3.5 m}")) {
      BandExposure exposure = exposure(parameters);
      assertThat(exposure.warnings())
          .extracting(Warning::name)
          .containsExactly(ExposureStudy.SPREAD_NOT_MODELLED);
      assertThat(longest(exposure)).isGreaterThan(exposure.rows().get(0).keepOut().distance());
    }
  }
}
