package org.spanwire.cli.command;

/** How the rows of a sweep are written. */
enum SweepFormat {
  /** Columns for reading. */
  TEXT,
  /** One JSON object. */
  JSON,
  /** Comma-separated values with a header row (RFC 4180). */
  CSV,
  /** A page with pictures and a table. */
  HTML
}
