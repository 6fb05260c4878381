package org.spanwire.validation;

/** How a published value came about. */
enum Origin {
  /** Closed form or a single convergent integral. */
  CLOSED_FORM("closed form"),
  /** Classical integral equation, solved numerically and independently of this project. */
  INTEGRAL_EQUATION("integral equation"),
  /** Read in the text of a publication. */
  TEXT("text"),
  /** Remembered from a publication that was not at hand. */
  MEMORY("from memory"),
  /** A law that holds whatever the numbers are. */
  LAW("law");

  private final String label;

  Origin(String label) {
    this.label = label;
  }

  String label() {
    return label;
  }
}
