package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code spanwire optimize} on a small antenna that is really solved. */
class OptimizeRunTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit to be made better
      parameters:
        height: 10 m
        ratio: 4
        offset: 33 %
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [20.3, 0, height]]}
      feeds:
        main: {wire: radiator, at: offset, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: ratio}
      bands: {plan: iaru-region-1, use: [40 m]}
      """;

  @TempDir private static Path directory;
  private static String design;

  @BeforeAll
  static void write() throws IOException {
    design = Files.writeString(directory.resolve("kit.yaml"), DESIGN).toString();
  }

  private static Run optimize(String... more) {
    String[] line = {"optimize", design, "--vary", "offset=20%:45%", "--goal", "worst-swr"};
    String[] all = Arrays.copyOf(line, line.length + more.length);
    System.arraycopy(more, 0, all, line.length, more.length);
    return Run.of(all);
  }

  @Test
  void jsonKeepsTheSchemaAndIsBetterThanTheDesign() throws IOException {
    Run run = optimize("--vary", "ratio=1,2,4", "--over", "height=8m,12m", "--format", "json");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    JsonNode result = new ObjectMapper().readTree(run.out());
    assertThat(result.at("/best/0/values/0").asDouble())
        .isLessThan(result.at("/nominal/values/0").asDouble());
    assertThat(result.at("/best/0/parameters/ratio").asDouble()).isIn(1.0, 2.0, 4.0);
    assertThat(result.at("/best/0/binding/0/installation/height").asDouble()).isIn(8.0, 12.0);
  }

  @Test
  void textAndCsvShowTheDesignAsItIsToo() {
    Run text = optimize();
    assertThat(text.code()).as(text.err()).isZero();
    assertThat(text.out())
        .contains(
            "as it is",
            "worst at",
            "may move alone as far as was looked at and does not cost 0.1",
            "power lines");
    assertThat(text.out().lines()).allMatch(line -> line.length() <= 118);
    Run csv = optimize("--format", "csv");
    assertThat(csv.out()).startsWith("kind,offset,worst-swr,feasible,40 m\nnominal,0.33,");
  }

  @Test
  void badInputIsRefusedInOneLine() {
    for (String[] wrong :
        new String[][] {
          {"--limit", "loudness=3"},
          {"--limit", "gain@95deg=3dBi"},
          {"--limit", "worst-swr=3dBi"},
          {"--limit", "choke-watts=20W"},
          {"--over", "offset=20%:30%:3"},
          {"--over", "hight=6m:9m:3"}
        }) {
      Run run = optimize(wrong);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).hasLineCount(1).startsWith("spanwire: ");
    }
  }
}
