package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanwire.circuit.CircuitException;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneException;
import org.spanwire.cli.output.FitReport;
import org.spanwire.design.Design;
import org.spanwire.result.Warning;
import org.spanwire.study.FitResult;
import org.spanwire.study.FitStudy;
import org.spanwire.study.Installation;
import org.spanwire.study.ParameterSample;
import org.spanwire.study.Plane;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire fit}: what a measurement says of an installation. */
@Command(
    name = "fit",
    description = {
      "Tell from a measured reflection coefficient how an installation differs from its design.",
      "Estimates the named parameters with their errors and correlations, ranks each of them as the"
          + " only cause of the difference, and names the reading that would part the likeliest two"
          + " best. A wire factor is a parameter that the design multiplies its lengths with."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire fit kit.yaml --measured hut.s1p --vary height,factor",
      "      measured at the transmitter's end of the line",
      "  spanwire fit kit.yaml --measured mast.s1p --plane feedpoint --vary height=5m:12m",
      "      measured at the feedpoint; a range to look in"
    })
public final class FitCommand implements Runnable {

  private static final double NOT_PARTED = 0.95;

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;

  @Option(
      names = "--measured",
      required = true,
      paramLabel = "FILE",
      description = "Touchstone file of one port.")
  private Path measured;

  @Option(
      names = "--vary",
      required = true,
      split = ",",
      paramLabel = "NAME[=FROM:TO]",
      description =
          "Parameters to estimate, and where to look: within their limits, else three spreads to"
              + " either side, else 20 %% to either side. Repeatable.")
  private List<String> vary;

  @Option(
      names = "--plane",
      paramLabel = "PLANE",
      defaultValue = "transmitter",
      converter = Converters.PlaneLabel.class,
      description = "Where it was measured: transmitter (default), transformer-input or feedpoint.")
  private Plane plane;

  @Override
  public void run() {
    output.check(design.file());
    output.check(measured);
    Design read = design.read();
    FitStudy study = study(read);
    FitResult result =
        ModelOptions.accept(
            read,
            () -> ModelOptions.solve(read, () -> study.run(design.solver(), design.threads())));
    output.write(
        new FitReport(
            read,
            ProgramVersion.number(),
            design.tolerance(),
            measured.toString(),
            plane,
            result,
            doubts(read, result)));
  }

  private FitStudy study(Design read) {
    NetworkData data = data();
    List<ParameterSample.Range> ranges = new ArrayList<>();
    for (String text : vary) {
      Variation variation =
          Variation.parse(text.contains("=") ? text : text + "=" + value(read, text), read);
      try {
        ranges.add(text.contains("=") ? variation.ends() : FitStudy.range(variation.parameter()));
      } catch (IllegalArgumentException e) {
        throw new InputException("--vary " + text + ": " + e.getMessage());
      }
    }
    if (ranges.stream().map(ParameterSample.Range::parameter).distinct().count() < ranges.size()) {
      throw new InputException("--vary names a parameter twice; name each one once");
    }
    try {
      return new FitStudy(read, ranges, data, plane);
    } catch (IllegalArgumentException e) {
      throw new InputException(measured + ": " + e.getMessage());
    }
  }

  /** The nominal value, so that an unknown name is reported as everywhere. */
  private static String value(Design read, String name) {
    return read.parameters().containsKey(name)
        ? read.parameters().get(name).value().value()
            + read.parameters().get(name).value().dimension().symbol()
        : "0";
  }

  private NetworkData data() {
    try {
      return Touchstone.read(measured).network();
    } catch (TouchstoneException e) {
      throw new InputException(e.getMessage());
    } catch (CircuitException | IllegalArgumentException e) {
      throw new InputException(measured + ": " + e.getMessage());
    }
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
