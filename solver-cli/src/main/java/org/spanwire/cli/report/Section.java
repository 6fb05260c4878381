package org.spanwire.cli.report;

/** A part of the page. */
interface Section {

  /** Letters and hyphens; the part's address on the page. */
  String id();

  /** The heading. */
  String title();

  /** Writes what stands below the heading. */
  void write(Page page);
}
