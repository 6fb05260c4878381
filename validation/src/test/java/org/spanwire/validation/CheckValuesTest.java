package org.spanwire.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

/** The list of check values tells what is held and what is not. */
class CheckValuesTest {

  private static ValidationCase example(String id) {
    Structure structure = new Structure(Shape.DIPOLE, new Parameters(Map.of()));
    return new ValidationCase(
        id,
        1,
        structure,
        structure,
        Quantity.INPUT_IMPEDANCE,
        Complex.ONE,
        new Tolerance(0.01, true, "because"),
        "Hallén 1938",
        Origin.CLOSED_FORM);
  }

  /** With one case only, nearly all rows are missing and said to be. */
  @Test
  void absenceIsAFault() {
    List<CaseGroup> few =
        List.of(new CaseGroup(1, "Dipole", List.of(example("1-10/induced EMF"), example("1-100"))));
    Section section = CheckValues.section(few);
    assertThat(section.faults())
        .contains("check value 1-11 has neither a case nor a reason")
        .doesNotContain("check value 1-10 has neither a case nor a reason")
        .anyMatch(fault -> fault.startsWith("check value dipole_emf_in/1 names case"));
    assertThat(section.markdown())
        .contains("| 1-10 |")
        .contains("| 1-10/induced EMF |")
        .contains("**nothing yet**")
        .contains("not: isotropic sources");
  }

  @Test
  void everyRowIsThere() {
    List<CheckValues.Row> rows = CheckValues.rows(CaseLibrary.load());
    assertThat(rows).hasSizeGreaterThan(1600).doesNotHaveDuplicates();
    for (int group = 1; group <= 16; group++) {
      String prefix = group + "-";
      assertThat(rows).anyMatch(row -> row.row().startsWith(prefix) && !row.cases().isEmpty());
    }
  }
}
