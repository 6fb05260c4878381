package org.spanwire.cli;

import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.spanwire.MemoryException;
import org.spanwire.ToleranceException;
import org.spanwire.cli.command.BalunCommand;
import org.spanwire.cli.command.BandsCommand;
import org.spanwire.cli.command.BaselineCommand;
import org.spanwire.cli.command.CheckCommand;
import org.spanwire.cli.command.CompletionCommand;
import org.spanwire.cli.command.CutCommand;
import org.spanwire.cli.command.ExitCode;
import org.spanwire.cli.command.ExposureCommand;
import org.spanwire.cli.command.FitCommand;
import org.spanwire.cli.command.InputException;
import org.spanwire.cli.command.MergeCommand;
import org.spanwire.cli.command.OptimizeCommand;
import org.spanwire.cli.command.ProgramVersion;
import org.spanwire.cli.command.ReportCommand;
import org.spanwire.cli.command.ResponseCommand;
import org.spanwire.cli.command.SchemaCommand;
import org.spanwire.cli.command.SolveCommand;
import org.spanwire.cli.command.SweepCommand;
import org.spanwire.cli.command.YieldCommand;
import org.spanwire.design.DesignException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** Entry point of the {@code spanwire} command. */
@Command(
    name = "spanwire",
    versionProvider = ProgramVersion.class,
    subcommands = {
      SolveCommand.class,
      BandsCommand.class,
      ResponseCommand.class,
      SweepCommand.class,
      MergeCommand.class,
      OptimizeCommand.class,
      FitCommand.class,
      YieldCommand.class,
      CutCommand.class,
      ExposureCommand.class,
      CheckCommand.class,
      BaselineCommand.class,
      BalunCommand.class,
      ReportCommand.class,
      SchemaCommand.class,
      CompletionCommand.class
    },
    description = {
      "Designs HF wire antennas over real ground.",
      "A design is one YAML or JSON file: wires, feeds, ground, feed chain and bands. The commands"
          + " below read it and print impedance, SWR and gain."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire bands kit.yaml",
      "      is this kit usable, band by band?",
      "  spanwire solve kit.yaml --frequency 7.1MHz --elevation 10,30,60",
      "      impedance, SWR and gain at one frequency",
      "  spanwire sweep kit.yaml --vary height=5m:12m:15 --of impedance,swr",
      "      how much does height matter?",
      "  spanwire solve kit.yaml --set height=8m --format json",
      "      another height, for a program to read",
      "  spanwire cut kit.yaml",
      "      what to cut, and what to trim",
      "  spanwire check kit.yaml --junit kit-check.xml",
      "      does it keep its promises? for a build server",
      "  spanwire report kit.yaml --output kit.html",
      "      everything on one page, with pictures",
      "",
      "Exit codes: 0 done, 1 a requirement failed, 2 bad input, 3 tolerance not reached, 70"
          + " internal error.",
      "Colours are left out where output is no terminal or NO_COLOR is set."
    })
public final class Spanwire implements Runnable {

  @Spec private CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      scope = ScopeType.INHERIT,
      description = "Show this help and end.")
  private boolean help;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version and end.")
  private boolean version;

  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "Show the stack trace of an internal error.")
  private boolean debug;

  /** Runs the command and ends the process with its exit code. */
  public static void main(String[] args) {
    Charset charset = charset();
    PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), false, charset);
    PrintWriter err = new PrintWriter(new FileOutputStream(FileDescriptor.err), true, charset);
    int code = run(out, err, args);
    out.flush();
    System.exit(code);
  }

  /** UTF-8, unless output goes to a terminal that says it wants something else. */
  private static Charset charset() {
    Console console = System.console();
    return console == null || console.charset().equals(StandardCharsets.US_ASCII)
        ? StandardCharsets.UTF_8
        : console.charset();
  }

  /**
   * Runs the command.
   *
   * @param out takes results
   * @param err takes messages
   * @return the exit code
   */
  public static int run(PrintWriter out, PrintWriter err, String... args) {
    Spanwire spanwire = new Spanwire();
    CommandLine commandLine =
        new CommandLine(spanwire)
            .setOut(out)
            .setErr(err)
            .setUsageHelpAutoWidth(true)
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setParameterExceptionHandler((e, arguments) -> spanwire.badUsage(e))
            .setExecutionExceptionHandler((e, command, result) -> spanwire.failed(e));
    try {
      return commandLine.execute(args);
    } catch (OutOfMemoryError e) {
      return spanwire.failed(e);
    }
  }

  /** Without a subcommand there is nothing to do, so show what can be done. */
  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  private int badUsage(ParameterException e) {
    String advice = "; see '" + e.getCommandLine().getCommandSpec().qualifiedName() + " --help'";
    if (e instanceof UnmatchedArgumentException unmatched
        && !unmatched.getSuggestions().isEmpty()) {
      advice = "; did you mean " + String.join(" or ", unmatched.getSuggestions()) + "?";
    }
    // The parser says "option option" of an option that holds pairs, and names types of Java.
    return say(
        e.getMessage()
                .replace("option option", "option")
                .replaceFirst("' is not an? (int|long)$", "' is no whole number in range")
            + advice,
        ExitCode.BAD_INPUT);
  }

  private int failed(Throwable e) {
    if (debug) {
      e.printStackTrace(spec.commandLine().getErr());
    }
    if (e instanceof DesignException
        || e instanceof InputException
        || e instanceof MemoryException) {
      return say(e.getMessage(), ExitCode.BAD_INPUT);
    }
    if (e instanceof ToleranceException) {
      return say(e.getMessage(), ExitCode.TOLERANCE);
    }
    if (e instanceof OutOfMemoryError) {
      return say("out of memory; give Java more, such as SPANWIRE_OPTS=-Xmx8g", ExitCode.INTERNAL);
    }
    return say(
        "internal error: "
            + e
            + "; please report it with the design file, --debug shows where it happened",
        ExitCode.INTERNAL);
  }

  /** One line, whatever the message. */
  private int say(String message, int code) {
    PrintWriter err = spec.commandLine().getErr();
    err.println("spanwire: " + message.replaceAll("\\R\\s*", " "));
    err.flush();
    return code;
  }
}
