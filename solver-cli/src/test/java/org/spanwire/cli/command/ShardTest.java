package org.spanwire.cli.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShardTest {

  private static Shard of(String text, String... environment) {
    Map<String, String> variables = new HashMap<>();
    for (int i = 0; i < environment.length; i += 2) {
      variables.put(environment[i], environment[i + 1]);
    }
    return Shard.parse(text, variables);
  }

  @Test
  void isStatedOrTakenFromTheScheduler() {
    assertThat(of("2/8")).isEqualTo(new Shard(2, 8));
    assertThat(
            of(
                "auto",
                "SLURM_ARRAY_TASK_ID",
                "3",
                "SLURM_ARRAY_TASK_MIN",
                "0",
                "SLURM_ARRAY_TASK_MAX",
                "7"))
        .isEqualTo(new Shard(4, 8));
    assertThat(
            of(
                "auto",
                "SLURM_ARRAY_TASK_ID",
                "14",
                "SLURM_ARRAY_TASK_MIN",
                "10",
                "SLURM_ARRAY_TASK_MAX",
                "16",
                "SLURM_ARRAY_TASK_STEP",
                "2"))
        .isEqualTo(new Shard(3, 4));
    assertThat(
            of(
                "auto",
                "SGE_TASK_ID",
                "16",
                "SGE_TASK_FIRST",
                "1",
                "SGE_TASK_LAST",
                "16",
                "SGE_TASK_STEPSIZE",
                "1"))
        .isEqualTo(new Shard(16, 16));
    assertThat(of("auto/16", "PBS_ARRAY_INDEX", "5")).isEqualTo(new Shard(5, 16));
    assertThat(of("auto/16", "PBS_ARRAYID", "16")).isEqualTo(new Shard(16, 16));
  }

  @Test
  void aSchedulerThatDoesNotTellTheNumberOfTasksIsNotGuessedAt() {
    assertThatThrownBy(() -> of("auto", "PBS_ARRAY_INDEX", "5")).hasMessageContaining("auto/N");
  }

  @Test
  void outsideAnArrayThereIsNoShard() {
    assertThatThrownBy(() -> of("auto")).hasMessageContaining("SLURM_ARRAY_TASK_ID");
    assertThatThrownBy(() -> of("auto", "SGE_TASK_ID", "undefined")).hasMessageContaining("K/N");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0/4", "5/4", "4", "1/0", "-1/4", "auto/", "half"})
  void refusesWhatIsNoShard(String text) {
    assertThatThrownBy(() -> of(text, "PBS_ARRAYID", "2"))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("--shard " + text);
  }
}
