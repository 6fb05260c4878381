package org.spanwire.cli.output;

import java.io.IOException;
import org.spanwire.study.SweepRow;

/** Takes the rows of a sweep one after another; holds none of them. */
public interface SweepWriter {

  /** Writes what stands before the rows. */
  void begin() throws IOException;

  /** Writes one row. */
  void row(SweepRow row) throws IOException;

  /** Writes what stands after the rows. */
  void end() throws IOException;
}
