package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanwire.cli.chart.FitChart;
import org.spanwire.cli.output.FitReport;
import org.spanwire.design.Design;
import org.spanwire.result.Warning;
import org.spanwire.study.FitResult;
import org.spanwire.study.FitStudy;
import org.spanwire.study.Installation;
import org.spanwire.study.Measurement;
import org.spanwire.study.ParameterSample;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire fit}: what a measurement says of an installation. */
@Command(
    name = "fit",
    description = {
      "Tell from measured reflection coefficients or SWR how an installation differs from its design.",
      "Estimates the named parameters with their errors and correlations, ranks each of them as the"
          + " only cause of the difference, and names the reading that would part the likeliest two"
          + " best. A wire factor is a parameter that the design multiplies its lengths with, stray"
          + " capacitance one that stands under capacitance of the feed. SWR has no phase: more"
          + " causes look alike in it, and the output says which."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire fit kit.yaml --measured hut.s1p --vary height,factor",
      "      measured at the transmitter's end of the line",
      "  spanwire fit kit.yaml --measured mast.s1p --plane feedpoint --vary height=5m:12m",
      "      measured at the feedpoint; a range to look in",
      "  spanwire fit kit.yaml --measured hut-swr.yaml --vary height,factor",
      "      SWR readings, with their errors, the place and the line they were read through",
      "  spanwire fit kit.yaml --swr 3.5MHz=2.9,3.65MHz=1.7,3.8MHz=2.4,7.1MHz=1.6 --vary height,factor",
      "      the same typed, read at the transmitter",
      "  spanwire fit kit.yaml --measured hut.s1p --vary height --plot hut.png",
      "      with readings, design and estimates as curves"
    })
public final class FitCommand implements Runnable {

  private static final double NOT_PARTED = 0.95;

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;
  @Mixin private MeasuredOptions measured;
  @Mixin private PlotOptions plot;

  @Option(
      names = "--vary",
      required = true,
      split = ",",
      paramLabel = "NAME[=FROM:TO]",
      description =
          "Parameters to estimate, and where to look: within their limits, else three spreads to"
              + " either side, else 20 %% to either side. Repeatable.")
  private List<String> vary;

  @Override
  public void run() {
    output.check(design.file());
    plot.check(design.file(), output);
    measured.check(output);
    Design read = design.read();
    Measurement measurement = measured.read(read);
    FitStudy study = study(read, measurement);
    FitResult result =
        ModelOptions.accept(
            read,
            () -> ModelOptions.solve(read, () -> study.run(design.solver(), design.threads())));
    output.write(
        new FitReport(
            read,
            ProgramVersion.number(),
            design.tolerance(),
            measured.label(),
            measurement,
            result,
            doubts(read, result)));
    plot.write(read.title(), () -> List.of(new FitChart(result.comparisons())));
  }

  private FitStudy study(Design read, Measurement measurement) {
    List<ParameterSample.Range> ranges = new ArrayList<>();
    for (String text : vary) {
      Variation variation =
          Variation.parse(text.contains("=") ? text : text + "=" + value(read, text), read);
      try {
        ranges.add(text.contains("=") ? stated(variation) : FitStudy.range(variation.parameter()));
      } catch (IllegalArgumentException e) {
        throw new InputException("--vary " + text + ": " + e.getMessage());
      }
    }
    if (ranges.stream().map(ParameterSample.Range::parameter).distinct().count() < ranges.size()) {
      throw new InputException("--vary names a parameter twice; name each one once");
    }
    try {
      return new FitStudy(read, ranges, measurement);
    } catch (IllegalArgumentException e) {
      throw new InputException(measured.label() + ": " + e.getMessage());
    }
  }

  private static ParameterSample.Range stated(Variation variation) {
    ParameterSample.Range ends = variation.ends();
    return FitStudy.range(variation.parameter(), ends.from(), ends.to());
  }

  /** The nominal value, so that an unknown name is reported as everywhere. */
  private static String value(Design read, String name) {
    return read.parameters().containsKey(name)
        ? read.parameters().get(name).value().value()
            + read.parameters().get(name).value().dimension().symbol()
        : "0";
  }

  private static List<Warning> doubts(Design read, FitResult result) {
    List<Warning> doubts = new ArrayList<>(Installation.of(read).warnings());
    double[][] correlations = result.correlations();
    for (int i = 0; i < correlations.length; i++) {
      for (int j = 0; j < i; j++) {
        if (Math.abs(correlations[i][j]) > NOT_PARTED || Double.isNaN(correlations[i][j])) {
          doubts.add(
              new Warning(
                  "not-parted",
                  String.format(
                      Locale.ROOT,
                      "the readings hardly tell %s from %s (correlation %.3f): measure on another"
                          + " band too, or vary one of them alone",
                      result.estimates().get(j).parameter(),
                      result.estimates().get(i).parameter(),
                      correlations[i][j])));
        }
      }
    }
    for (FitResult.Estimate estimate : result.estimates()) {
      if (estimate.atBound()) {
        doubts.add(
            new Warning(
                "at-bound",
                estimate.parameter()
                    + " lies at the end of the range that was looked at; widen it, or vary another"
                    + " parameter too"));
      }
    }
    return doubts;
  }
}
