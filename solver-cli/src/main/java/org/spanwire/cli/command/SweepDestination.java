package org.spanwire.cli.command;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.spanwire.cli.output.PartHeader;
import org.spanwire.cli.output.Replacement;
import org.spanwire.cli.output.Report;
import org.spanwire.cli.output.SweepCsv;
import org.spanwire.cli.output.SweepJson;
import org.spanwire.cli.output.SweepPart;
import org.spanwire.cli.output.SweepText;
import org.spanwire.cli.output.SweepWriter;
import org.spanwire.study.Sweep;

/**
 * Where the rows of a sweep go.
 *
 * @param sweep the sweep
 * @param design how it is solved
 * @param output terminal or file
 */
record SweepDestination(Sweep sweep, DesignOptions design, FileOptions output) {

  /** Appends the rows to a file that can be gone on with. */
  void toPart(SweepRun run, String fingerprint, Shard shard, boolean resume) {
    Path file = output.file().orElseThrow();
    PartHeader header = new PartHeader(fingerprint, shard.index(), shard.count(), run.rows());
    try {
      if (resume && isDone(file, header)) {
        run.run(run.rows().end(), row -> {});
        return;
      }
      try (SweepPart part = SweepPart.open(file, header, SweepCsv.header(sweep))) {
        run.run(part.next(), row -> part.append(SweepCsv.line(sweep, row)));
        part.complete();
      }
    } catch (SweepPart.UnfitException e) {
      throw new InputException(e.getMessage());
    } catch (IOException e) {
      throw FileOptions.unwritable(file, e);
    } catch (UncheckedIOException e) {
      throw FileOptions.unwritable(file, e.getCause());
    }
  }

  /** Whether an earlier run has completed the file. */
  private boolean isDone(Path file, PartHeader header) throws IOException {
    if (!Files.exists(file) || Files.exists(SweepPart.beside(file))) {
      return false;
    }
    if (SweepPart.isComplete(file, header)) {
      return true;
    }
    throw new InputException(
        file
            + ": is there, with nothing to go on with and no sign of being this sweep; leave --resume"
            + " out to make it anew");
  }

  /**
   * Writes the rows to the terminal, or to a file that changes once all are there.
   *
   * @param format text, JSON or CSV
   */
  void stream(SweepRun run, SweepFormat format) {
    if (output.file().isEmpty()) {
      Writer out = output.terminal();
      try {
        write(run, format, out);
        out.flush();
      } catch (IOException | UncheckedIOException e) {
        throw new InputException("standard output: could not be written to in full");
      }
      return;
    }
    Path file = output.file().orElseThrow();
    try {
      Replacement.of(
          file,
          bytes -> {
            Writer out = new BufferedWriter(new OutputStreamWriter(bytes, StandardCharsets.UTF_8));
            write(run, format, out);
            out.flush();
          });
    } catch (IOException e) {
      throw FileOptions.unwritable(file, e);
    } catch (UncheckedIOException e) {
      throw FileOptions.unwritable(file, e.getCause());
    }
  }

  private void write(SweepRun run, SweepFormat format, Writer out) throws IOException {
    switch (format) {
      case TEXT -> write(run, new SweepText(sweep, output.palette(), out));
      case CSV -> write(run, new SweepCsv(sweep, out));
      case JSON -> {
        try (JsonGenerator json = Report.generator(out)) {
          write(run, new SweepJson(sweep, ProgramVersion.number(), design.tolerance(), json));
        }
        out.write('\n');
      }
      case HTML -> throw new IllegalArgumentException("a page takes all rows at once");
    }
  }

  private static void write(SweepRun run, SweepWriter writer) throws IOException {
    writer.begin();
    run.run(run.rows().first(), writer::row);
    writer.end();
  }
}
