package org.spanwire.cli.report;

import java.util.Map;
import java.util.OptionalDouble;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.Hang;
import org.spanwire.geometry.SpanShape;
import org.spanwire.geometry.Wire;
import org.spanwire.practice.SpanMechanics;

/**
 * How the wires hang.
 *
 * @param report what is reported
 */
record MechanicsSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "mechanics";
  }

  @Override
  public String title() {
    return "How it hangs";
  }

  @Override
  public void write(Page page) {
    Map<String, Hang> hangs = report.design().hangs();
    if (hangs.isEmpty()) {
      page.paragraph(
          "The design gives its wires as they lie, without weight and tension: nothing is known of"
              + " sag, pull and breaking margin. State how a wire hangs to have them computed, and its"
              + " sag taken into the antenna.");
      return;
    }
    Page.TableRows rows =
        page.table(
            "In still air, without stretch",
            "wire",
            "span, m",
            "sag, m",
            "lowest, m",
            "largest tension, N",
            "pull at the supports, N",
            "margin to breaking");
    for (Hang hang : hangs.values()) {
      hang.shape().ifPresent(shape -> row(rows, hang, shape));
    }
    page.paragraph(
        "Wind, ice and gusts come on top. Supports, ropes and anchors are for somebody competent to"
            + " judge by local codes.");
  }

  private void row(Page.TableRows rows, Hang hang, SpanShape shape) {
    Wire wire = report.design().antenna().wire(hang.wire()).orElseThrow();
    OptionalDouble margin =
        new SpanMechanics(shape, hang.mechanical(), 2 * wire.conductor().outerRadius())
            .breakingMargin(shape);
    rows.row(
        hang.wire(),
        Numbers.fixed(shape.span().chord(), 2),
        Numbers.fixed(shape.sag(), 2),
        Numbers.fixed(shape.lowest(), 2),
        Numbers.fixed(shape.largestTension(), 0),
        Numbers.fixed(shape.firstTension(), 0) + " and " + Numbers.fixed(shape.lastTension(), 0),
        margin.isPresent() ? Numbers.fixed(margin, 1) : "strength not stated");
  }
}
