package org.spanwire.cli.output;

import org.spanwire.study.CheckedRequirement.Outcome;
import org.spanwire.study.Verdict;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Help.Ansi.IStyle;
import picocli.CommandLine.Help.Ansi.Style;

/**
 * Colours of text output. They repeat what the words say and carry nothing of their own.
 *
 * @param enabled whether to colour at all
 */
public record Palette(boolean enabled) {

  /** No colours. */
  public static Palette plain() {
    return new Palette(false);
  }

  /** Colours where the terminal shows them and {@code NO_COLOR} is not set. */
  public static Palette ofTerminal() {
    return new Palette(Ansi.AUTO.enabled());
  }

  String heading(String text) {
    return styled(Style.bold, text);
  }

  String warning(String text) {
    return styled(Style.fg_yellow, text);
  }

  String verdict(Verdict verdict, String text) {
    return switch (verdict) {
      case DIRECT -> styled(Style.fg_green, text);
      case TUNABLE -> styled(Style.fg_cyan, text);
      case WIDE_TUNER -> styled(Style.fg_yellow, text);
      case UNUSABLE -> styled(Style.fg_red, text);
    };
  }

  String outcome(Outcome outcome, String text) {
    return switch (outcome) {
      case MET -> styled(Style.fg_green, text);
      case FAILED -> styled(Style.fg_red, text);
      case UNDECIDED -> styled(Style.fg_yellow, text);
    };
  }

  private String styled(IStyle style, String text) {
    return enabled ? style.on() + text + Style.reset.off() : text;
  }
}
