package org.spanwire.cli.output;

import java.util.List;
import java.util.OptionalDouble;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.design.Requirement;
import org.spanwire.result.Warning;
import org.spanwire.study.CheckedRequirement;
import org.spanwire.study.CheckedRequirement.Outcome;
import org.spanwire.study.CheckedRequirement.Quantity;

/** Designs and outcomes of a check as if they had been solved. */
final class MadeUpCheck {

  static final Requirement.InBand IN_40_M = new Requirement.InBand(new Band("40 m", 7.0e6, 7.2e6));

  static final Requirement.AtFrequency AT_7_1_MHZ = new Requirement.AtFrequency(7.1e6);

  static final Requirement SWR =
      new Requirement.MaximumSwr(AT_7_1_MHZ, 2, Requirement.Plane.TRANSMITTER);

  static final Requirement EFFICIENCY = new Requirement.MinimumEfficiency(IN_40_M, 0.95);

  static final Requirement DISTANCE = new Requirement.MaximumExposureDistance(IN_40_M, 0.5);

  static final Requirement YIELD = new Requirement.MinimumYield(0.9);

  static final Warning DOUBT = new Warning("made-up", "made up; no remedy");

  private MadeUpCheck() {}

  static Design design(String title, String file) {
    return DesignReader.read(
        """
        format: spanwire-design/1
        title: TITLE
        conductors: {strand: {material: copper, diameter: 2 mm}}
        wires: {radiator: {conductor: strand, path: [[0, 0, 10], [20, 0, 10]]}}
        feeds: {main: {wire: radiator, at: 50 %}}
        ground: perfect
        """
            .replace("TITLE", title),
        file);
  }

  /** Without numerical error, at the design's frequency. */
  static CheckedRequirement exact(
      Requirement requirement, Quantity quantity, double limit, double found) {
    return within(requirement, quantity, limit, found, found, found);
  }

  /** Found with values that the numerical errors allow. */
  static CheckedRequirement within(
      Requirement requirement,
      Quantity quantity,
      double limit,
      double found,
      double low,
      double high) {
    return new CheckedRequirement(
        requirement,
        Outcome.MET,
        quantity,
        limit,
        found,
        low,
        high,
        OptionalDouble.of(7.1e6),
        0.001,
        "",
        List.of());
  }

  static CheckedRequirement keptSwr() {
    return within(SWR, Quantity.SWR_TRANSMITTER, 2, 1.5, 1.4375, 1.75);
  }

  /** An efficiency of 87.5 % where 95 % were promised. */
  static CheckedRequirement failedEfficiency(Warning... warnings) {
    return new CheckedRequirement(
        EFFICIENCY,
        Outcome.FAILED,
        Quantity.EFFICIENCY,
        0.95,
        0.875,
        0.84375,
        0.890625,
        OptionalDouble.of(7.2e6),
        0.001,
        "the largest loss is in soil",
        List.of(warnings));
  }

  /** An open feedpoint, whose SWR nobody can tell. */
  static CheckedRequirement open() {
    double infinite = Double.POSITIVE_INFINITY;
    return new CheckedRequirement(
        SWR,
        Outcome.FAILED,
        Quantity.SWR_TRANSMITTER,
        2,
        infinite,
        infinite,
        infinite,
        OptionalDouble.of(7.1e6),
        0.001,
        "the feedpoint is open at 7.1000 MHz",
        List.of());
  }

  /** A yield that 20,000 installations did not settle. */
  static CheckedRequirement undecidedYield() {
    return new CheckedRequirement(
        YIELD,
        Outcome.UNDECIDED,
        Quantity.YIELD,
        0.9,
        0.90625,
        0.890625,
        0.921875,
        OptionalDouble.empty(),
        0.0001,
        "the limit lies within the numerical error",
        List.of());
  }
}
