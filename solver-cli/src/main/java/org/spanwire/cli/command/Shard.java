package org.spanwire.cli.command;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which part of a sweep to run: {@code K/N}, or {@code auto} for what the job-array scheduler says
 * in its environment variables.
 *
 * @param index 1 to count
 * @param count number of shards
 */
record Shard(int index, int count) {

  static final Shard WHOLE = new Shard(1, 1);

  private static final Pattern FRACTION = Pattern.compile("(\\d{1,9})/(\\d{1,9})");
  private static final Pattern AUTO = Pattern.compile("auto(?:/(\\d{1,9}))?");

  /**
   * The variables of a scheduler.
   *
   * @param index number of this task
   * @param first number of the first task; empty if the scheduler does not tell
   * @param last number of the last task; empty if the scheduler does not tell
   * @param step step between the numbers; empty if there is none
   */
  private record Scheduler(String index, String first, String last, String step) {}

  private static final List<Scheduler> SCHEDULERS =
      List.of(
          new Scheduler(
              "SLURM_ARRAY_TASK_ID",
              "SLURM_ARRAY_TASK_MIN",
              "SLURM_ARRAY_TASK_MAX",
              "SLURM_ARRAY_TASK_STEP"),
          new Scheduler("SGE_TASK_ID", "SGE_TASK_FIRST", "SGE_TASK_LAST", "SGE_TASK_STEPSIZE"),
          new Scheduler("PBS_ARRAY_INDEX", "", "", ""),
          new Scheduler("PBS_ARRAYID", "", "", ""));

  static Shard parse(String text, Map<String, String> environment) {
    Matcher fraction = FRACTION.matcher(text);
    if (fraction.matches()) {
      return checked(
          text, Integer.parseInt(fraction.group(1)), Integer.parseInt(fraction.group(2)));
    }
    Matcher auto = AUTO.matcher(text);
    if (!auto.matches()) {
      throw fault(text, "is neither K/N nor auto; write --shard 2/8");
    }
    for (Scheduler scheduler : SCHEDULERS) {
      String index = environment.getOrDefault(scheduler.index(), "undefined");
      // Outside an array some schedulers set the variable to a word.
      if (index.matches("\\d{1,9}")) {
        return auto.group(1) == null
            ? of(text, scheduler, environment)
            : checked(text, Integer.parseInt(index), Integer.parseInt(auto.group(1)));
      }
    }
    throw fault(
        text,
        "no array task in the environment: none of "
            + String.join(", ", SCHEDULERS.stream().map(Scheduler::index).toList())
            + " is a number; submit the job as an array or write --shard K/N");
  }

  private static Shard of(String text, Scheduler scheduler, Map<String, String> environment) {
    if (!environment.getOrDefault(scheduler.last(), "").matches("\\d{1,9}")) {
      throw fault(
          text,
          scheduler.index()
              + " is set, but the scheduler does not tell the number of tasks; write --shard"
              + " auto/N with tasks 1 to N");
    }
    int first = number(environment, scheduler.first());
    int step = number(environment, scheduler.step());
    int index = Integer.parseInt(environment.get(scheduler.index()));
    int last = Integer.parseInt(environment.get(scheduler.last()));
    return checked(text, (index - first) / step + 1, (last - first) / step + 1);
  }

  /** 1 if the scheduler does not say. */
  private static int number(Map<String, String> environment, String name) {
    String value = environment.getOrDefault(name, "1");
    return value.matches("\\d{1,9}") ? Integer.parseInt(value) : 1;
  }

  private static Shard checked(String text, int index, int count) {
    if (index < 1 || index > count) {
      throw fault(
          text, "shard " + index + " of " + count + " does not exist; shards are counted from 1");
    }
    return new Shard(index, count);
  }

  private static InputException fault(String text, String what) {
    return new InputException("--shard " + text + ": " + what);
  }
}
