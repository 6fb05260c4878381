package org.spanwire.validation;

import java.util.List;
import org.spanwire.validation.accuracy.HonestyCheck;

/**
 * A part of the report besides the tables of cases.
 *
 * @param markdown its text, with its heading
 * @param faults one line for each thing that is not as it should be
 */
record Section(String markdown, List<String> faults) {

  Section {
    faults = List.copyOf(faults);
  }

  /** Whether the stated error is true, run at length and in part. */
  static Section statedError() {
    HonestyCheck check = HonestyCheck.run();
    return new Section(check.markdown(), check.faults());
  }
}
