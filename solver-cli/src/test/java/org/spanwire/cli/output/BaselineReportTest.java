package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.cli.JsonSchema;
import org.spanwire.study.Baseline.Change;

class BaselineReportTest {

  private static final Change STILL = change(1.5, 1.5, 0.25);
  private static final Change MOVED = change(1.5, 2.25, 0.25);
  private static final Change NEW =
      new Change("7.1 MHz", "reactance_ohm", OptionalDouble.empty(), OptionalDouble.of(-12.5), 0.5);
  private static final Change GONE =
      new Change("40 m", "choke_heat_w", OptionalDouble.of(8), OptionalDouble.empty(), 0.5);

  private static Change change(double was, double is, double limit) {
    return new Change("7.1 MHz", "swr", OptionalDouble.of(was), OptionalDouble.of(is), limit);
  }

  private static BaselineReport report(Change... changes) {
    return new BaselineReport(List.of(kit(changes)), "1.2.3");
  }

  private static BaselineReport.Compared kit(Change... changes) {
    return new BaselineReport.Compared(
        MadeUpCheck.design("Hut kit", "kit.yaml"), "kit.baseline.csv", List.of(changes));
  }

  private static Stream<String> lines(BaselineReport report) {
    return report
        .text(Palette.plain())
        .lines()
        .filter(line -> !line.matches("[- ]*-[- ]*"))
        .map(line -> line.strip().replaceAll(" +", " "));
  }

  private static String render(Report report, Format format) throws IOException {
    return report.render(format, Palette.plain());
  }

  @Test
  void passesIfNothingMovedAppearedOrVanished() {
    assertThat(report(STILL, STILL).passed()).isTrue();
    assertThat(report(STILL, MOVED).passed()).isFalse();
    assertThat(report(NEW).passed()).isFalse();
    assertThat(report(GONE).passed()).isFalse();
    assertThat(new BaselineReport(List.of(kit(STILL), kit(MOVED)), "1.2.3").passed()).isFalse();
  }

  @Test
  void onlyWhatMovedIsInTheTable() {
    assertThat(lines(report(STILL, MOVED, NEW, GONE)))
        .containsExactly(
            "Hut kit (kit.baseline.csv)",
            "place quantity was is moved by limit",
            "7.1 MHz swr 1.50 2.25 0.75 0.25",
            "7.1 MHz reactance_ohm - -12.50 - 0.5",
            "40 m choke_heat_w 8.00 - - 0.5",
            "3 of 4 results moved by more than their limits",
            "");
  }

  @Test
  void withoutDriftThereIsNoTable() {
    assertThat(report(STILL, STILL).text(Palette.plain()))
        .isEqualTo(
            """
            Hut kit  (kit.baseline.csv)
            0 of 2 results moved by more than their limits

            """);
  }

  @Test
  void theTitleIsAHeading() {
    assertThat(report(STILL).text(new Palette(true))).startsWith("\u001b[1mHut kit\u001b");
  }

  /** A tenth of the limit is the last digit, so that what moved can be told from what may move. */
  @ParameterizedTest
  @CsvSource({
    "300, 1000, 2000, 1000 2000 1000 300",
    "10, 100, 150, 100 150 50 10",
    "1, 100, 102, 100.0 102.0 2.0 1",
    "0.03, 1.5, 1.75, 1.500 1.750 0.250 0.03",
    "0.001, 1.5, 1.25, 1.5000 1.2500 -0.2500 0.001",
    // No more than nine decimals, and six where nothing may move.
    "0.0000000001, 1.5, 1.25, 1.500000000 1.250000000 -0.250000000 0.0000000001",
    "0, 1.5, 1.25, 1.500000 1.250000 -0.250000 0"
  })
  void valuesAreShownToATenthOfTheirLimit(double limit, double was, double is, String row) {
    assertThat(lines(report(change(was, is, limit)))).contains("7.1 MHz swr " + row);
  }

  @Test
  void jsonHasAllResultsThenAndNow() throws IOException {
    String json = render(report(STILL, NEW), Format.JSON);
    assertThat(json)
        .isEqualTo(
            """
            {
              "format" : "spanwire-result/1",
              "command" : "baseline compare",
              "version" : "1.2.3",
              "passed" : false,
              "designs" : [
                {
                  "design" : "Hut kit",
                  "file" : "kit.yaml",
                  "baseline" : "kit.baseline.csv",
                  "results" : [
                    {
                      "place" : "7.1 MHz",
                      "quantity" : "swr",
                      "was" : 1.5,
                      "is" : 1.5,
                      "limit" : 0.25,
                      "drifted" : false
                    },
                    {
                      "place" : "7.1 MHz",
                      "quantity" : "reactance_ohm",
                      "was" : null,
                      "is" : -12.5,
                      "status" : "undefined",
                      "limit" : 0.5,
                      "drifted" : true
                    }
                  ]
                }
              ]
            }
            """);
    assertThat(JsonSchema.result().faultsOfJson(json)).isEmpty();
    String gone = render(report(GONE), Format.JSON);
    assertThat(gone).containsSubsequence("\"is\" : null", "\"status\" : \"undefined\"");
    assertThat(JsonSchema.result().faultsOfJson(gone)).isEmpty();
  }

  @Test
  void csvHasARowForEachResultAndEmptyCellsForWhatIsNotThere() throws IOException {
    assertThat(render(report(STILL, MOVED, NEW, GONE), Format.CSV))
        .isEqualTo(
            """
            design,place,quantity,was,is,limit,drifted
            Hut kit,7.1 MHz,swr,1.5,1.5,0.25,false
            Hut kit,7.1 MHz,swr,1.5,2.25,0.25,true
            Hut kit,7.1 MHz,reactance_ohm,,-12.5,0.5,true
            Hut kit,40 m,choke_heat_w,8.0,,0.5,true
            """);
  }
}
