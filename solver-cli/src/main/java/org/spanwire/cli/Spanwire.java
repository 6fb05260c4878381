package org.spanwire.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Entry point of the {@code spanwire} command. */
@Command(
    name = "spanwire",
    mixinStandardHelpOptions = true,
    versionProvider = Spanwire.Version.class,
    description = "Designs HF wire antennas over real ground.")
public final class Spanwire implements Runnable {

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /** Runs the command and ends the process with its exit code. */
  public static void main(String[] args) {
    System.exit(new CommandLine(new Spanwire()).execute(args));
  }

  /** Without a subcommand there is nothing to do, so show what can be done. */
  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  /** The version that the build wrote. */
  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() throws IOException {
      Properties properties = new Properties();
      try (InputStream in = Spanwire.class.getResourceAsStream("version.properties")) {
        properties.load(in);
      }
      return new String[] {"spanwire " + properties.getProperty("version")};
    }
  }
}
