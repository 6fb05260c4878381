package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanwire.circuit.CircuitException;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneException;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.MeasuredSwr;
import org.spanwire.design.MeasuredSwrReader;
import org.spanwire.study.Measurement;
import org.spanwire.study.Plane;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;
import org.spanwire.unit.UnitException;
import picocli.CommandLine.Option;

/** What was measured at an installation: a file, or SWR typed on the line. */
final class MeasuredOptions {

  private static final String TYPED = "SWR as typed";

  @Option(
      names = "--measured",
      paramLabel = "FILE",
      description =
          "Touchstone file of one port, or SWR readings as FILE.yaml or FILE.json (see 'spanwire"
              + " schema measured').")
  private Optional<Path> file;

  @Option(
      names = "--swr",
      split = ",",
      paramLabel = "FREQUENCY=SWR",
      description = "SWR readings in place of a file, against the design's reference. Repeatable.")
  private List<String> typed = List.of();

  @Option(
      names = "--swr-error",
      paramLabel = "SHARE",
      converter = Converters.Ratio.class,
      description = "Standard error of readings under --swr, as a share of the SWR; default 5 %%.")
  private Optional<Double> error;

  @Option(
      names = "--plane",
      paramLabel = "PLANE",
      converter = Converters.PlaneLabel.class,
      description =
          "Where it was measured: transmitter (default), transformer-input or feedpoint. Readings"
              + " in YAML or JSON say it themselves.")
  private Optional<Plane> plane;

  /** Refuses to write over what is read. */
  void check(OutputOptions output) {
    file.ifPresent(output::check);
  }

  /** Where it comes from, for outputs. */
  String label() {
    return file.map(Path::toString).orElse(TYPED);
  }

  Measurement read(Design design) {
    if (file.isPresent() == !typed.isEmpty()) {
      throw new InputException(
          file.isPresent()
              ? "--measured and --swr are two measurements; keep one"
              : "nothing measured; add --measured FILE or --swr 7.05MHz=1.8,7.15MHz=2.1");
    }
    if (error.isPresent() && typed.isEmpty()) {
      throw new InputException("--swr-error is for readings under --swr; state it in the file");
    }
    return file.map(this::read).orElseGet(() -> typed(design));
  }

  private Measurement read(Path path) {
    String name = path.toString().toLowerCase(Locale.ROOT);
    if (!name.endsWith(".yaml") && !name.endsWith(".yml") && !name.endsWith(".json")) {
      return touchstone(path);
    }
    if (plane.isPresent()) {
      throw new InputException("--plane: " + path + " says where it was read; correct it there");
    }
    try {
      return Measurement.of(MeasuredSwrReader.read(path));
    } catch (DesignException e) {
      throw new InputException(e.getMessage());
    }
  }

  private Measurement touchstone(Path path) {
    try {
      return Measurement.of(Touchstone.read(path).network(), plane.orElse(Plane.TRANSMITTER));
    } catch (TouchstoneException e) {
      throw new InputException(e.getMessage());
    } catch (CircuitException | IllegalArgumentException e) {
      throw new InputException(path + ": " + e.getMessage());
    }
  }

  private Measurement typed(Design design) {
    double share = error.orElse(MeasuredSwr.USUAL_ERROR);
    List<MeasuredSwr.Reading> readings = new ArrayList<>();
    for (String text : typed) {
      readings.add(reading(text, share));
    }
    return Measurement.of(
        new MeasuredSwr(
            TYPED,
            MeasuredSwr.Plane.valueOf(plane.orElse(Plane.TRANSMITTER).name()),
            design.referenceOhm(),
            Optional.empty(),
            readings));
  }

  private static MeasuredSwr.Reading reading(String text, double error) {
    String[] parts = text.split("=", -1);
    if (parts.length != 2) {
      throw new InputException(
          "--swr " + text + " is no reading; write FREQUENCY=SWR such as 7.1MHz=1.8");
    }
    try {
      return new MeasuredSwr.Reading(
          Quantity.parse(parts[0]).in(Dimension.FREQUENCY),
          Quantity.parse(parts[1]).in(Dimension.NUMBER),
          error);
    } catch (UnitException e) {
      throw new InputException("--swr " + text + ": " + e.getMessage());
    } catch (IllegalArgumentException e) {
      throw new InputException("--swr " + text + ": " + e.getMessage() + "; correct it");
    }
  }
}
