package org.spanwire.cli.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote. */
public final class ProgramVersion implements IVersionProvider {

  private static final String FILE = "/org/spanwire/cli/version.properties";

  @Override
  public String[] getVersion() {
    return new String[] {"spanwire " + number()};
  }

  /** The version alone: "1.2.0". */
  static String number() {
    Properties properties = new Properties();
    try (InputStream in = ProgramVersion.class.getResourceAsStream(FILE)) {
      properties.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return properties.getProperty("version");
  }
}
