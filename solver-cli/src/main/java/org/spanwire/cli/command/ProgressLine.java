package org.spanwire.cli.command;

import java.io.PrintStream;
import java.util.Optional;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** How far a command is, on standard error where somebody watches, else nothing. */
final class ProgressLine implements AutoCloseable {

  private static final int WIDTH = 79;
  private static final int INTERVAL_MILLIS = 500;

  private final Optional<ProgressBar> bar;
  private long begun;

  private ProgressLine(Optional<ProgressBar> bar) {
    this.bar = bar;
  }

  /** A bar with rate and time left. */
  static ProgressLine ofRows(long rows) {
    // Java tells only of standard input and output together whether they are a terminal.
    return System.console() == null || rows == 0
        ? new ProgressLine(Optional.empty())
        : ofRows(System.err, rows);
  }

  static ProgressLine ofRows(PrintStream stream, long rows) {
    return new ProgressLine(
        Optional.of(
            builder("sweep", stream).setInitialMax(rows).setUnit(" rows", 1).showSpeed().build()));
  }

  /** A bar that names what is being done; parts differ in length, so it tells no time left. */
  static ProgressLine ofParts(String task, int parts) {
    return System.console() == null
        ? new ProgressLine(Optional.empty())
        : ofParts(task, System.err, parts);
  }

  static ProgressLine ofParts(String task, PrintStream stream, int parts) {
    return new ProgressLine(
        Optional.of(
            builder(task, stream).setInitialMax(parts).hideEta().clearDisplayOnFinish().build()));
  }

  private static ProgressBarBuilder builder(String task, PrintStream stream) {
    return new ProgressBarBuilder()
        .setTaskName(task)
        .setStyle(ProgressBarStyle.ASCII)
        .setUpdateIntervalMillis(INTERVAL_MILLIS)
        .setConsumer(new ConsoleProgressBarConsumer(stream, WIDTH));
  }

  void step() {
    bar.ifPresent(ProgressBar::step);
  }

  /** A part begins, so the one before has ended. */
  void begin(String part) {
    bar.ifPresent(shown -> shown.setExtraMessage(" " + part).stepTo(begun));
    begun++;
  }

  @Override
  public void close() {
    bar.ifPresent(ProgressBar::close);
  }
}
