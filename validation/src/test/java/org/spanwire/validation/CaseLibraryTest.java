package org.spanwire.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class CaseLibraryTest {

  private static final String SET =
      """
      {"group": 1, "title": "Dipole", "sets": [{
        "shape": "dipole", "quantity": "input-impedance",
        "parameters": {"radius": 1e-4},
        "reference": {"parameters": {"length": 0.5}},
        "tolerance": {"relative": 0.01, "reason": "because"},
        "source": "somebody 1938", "origin": "integral equation",
        "columns": ["id", "length", "real", "imaginary"],
        "rows": [["1-1", 0.48, 70, -9], ["1-2", 0.49, 75, 18]]}]}
      """;

  @Test
  void everyGroupIsReadAndHoldsCases() {
    List<CaseGroup> groups = CaseLibrary.load();
    assertThat(groups).extracting(CaseGroup::number).contains(1, 2, 3, 6, 7, 8, 10, 11, 12, 13);
    assertThat(groups).allSatisfy(group -> assertThat(group.cases()).isNotEmpty());
  }

  /** A structure that cannot be built would only show when its case runs. */
  @Test
  void everyStructureCanBeBuilt() {
    assertThat(CaseLibrary.load())
        .flatExtracting(CaseGroup::cases)
        .filteredOn(one -> !one.parameters().has("searchFrom"))
        .filteredOn(one -> !one.parameters().has(ThinLimit.PARAMETER))
        .allSatisfy(one -> assertThat(one.structure().antenna()).as(one.id()).isNotNull());
  }

  @Test
  void everyShapeAndEveryQuantityIsAskedFor() {
    List<ValidationCase> cases =
        CaseLibrary.load().stream().flatMap(group -> group.cases().stream()).toList();
    assertThat(cases).extracting(ValidationCase::quantity).contains(Quantity.values());
    assertThat(cases).extracting(one -> one.structure().shape()).contains(Shape.values());
  }

  /** A name with two meanings would turn the structure when only the view should turn. */
  @Test
  void shapesAndQuantitiesShareNoParameterName() {
    for (Shape shape : Shape.values()) {
      assertThat(shape.parameterNames()).doesNotContainAnyElementsOf(Quantity.parameterNames());
    }
  }

  @Test
  void rowsTakeWhatTheirSetShares() {
    List<ValidationCase> cases = parse(SET).cases();
    assertThat(cases).hasSize(2);
    ValidationCase second = cases.get(1);
    assertThat(second.id()).isEqualTo("1-2");
    assertThat(second.expected()).isEqualTo(new Complex(75, 18));
    assertThat(second.parameters().number("length")).isEqualTo(0.49);
    assertThat(second.parameters().number("radius")).isEqualTo(1e-4);
    assertThat(second.reference().parameters().number("length")).isEqualTo(0.5);
    assertThat(second.reference().parameters().number("radius")).isEqualTo(1e-4);
    assertThat(second.origin()).isEqualTo(Origin.INTEGRAL_EQUATION);
  }

  @Test
  void refusesParametersThatNobodyReads() {
    assertThatThrownBy(() -> parse(SET.replace("\"radius\"", "\"radios\"")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("row 1-1")
        .hasMessageContaining("radios");
  }

  @Test
  void refusesToleranceWithoutReason() {
    assertThatThrownBy(() -> parse(SET.replace(", \"reason\": \"because\"", "")))
        .hasMessageContaining("reason");
  }

  @Test
  void refusesRowsOfAnotherLength() {
    assertThatThrownBy(() -> parse(SET.replace("0.49, 75, 18", "0.49, 75")))
        .hasMessageContaining("row 1-2")
        .hasMessageContaining("entries");
  }

  private static CaseGroup parse(String json) {
    try {
      return CaseLibrary.group(new ObjectMapper().readTree(json));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
