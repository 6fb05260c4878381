package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.cli.output.ExposureReport;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.Design;
import org.spanwire.design.ExposureLimit;
import org.spanwire.design.ExposureRules;
import org.spanwire.study.BandExposure;
import org.spanwire.study.ExposureStudy;
import org.spanwire.study.Installation;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire exposure}: how far people must keep away. */
@Command(
    name = "exposure",
    description = {
      "How far people must keep away from the antenna and its feed line, band by band.",
      "Electric and magnetic near fields where people can be, 0.5 m to 2 m above a floor all around"
          + " every conductor, against limits of exposure. An estimate, and no certificate.",
      "What is judged by can be stated in the design under exposure: {limits: [icnirp-2020-public],"
          + " mode: ssb, transmitting: 50 %%, floors: [0 m, 3 m]}; options go first."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire exposure kit.yaml",
      "      for everybody, a carrier without pause",
      "  spanwire exposure kit.yaml --mode ssb --transmitting 50%%",
      "      speech, half of the time",
      "  spanwire exposure kit.yaml --floors 0m,5m --limits icnirp-2020-public,fcc-public",
      "      at a window of the upper floor too"
    })
public final class ExposureCommand implements Runnable {

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;

  @Option(
      names = "--limits",
      paramLabel = "NAME",
      split = ",",
      converter = Converters.Limit.class,
      description =
          "Limits to judge by: icnirp-1998-public, icnirp-2020-public, fcc-public, icnirp-2010-public,"
              + " the same with -occupational, icnirp-2020-public-local, eu-2013-35-worker, …;"
              + " default: those for everybody.")
  private List<ExposureLimit> limits = new ArrayList<>();

  @Option(
      names = "--mode",
      paramLabel = "MODE",
      converter = Converters.Mode.class,
      description =
          "ssb, ssb-processed, cw, fm, data or carrier: average over peak power; default carrier.")
  private Optional<OperatingMode> mode;

  @Option(
      names = "--transmitting",
      paramLabel = "SHARE",
      converter = Converters.Ratio.class,
      description = "Share of the averaging time that is transmitted; default 100%%.")
  private Optional<Double> transmitting;

  @Option(
      names = "--floors",
      paramLabel = "H",
      split = ",",
      converter = Converters.Length.class,
      description = "Heights of the floors that people stand on; default 0m,3m.")
  private List<Double> floors = new ArrayList<>();

  @Override
  public void run() {
    output.check(design.file());
    checkOptions();
    Design read = design.read();
    if (read.bands().isEmpty()) {
      throw new InputException(
          read.source() + ": names no bands; add bands: {plan: iaru-region-1, use: [40 m, 20 m]}");
    }
    output.write(report(read, rules(read.exposureRules().orElse(ExposureRules.STRICT)), design));
  }

  /** Exposure over all bands of a design. */
  static ExposureReport report(Design read, ExposureRules rules, ModelOptions options) {
    ExposureStudy study = new ExposureStudy(read, rules);
    List<BandExposure> bands =
        ModelOptions.solve(
            read, () -> study.run(options.solver(), read.bands(), options.threads()));
    Installation installation = ModelOptions.solve(read, () -> Installation.of(read));
    return new ExposureReport(
        options.conditions(
            read,
            bands.get(0).gapsMetres(),
            bands.stream().map(BandExposure::largestRelativeError).toList()),
        rules,
        installation.powerWatts(),
        bands,
        installation.warnings());
  }

  private void checkOptions() {
    if (transmitting.isPresent() && !(transmitting.get() > 0 && transmitting.get() <= 1)) {
      throw new InputException(
          "--transmitting: "
              + Numbers.significant(100 * transmitting.get(), 4)
              + "% must be more than 0% and at most 100%; write a share such as 50%");
    }
    if (floors.stream().anyMatch(floor -> floor < 0)) {
      throw new InputException(
          "--floors: must not lie below the ground; write heights such as 0m,3m");
    }
  }

  private ExposureRules rules(ExposureRules stated) {
    try {
      return new ExposureRules(
          limits.isEmpty() ? stated.limits() : limits,
          mode.orElse(stated.mode()),
          transmitting.orElse(stated.transmitting()),
          floors.isEmpty() ? stated.floors() : floors);
    } catch (IllegalArgumentException e) {
      throw new InputException(e.getMessage());
    }
  }
}
