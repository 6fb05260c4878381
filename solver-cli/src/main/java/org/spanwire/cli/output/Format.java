package org.spanwire.cli.output;

/** How results are written. */
public enum Format {
  /** Tables for reading. */
  TEXT,
  /** One JSON object. */
  JSON,
  /** Comma-separated values with a header row (RFC 4180). */
  CSV
}
