package org.spanwire.geometry;

import java.util.Objects;

/** An antenna that cannot be modelled as given: what is wrong, and what to do about it. */
public final class GeometryException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  private final Subject subject;
  private final String subjectName;

  /** What part of the antenna is at fault. */
  public enum Subject {
    /** A wire. */
    WIRE,
    /** A feed. */
    FEED,
    /** A fitting. */
    FITTING,
    /** The antenna as a whole. */
    ANTENNA
  }

  /**
   * Creates the exception.
   *
   * @param subject kind of part at fault
   * @param subjectName its name; for {@link Subject#ANTENNA} an empty string
   * @param message one line: quantity, value with unit, limit, remedy
   */
  public GeometryException(Subject subject, String subjectName, String message) {
    super(message);
    this.subject = Objects.requireNonNull(subject, "subject");
    this.subjectName = Objects.requireNonNull(subjectName, "subjectName");
  }

  /** The kind of part at fault. */
  public Subject subject() {
    return subject;
  }

  /** The name of the part at fault. */
  public String subjectName() {
    return subjectName;
  }
}
