package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
    for (String[] each :
        new String[][] {
          {"readings", "balun-readings.yaml", "bench"},
          {"transformer", "balun-4-to-1.yaml", "design"}
        }) {
      String text = Files.readString(workshop.resolve(each[1]));
      JsonSchema schema = new JsonSchema(each[0]);
      assertThat(schema.faultsOfYaml(text)).as(each[1]).isEmpty();
      String spoilt = text + "unknown-key: 1\n";
      assertThat(schema.faultsOfYaml(spoilt)).as(each[1]).isNotEmpty();
      Path file = Files.writeString(Files.createTempFile("spoilt", ".yaml"), spoilt);
      Run run = Run.of("balun", each[2], file.toString());
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
