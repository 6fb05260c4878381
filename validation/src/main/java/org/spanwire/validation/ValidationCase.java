package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;

/**
 * One published value and how Spanwire is to reproduce it.
 *
 * @param id unique; group and number of the value, then what tells its rows apart
 * @param group number of the group of values it belongs to
 * @param structure the structure, together with the parameters of the quantity
 * @param reference the structure that the quantity is compared with; the same if there is none
 * @param quantity what is asked for
 * @param expected the published value
 * @param tolerance the deviation that passes
 * @param source the publication
 * @param origin how the value came about
 */
record ValidationCase(
    String id,
    int group,
    Structure structure,
    Structure reference,
    Quantity quantity,
    Complex expected,
    Tolerance tolerance,
    String source,
    Origin origin) {

  Parameters parameters() {
    return structure.parameters();
  }

  /** The same question about another structure and another reference. */
  ValidationCase about(Structure another, Structure anotherReference) {
    return new ValidationCase(
        id, group, another, anotherReference, quantity, expected, tolerance, source, origin);
  }
}
