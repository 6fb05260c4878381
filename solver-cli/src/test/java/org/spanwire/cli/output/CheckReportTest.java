package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanwire.cli.output.MadeUpCheck.DOUBT;
import static org.spanwire.cli.output.MadeUpCheck.design;
import static org.spanwire.cli.output.MadeUpCheck.failedEfficiency;
import static org.spanwire.cli.output.MadeUpCheck.keptSwr;
import static org.spanwire.cli.output.MadeUpCheck.open;
import static org.spanwire.cli.output.MadeUpCheck.undecidedYield;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.cli.JsonSchema;
import org.spanwire.study.CheckedRequirement;
import org.spanwire.study.CheckedRequirement.Quantity;

class CheckReportTest {

  private static final CheckReport KEPT = report(keptSwr());

  /** Two designs, of which the second keeps one of its three promises. */
  private static final CheckReport MIXED =
      new CheckReport(
          List.of(
              new CheckReport.Checked(design("Long wire", "long.yaml"), List.of(keptSwr())),
              new CheckReport.Checked(
                  design("Hut kit", "kit.yaml"),
                  List.of(keptSwr(), failedEfficiency(DOUBT, DOUBT), undecidedYield()))),
          "1.2.3",
          0.001);

  private static CheckReport report(CheckedRequirement... requirements) {
    return new CheckReport(
        List.of(new CheckReport.Checked(design("Hut kit", "kit.yaml"), List.of(requirements))),
        "1.2.3",
        0.001);
  }

  private static String render(Report report, Format format) throws IOException {
    return report.render(format, Palette.plain());
  }

  /** Lines with the columns of tables one space apart. */
  private static List<String> lines(CheckReport report) {
    return report
        .text(Palette.plain())
        .lines()
        .map(line -> line.strip().replaceAll(" +", " "))
        .toList();
  }

  @Test
  void passesOnlyIfEveryRequirementOfEveryDesignIsMet() {
    assertThat(KEPT.passed()).isTrue();
    assertThat(MIXED.passed()).isFalse();
    assertThat(report(keptSwr(), undecidedYield()).passed()).as("in doubt").isFalse();
  }

  @Test
  void everyDesignHasATableAndWhatIsNotMetACause() {
    assertThat(lines(MIXED).stream().filter(line -> !line.matches("-[- ]*")))
        .containsExactly(
            "Long wire (long.yaml)",
            "outcome where requirement limit found margin error at",
            "MHz",
            "met 7.1 MHz SWR at the transmitter <= 2.00 1.50 +0.50 0.25 7.1000",
            "",
            "Hut kit (kit.yaml)",
            "outcome where requirement limit found margin error at",
            "MHz",
            "met 7.1 MHz SWR at the transmitter <= 2.00 1.50 +0.50 0.25 7.1000",
            "failed 40 m radiation efficiency, % >= 95.0 87.5 -7.5 3.1 7.2000",
            "undecided design yield, % >= 90.0 90.6 +0.6 1.6 -",
            "40 m: the largest loss is in soil",
            "design: the limit lies within the numerical error",
            "",
            "Warnings",
            "made-up",
            "made up; no remedy (2 times)",
            "",
            "2 of 4 requirements are not met");
  }

  @Test
  void allMetIsSaidInOneLine() {
    assertThat(lines(KEPT)).endsWith("", "the requirement is met");
  }

  /** Under its label a cause is indented, so that it stands out from the table. */
  @Test
  void aLongCauseGoesOnUnderItsBeginning() {
    CheckedRequirement failed = failedEfficiency();
    CheckedRequirement wordy =
        new CheckedRequirement(
            failed.requirement(),
            failed.outcome(),
            failed.quantity(),
            failed.limit(),
            failed.found(),
            failed.low(),
            failed.high(),
            failed.frequencyHz(),
            failed.tolerance(),
            "word ".repeat(30).strip(),
            List.of());
    assertThat(report(wordy).text(Palette.plain()))
        .contains("\n  40 m: " + "word ".repeat(20).strip() + "\n        word word");
  }

  @Test
  void distancesToKeepAreCalledEstimates() {
    CheckedRequirement distance =
        MadeUpCheck.exact(MadeUpCheck.DISTANCE, Quantity.EXPOSURE_DISTANCE, 0.5, 0.25);
    assertThat(String.join(" ", lines(report(keptSwr(), distance))))
        .contains("Distances to keep are estimates for planning, no proof that limits");
    assertThat(KEPT.text(Palette.plain())).doesNotContain("Distances");
  }

  @Test
  void coloursRepeatTheOutcome() {
    assertThat(MIXED.text(new Palette(true)))
        .contains(
            "\u001b[32m met ", "\u001b[31m failed ", "\u001b[33m undecided ", "\u001b[1mHut kit");
    assertThat(MIXED.text(Palette.plain())).doesNotContain("\u001b");
  }

  @Test
  void jsonHasEveryRequirementInItsOwnUnit() throws IOException {
    assertThat(render(report(keptSwr(), failedEfficiency(DOUBT, DOUBT)), Format.JSON))
        .isEqualTo(
            """
            {
              "format" : "spanwire-result/1",
              "command" : "check",
              "version" : "1.2.3",
              "tolerance" : 0.001,
              "passed" : false,
              "designs" : [
                {
                  "design" : "Hut kit",
                  "file" : "kit.yaml",
                  "requirements" : [
                    {
                      "requirement" : "7.1 MHz: SWR at the transmitter <= 2.00",
                      "quantity" : "swr-transmitter",
                      "unit" : "",
                      "outcome" : "met",
                      "side" : "at-most",
                      "limit" : 2.0,
                      "value" : 1.5,
                      "value_low" : 1.4375,
                      "value_high" : 1.75,
                      "margin" : 0.5,
                      "frequency_hz" : 7100000.0,
                      "tolerance" : 0.001,
                      "cause" : "",
                      "warnings" : [ ]
                    },
                    {
                      "requirement" : "40 m: radiation efficiency >= 95.0 %",
                      "band" : "40 m",
                      "quantity" : "efficiency",
                      "unit" : "",
                      "outcome" : "failed",
                      "side" : "at-least",
                      "limit" : 0.95,
                      "value" : 0.875,
                      "value_low" : 0.84375,
                      "value_high" : 0.890625,
                      "margin" : -0.07499999999999996,
                      "frequency_hz" : 7200000.0,
                      "tolerance" : 0.001,
                      "cause" : "the largest loss is in soil",
                      "warnings" : [
                        {
                          "name" : "made-up",
                          "message" : "made up; no remedy"
                        }
                      ]
                    }
                  ]
                }
              ]
            }
            """);
  }

  @Test
  void jsonKeepsItsSchemaWithAndWithoutValues() throws IOException {
    for (CheckReport report : List.of(KEPT, MIXED, report(open()))) {
      assertThat(JsonSchema.result().faultsOfJson(render(report, Format.JSON))).isEmpty();
    }
  }

  @Test
  void whatIsInfiniteIsNullInJsonWithAStatus() throws IOException {
    assertThat(render(report(open()), Format.JSON))
        .containsSubsequence(
            "\"value\" : null",
            "\"value_low\" : null",
            "\"value_high\" : null",
            "\"margin\" : null",
            "\"status\" : \"undefined\"");
    double infinite = Double.POSITIVE_INFINITY;
    CheckedRequirement unbounded =
        MadeUpCheck.within(MadeUpCheck.SWR, Quantity.SWR_TRANSMITTER, 2, 1.5, 1.25, infinite);
    assertThat(render(report(unbounded), Format.JSON)).contains("\"status\" : \"undefined\"");
    assertThat(render(report(undecidedYield()), Format.JSON))
        .contains("\"frequency_hz\" : null")
        .doesNotContain("status");
  }

  @Test
  void csvHasARowForEachRequirementWithEmptyCellsForWhatIsNotKnown() throws IOException {
    assertThat(render(MIXED, Format.CSV))
        .isEqualTo(
            """
            design,file,scope,quantity,unit,outcome,side,limit,value,value_low,value_high,margin,\
            frequency_hz,tolerance,cause
            Long wire,long.yaml,7.1 MHz,SWR at the transmitter,,met,at-most,\
            2.0,1.5,1.4375,1.75,0.5,7100000.0,0.001,
            Hut kit,kit.yaml,7.1 MHz,SWR at the transmitter,,met,at-most,\
            2.0,1.5,1.4375,1.75,0.5,7100000.0,0.001,
            Hut kit,kit.yaml,40 m,radiation efficiency,,failed,at-least,\
            0.95,0.875,0.84375,0.890625,-0.07499999999999996,7200000.0,0.001,\
            the largest loss is in soil
            Hut kit,kit.yaml,design,yield,,undecided,at-least,\
            0.9,0.90625,0.890625,0.921875,0.006249999999999978,,1.0E-4,\
            the limit lies within the numerical error
            """);
    assertThat(render(report(open()), Format.CSV)).contains(",2.0,inf,inf,inf,-inf,7100000.0,");
  }
}
