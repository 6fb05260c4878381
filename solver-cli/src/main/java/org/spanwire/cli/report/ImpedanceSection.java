package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
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
      page.picture(
          gallery,
          new SmithChart("Impedance, " + curves.band().name(), reference, traces(curves)),
          curves.band().name(),
          "");
    }
    table(page, reference);
  }

  private static List<SmithChart.Trace> traces(BandCurves curves) {
    List<SmithChart.Trace> traces = new ArrayList<>();
    traces.add(inBand(curves, curves.nominal()));
    curves.extremes().forEach(curve -> traces.add(inBand(curves, curve)));
    return traces;
  }

  private static SmithChart.Trace inBand(BandCurves curves, BandCurves.Curve curve) {
    List<Integer> inside =
        IntStream.range(0, curves.frequenciesHz().size())
            .filter(i -> curves.band().contains(curves.frequenciesHz().get(i)))
            .boxed()
            .toList();
    return new SmithChart.Trace(
        inside.stream().map(curves.frequenciesHz()::get).toList(),
        inside.stream().map(curve.feedpoint()::get).toList());
  }

  private void table(Page page, double reference) {
    Page.TableRows rows =
        page.table("Impedance at the feedpoint, ohm", "band", "low edge", "middle", "high edge");
    for (BandCurves curves : report.curves()) {
      SmithChart.Trace trace = inBand(curves, curves.nominal());
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
