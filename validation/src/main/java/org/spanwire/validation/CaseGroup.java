package org.spanwire.validation;

import java.util.List;

/** Cases on one subject. */
record CaseGroup(int number, String title, List<ValidationCase> cases) {
  CaseGroup {
    cases = List.copyOf(cases);
  }
}
