package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SchemaTest {

  @Test
  void examplesAreValidDesigns() throws IOException {
    JsonSchema schema = JsonSchema.design();
    assertThat(Run.examples()).isNotEmpty();
    for (Path example : Run.examples()) {
      assertThat(schema.faultsOfYaml(Files.readString(example))).as(example.toString()).isEmpty();
    }
  }

  /** And a key that no reader knows is refused by both. */
  @Test
  void theWorkshopsFilesAreValid() throws IOException {
    Path workshop = Path.of("examples", "workshop");
    String design = Path.of("examples", "hut-kit-heights.yaml").toString();
    for (List<String> each :
        List.of(
            List.of("readings", "balun-readings.yaml", "balun", "bench"),
            List.of("transformer", "balun-4-to-1.yaml", "balun", "design"),
            List.of("measured", "hut-swr.yaml", "fit", design, "--vary", "height", "--measured"))) {
      String text = Files.readString(workshop.resolve(each.get(1)));
      JsonSchema schema = new JsonSchema(each.get(0));
      assertThat(schema.faultsOfYaml(text)).as(each.get(1)).isEmpty();
      String spoilt = text + "unknown-key: 1\n";
      assertThat(schema.faultsOfYaml(spoilt)).as(each.get(1)).isNotEmpty();
      Path file = Files.writeString(Files.createTempFile("spoilt", ".yaml"), spoilt);
      List<String> line = new ArrayList<>(each.subList(2, each.size()));
      line.add(file.toString());
      Run run = Run.of(line.toArray(String[]::new));
      Files.delete(file);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).contains("unknown-key");
    }
  }

  @Test
  void schemasRefuseWhatTheyDoNotKnow() throws IOException {
    String example = Files.readString(Run.examples().get(0));
    assertThat(JsonSchema.design().faultsOfYaml(example.replace("title:", "heading:")))
        .isNotEmpty();
    assertThat(JsonSchema.result().faultsOfJson("{\"format\": \"spanwire-result/1\"}"))
        .isNotEmpty();
  }
}
