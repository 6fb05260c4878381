package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A POSIX shell in a directory, with the command of the classes under test on its path. */
record Shell(Path directory) {

  /** Puts the command into the directory. */
  Shell {
    Path command = directory.resolve("spanwire");
    try {
      Files.writeString(
          command,
          "#!/bin/sh\nexec '"
              + Path.of(System.getProperty("java.home"), "bin", "java")
              + "' -XX:+UseSerialGC -XX:-UsePerfData -cp '"
              + System.getProperty("java.class.path")
              + "' org.spanwire.cli.Spanwire \"$@\"\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    assertThat(command.toFile().setExecutable(true)).isTrue();
  }

  /** Runs a script and returns its exit code; what it prints is in {@link #log}. */
  int run(String script) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder("/bin/sh", "-c", script);
    builder
        .environment()
        .merge("PATH", directory.toString(), (path, own) -> own + File.pathSeparator + path);
    Process process = builder.directory(directory.toFile()).redirectErrorStream(true).start();
    process.getOutputStream().close();
    byte[] printed = process.getInputStream().readAllBytes();
    int code = process.waitFor();
    Files.write(directory.resolve("log.txt"), printed);
    return code;
  }

  /** What the last script printed. */
  String log() throws IOException {
    return Files.readString(directory.resolve("log.txt"), StandardCharsets.UTF_8);
  }
}
