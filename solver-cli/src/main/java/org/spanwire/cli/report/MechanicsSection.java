package org.spanwire.cli.report;

import java.util.List;
import org.spanwire.cli.output.CutReport;
import org.spanwire.cli.output.CutText;
import org.spanwire.cli.output.Numbers;
import org.spanwire.practice.SpanState;
import org.spanwire.result.Warning;

/**
 * How the wires hang, in still air and in weather.
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
    report.cut().warnings().stream()
        .filter(MechanicsSection::concerns)
        .map(Warning::message)
        .forEach(page::paragraph);
    List<SpanState> spans = report.cut().spans();
    if (spans.isEmpty()) {
      page.paragraph(
          "The design gives its wires as they lie, without weight and tension: nothing is known of"
              + " sag, pull and breaking margin. State how a wire hangs to have them computed, and its"
              + " sag taken into the antenna.");
      return;
    }
    Page.TableRows rows =
        page.table(
            "Sag, pull and margin in still air and in weather",
            "wire",
            "weather",
            "wind, m/s",
            "ice, mm",
            "change, K",
            "sag, m",
            "swing, m",
            "lowest, m",
            "largest tension, N",
            "pull at a support, N",
            "margin to breaking");
    spans.forEach(span -> row(rows, span));
    page.paragraph(CutText.WEATHER);
  }

  /** Whether a doubt about the cut list is about how the wires hang. */
  static boolean concerns(Warning warning) {
    return warning.name().equals(CutReport.LOW_MARGIN)
        || warning.name().equals(CutReport.NO_MECHANICS);
  }

  private static void row(Page.TableRows rows, SpanState span) {
    rows.row(
        span.wire(),
        span.name(),
        Numbers.significant(span.weather().windSpeed(), 3),
        Numbers.significant(1000 * span.weather().iceThickness(), 3),
        Numbers.significant(span.weather().temperatureChange(), 3),
        Numbers.fixed(span.sag(), 2),
        Numbers.fixed(span.swing(), 2),
        Numbers.fixed(span.lowest(), 2),
        Numbers.fixed(span.largestTension(), 0),
        Numbers.fixed(span.supportPull(), 0),
        span.breakingMargin().isPresent()
            ? Numbers.fixed(span.breakingMargin(), 1)
            : "strength not stated");
  }
}
