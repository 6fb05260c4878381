package org.spanwire.cli.command;

import java.io.PrintStream;
import java.util.Optional;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** A bar with rate and time left on standard error where somebody watches, else nothing. */
final class SweepProgress implements AutoCloseable {

  private static final int WIDTH = 79;
  private static final int INTERVAL_MILLIS = 500;

  private final Optional<ProgressBar> bar;

  private SweepProgress(Optional<ProgressBar> bar) {
    this.bar = bar;
  }

  static SweepProgress over(long rows) {
    // Java tells only of standard input and output together whether they are a terminal.
    return System.console() == null || rows == 0
        ? new SweepProgress(Optional.empty())
        : on(System.err, rows);
  }

  static SweepProgress on(PrintStream stream, long rows) {
    return new SweepProgress(
        Optional.of(
            new ProgressBarBuilder()
                .setTaskName("sweep")
                .setInitialMax(rows)
                .setUnit(" rows", 1)
                .showSpeed()
                .setStyle(ProgressBarStyle.ASCII)
                .setUpdateIntervalMillis(INTERVAL_MILLIS)
                .setConsumer(new ConsoleProgressBarConsumer(stream, WIDTH))
                .build()));
  }

  void step() {
    bar.ifPresent(ProgressBar::step);
  }

  @Override
  public void close() {
    bar.ifPresent(ProgressBar::close);
  }
}
