package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;

/** What is said to help is held to solutions. */
class FixStudyTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit in need
      parameters:
        height: {value: 10 m, limits: [8 m, 12 m]}
        span: 21.4 m
        unused: 3 m
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [span, 0, height]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 2}
      bands: {plan: iaru-region-1, use: [40 m]}
      """;

  private static final Design KIT = DesignReader.read(DESIGN, "kit.yaml");
  private static final Solver SOLVER = new Solver();

  private static BandResponse judged(Design design) {
    return new BandStudy(Installation.of(design), List.of(), 11)
        .run(SOLVER, design.bands(), 2)
        .get(0);
  }

  @Test
  void everyFixGivesTheBetterVerdictAndALittleLessDoesNot() {
    List<BandFixes> all = new FixStudy(KIT).run(SOLVER, 2);
    assertThat(all).hasSize(1);
    BandFixes band = all.get(0);
    assertThat(band.now()).isEqualTo(judged(KIT).verdict());
    assertThat(band.wanted().ordinal()).isEqualTo(band.now().ordinal() - 1);
    assertThat(band.fixes()).isNotEmpty();
    BandFixes.Fix span =
        band.fixes().stream().filter(fix -> fix.name().equals("span")).findFirst().orElseThrow();
    Design fixed = KIT.with("span", span.to().value() + " m");
    assertThat(judged(fixed).verdict()).isEqualTo(band.wanted());
    double less = span.from().value() + 0.85 * (span.to().value() - span.from().value());
    assertThat(judged(KIT.with("span", less + " m")).verdict()).isEqualTo(band.now());
    // Its slope points that way.
    assertThat(Math.signum(span.perUnit()))
        .isEqualTo(-Math.signum(span.to().value() - span.from().value()));
    assertThat(band.fixes()).noneMatch(fix -> fix.name().equals("unused"));
    assertThat(new FixStudy(KIT).run(SOLVER, 1)).isEqualTo(all);
  }

  @Test
  void aRatioThatHelpsDoes() {
    Design off =
        DesignReader.read(DESIGN.replace("21.4 m", "20.6 m").replace("ratio: 2", "ratio: 9"), "r");
    BandFixes band = new FixStudy(off).run(SOLVER, 2).get(0);
    BandFixes.Fix ratio =
        band.fixes().stream()
            .filter(fix -> fix.part() == BandFixes.Part.RATIO)
            .findFirst()
            .orElseThrow();
    Design fixed =
        DesignReader.read(
            DESIGN.replace("21.4 m", "20.6 m").replace("ratio: 2", "ratio: " + ratio.to().value()),
            "r");
    assertThat(judged(fixed).verdict().compareTo(band.wanted())).isLessThanOrEqualTo(0);
  }

  @Test
  void nothingToFixIsNothingToSay() {
    Design good =
        DesignReader.read(
            DESIGN
                .replace("21.4 m", "14.35 m")
                .replace("ratio: 2", "ratio: 1.6")
                .replace("[40 m]", "[30 m]"),
            "good.yaml");
    assertThat(judged(good).verdict()).isEqualTo(Verdict.DIRECT);
    assertThat(new FixStudy(good).run(SOLVER, 2)).isEmpty();
  }
}
