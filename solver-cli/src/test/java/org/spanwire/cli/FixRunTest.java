package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code spanwire bands --fix} on a small antenna that is really solved. */
class FixRunTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit in need
      parameters:
        span: 21.4 m
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 10], [span, 0, 10]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 2}
      bands: {plan: iaru-region-1, use: [40 m]}
      """;

  @TempDir private Path directory;

  @Test
  void saysHowManyCentimetresHelp() throws IOException {
    String design = Files.writeString(directory.resolve("kit.yaml"), DESIGN).toString();
    Run text = Run.of("bands", design, "--fix");
    assertThat(text.code()).as(text.err()).isZero();
    assertThat(text.out()).contains("What single change").containsPattern("span +21.4 m.* cm");
    assertThat(text.out().lines()).allMatch(line -> line.length() <= 120);
    Run run = Run.of("bands", design, "--fix", "--format", "json");
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    JsonNode fixes = new ObjectMapper().readTree(run.out()).get("fixes");
    assertThat(fixes.at("/0/changes/0/name").asText()).isEqualTo("span");
    assertThat(Run.of("bands", design).out()).doesNotContain("What single change");
  }
}
