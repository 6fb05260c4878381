package org.spanwire.validation.guide;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The guide holds the examples as they are, and what they print. */
class GuideTest {

  @Test
  void showsTheTenExamplesAndWhatTheyPrint() throws Exception {
    String guide = Files.readString(Guide.FILE);
    assertThat(Guide.examples(guide)).hasSize(10).doesNotHaveDuplicates();
    assertThat(guide).isEqualTo(Guide.filled(guide));
  }

  @Test
  void isNamedInTheReadme() throws Exception {
    assertThat(Files.readString(Path.of("..", "README.md"))).contains("solver-core/GUIDE.md");
  }
}
