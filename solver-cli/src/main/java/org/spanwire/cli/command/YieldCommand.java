package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.cli.chart.Chart;
import org.spanwire.cli.chart.EnvelopeChart;
import org.spanwire.cli.output.YieldReport;
import org.spanwire.design.Design;
import org.spanwire.result.Warning;
import org.spanwire.study.Installation;
import org.spanwire.study.YieldResult;
import org.spanwire.study.YieldStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire yield}: how many installations do, given the spreads. */
@Command(
    name = "yield",
    description = {
      "Tell how many installations meet what is required of them.",
      "Draws installations from the spreads of the design's parameters and judges each by the"
          + " design's requirements; without any, by SWR of at most 2 and 3 over every band. Prints"
          + " the share that does with its 95 %% confidence interval, what the slopes alone would"
          + " say, which parameters dominate, and the SWR that 10, 50 and 90 %% stay below.",
      "Whatever is a parameter can carry a spread: lengths, a wire factor, height, soil, the"
          + " transformer's ratio."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire yield kit.yaml",
      "      with parameters such as height: {value: 9 m, spread: 2 m}",
      "  spanwire yield kit.yaml --samples 20000 --seed 7",
      "      a larger sample, another draw",
      "  spanwire yield kit.yaml --format csv --output kit-yield.csv",
      "      one row per requirement for a spreadsheet",
      "  spanwire yield kit.yaml --plot kit-yield.png",
      "      with a picture of the SWR that 10, 50 and 90 %% of the installations stay below"
    })
public final class YieldCommand implements Runnable {

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;
  @Mixin private PlotOptions plot;

  @Option(
      names = "--samples",
      paramLabel = "N",
      description = "Number of installations drawn, 1 to 1000000; default 1000.")
  private int samples = 1000;

  @Option(
      names = "--seed",
      paramLabel = "S",
      description = "Draws another sample; the same seed always draws the same. Default 1.")
  private long seed = 1;

  @Option(
      names = "--accuracy",
      paramLabel = "A",
      converter = Converters.Ratio.class,
      description =
          "Wanted error of the reflection coefficient of the polynomial that installations are"
              + " judged on; default 0.003.")
  private double accuracy = YieldStudy.DEFAULT_ACCURACY;

  @Override
  public void run() {
    output.check(design.file());
    plot.check(design.file(), output);
    Design read = design.read();
    if (plot.wanted() && read.bands().isEmpty()) {
      throw new InputException(
          "--plot: draws SWR over bands, and the design names none; add bands");
    }
    YieldStudy study = study(read);
    YieldResult result =
        ModelOptions.solve(read, () -> study.run(design.solver(), design.threads()));
    output.write(
        new YieldReport(
            read,
            ProgramVersion.number(),
            design.tolerance(),
            seed,
            accuracy,
            result,
            doubts(read, result)));
    plot.write(
        read.title(), () -> result.envelopes().stream().<Chart>map(EnvelopeChart::new).toList());
  }

  private YieldStudy study(Design read) {
    return ModelOptions.accept(read, () -> new YieldStudy(read, samples, seed, accuracy));
  }

  private List<Warning> doubts(Design read, YieldResult result) {
    List<Warning> doubts = new ArrayList<>(Installation.of(read).warnings());
    if (result.modelError() > accuracy) {
      doubts.add(
          new Warning(
              "model-error",
              String.format(
                  "reflection coefficients are known to %.2g, wanted %.2g: narrow the spreads or ask"
                      + " for a larger --accuracy",
                  result.modelError(), accuracy)));
    }
    return doubts;
  }
}
