package org.spanwire.cli.report;

import org.apache.commons.math3.complex.Complex;
import org.jsoup.nodes.Element;
import org.spanwire.circuit.Mismatch;
import org.spanwire.cli.chart.SmithChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.BandCurves;

/**
 * Impedance at the feedpoint.
 *
 * @param report what is reported
 */
record ImpedanceSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "impedance";
  }

  @Override
  public String title() {
    return "Impedance at the feedpoint";
  }

  @Override
  public void write(Page page) {
    double reference = report.design().feedpointReferenceOhm();
    page.paragraph(
        "Smith charts with "
            + Numbers.significant(reference, 6)
            + " ohm at the centre, resistance and reactance in ohms. The curve runs over the band,"
            + " from the open to the filled dot; thin grey curves are the ends of the spreads."
            + " Dashed circles: SWR 2 and 3 at the feedpoint.");
    Element gallery = page.gallery();
    for (BandCurves curves : report.curves()) {
      page.picture(gallery, SmithChart.of(curves, reference), curves.band().name(), "");
    }
    table(page, reference);
  }

  private void table(Page page, double reference) {
    Page.TableRows rows =
        page.table("Impedance at the feedpoint, ohm", "band", "low edge", "middle", "high edge");
    for (BandCurves curves : report.curves()) {
      SmithChart.Trace trace = SmithChart.of(curves, reference).traces().get(0);
      int last = trace.reflections().size() - 1;
      rows.bandRow(
          curves.band().name(),
          ohms(trace.reflections().get(0), reference),
          ohms(trace.reflections().get(last / 2), reference),
          ohms(trace.reflections().get(last), reference));
    }
  }

  private static String ohms(Complex reflection, double reference) {
    return Numbers.rectangular(Mismatch.ofReflection(reflection, reference).impedance());
  }
}
