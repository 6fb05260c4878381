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

  @Test
  void schemasRefuseWhatTheyDoNotKnow() throws IOException {
    String example = Files.readString(Run.examples().get(0));
    assertThat(JsonSchema.design().faultsOfYaml(example.replace("title:", "heading:")))
        .isNotEmpty();
    assertThat(JsonSchema.result().faultsOfJson("{\"format\": \"spanwire-result/1\"}"))
        .isNotEmpty();
  }
}
