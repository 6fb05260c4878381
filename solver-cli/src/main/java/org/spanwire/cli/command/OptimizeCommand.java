package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanwire.cli.output.OptimizeReport;
import org.spanwire.design.Design;
import org.spanwire.study.Goal;
import org.spanwire.study.Installation;
import org.spanwire.study.OptimizeResult;
import org.spanwire.study.OptimizeStudy;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.ParameterSample;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;
import org.spanwire.unit.UnitException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire optimize}: the best values of parameters. */
@Command(
    name = "optimize",
    description = {
      "Find the values of parameters that make a design best at its worst.",
      "The worst is taken over all bands of the design, from edge to edge, and over all"
          + " installations named by --over. Prints the best designs, ties as ties, where the worst"
          + " case lies, how far each parameter may move, and with two goals the trade-off."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire optimize kit.yaml --vary offset=15%%:45%% --vary span=26m:28m --goal worst-swr",
      "  spanwire optimize kit.yaml --vary offset=15%%:45%% --vary ratio=1,2,4,6 \\",
      "      --over height=6m:15m:4 --goal worst-swr",
      "      one design for sites of different height; ratio must be a parameter of the design",
      "  spanwire optimize kit.yaml --vary offset=15%%:45%% --goal worst-swr --limit choke-watts=20W",
      "  spanwire optimize kit.yaml --vary offset=15%%:45%% --goal worst-swr,gain@30deg",
      "      the trade-off between two goals"
    })
public final class OptimizeCommand implements Runnable {

  private static final String GOALS = "worst-swr, gain, gain@30deg, choke-watts";

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;

  @Option(
      names = "--vary",
      required = true,
      paramLabel = "NAME=VALUES",
      description = "A range FROM:TO, or one of V1,V2,…. Repeatable.")
  private List<String> vary;

  @Option(
      names = "--over",
      paramLabel = "NAME=VALUES",
      description =
          "Installations that the worst is taken over: FROM:TO:COUNT or V1,V2,…. Repeatable: every"
              + " combination.")
  private List<String> over = List.of();

  @Option(
      names = "--goal",
      required = true,
      split = ",",
      paramLabel = "GOAL",
      description =
          "worst-swr, gain (the largest of all directions), gain@30deg (the largest over azimuth"
              + " at an elevation) or choke-watts. Two goals give the trade-off; with weights,"
              + " worst-swr*1,choke-watts*0.05, their sum is made small.")
  private List<String> goals;

  @Option(
      names = "--limit",
      split = ",",
      paramLabel = "GOAL=VALUE",
      description = "What must be kept: choke-watts=20W, gain@30deg=3dBi, worst-swr=3.")
  private List<String> limits = List.of();

  @Option(
      names = "--seed",
      paramLabel = "S",
      description = "Of the local searches; the same seed finds the same. Default 1.")
  private long seed = 1;

  @Override
  public void run() {
    output.check(design.file());
    Design read = design.read();
    OptimizeStudy study = study(read);
    OptimizeResult result =
        ModelOptions.accept(
            read,
            () -> ModelOptions.solve(read, () -> study.run(design.solver(), design.threads())));
    output.write(
        new OptimizeReport(
            read,
            ProgramVersion.number(),
            design.tolerance(),
            study,
            result,
            Installation.of(read).warnings()));
  }

  private OptimizeStudy study(Design read) {
    List<ParameterSample.Range> ranges = new ArrayList<>();
    List<ParameterGrid.Axis> choices = new ArrayList<>();
    for (String text : vary) {
      Variation variation = Variation.parse(text, read);
      if (variation.range() && variation.count() == 0) {
        ranges.add(variation.ends());
      } else {
        choices.add(variation.axis());
      }
    }
    List<ParameterGrid.Axis> axes =
        over.stream().map(text -> Variation.parse("--over", text, read).axis()).toList();
    List<String> names =
        Stream.of(
                ranges.stream().map(ParameterSample.Range::parameter),
                choices.stream().map(ParameterGrid.Axis::parameter),
                axes.stream().map(ParameterGrid.Axis::parameter))
            .flatMap(each -> each)
            .toList();
    if (names.stream().distinct().count() < names.size()) {
      throw new InputException(
          "a parameter is named twice by --vary and --over: "
              + names.stream().sorted().collect(Collectors.joining(", "))
              + "; name each one once");
    }
    return ModelOptions.accept(
        read,
        () ->
            new OptimizeStudy(
                read,
                ranges,
                choices,
                new ParameterGrid(axes),
                goals.stream().map(OptimizeCommand::weighted).toList(),
                limits.stream().map(OptimizeCommand::limit).toList(),
                seed));
  }

  private static OptimizeStudy.Weighted weighted(String text) {
    int star = text.indexOf('*');
    if (star < 0) {
      return new OptimizeStudy.Weighted(goal("--goal", text), OptionalDouble.empty());
    }
    double weight = number("--goal", text, text.substring(star + 1), Dimension.NUMBER);
    if (!(weight > 0)) {
      throw new InputException("--goal " + text + ": the weight must be above 0");
    }
    return new OptimizeStudy.Weighted(
        goal("--goal", text.substring(0, star)), OptionalDouble.of(weight));
  }

  private static OptimizeStudy.Limit limit(String text) {
    int equals = text.indexOf('=');
    if (equals < 1) {
      throw new InputException("--limit " + text + ": write GOAL=VALUE such as choke-watts=20W");
    }
    Goal goal = goal("--limit", text.substring(0, equals));
    Dimension dimension =
        switch (goal.measure()) {
          case WORST_SWR -> Dimension.NUMBER;
          case GAIN -> Dimension.GAIN;
          case CHOKE_WATTS -> Dimension.POWER;
        };
    return new OptimizeStudy.Limit(
        goal, number("--limit", text, text.substring(equals + 1), dimension));
  }

  private static Goal goal(String option, String text) {
    int at = text.indexOf('@');
    String word = at < 0 ? text : text.substring(0, at);
    for (Goal.Measure measure : Goal.Measure.values()) {
      if (measure.label().equals(word) && (at < 0 || measure == Goal.Measure.GAIN)) {
        return at < 0
            ? Goal.of(measure)
            : new Goal(measure, OptionalDouble.of(elevation(option, text, text.substring(at + 1))));
      }
    }
    throw new InputException(option + " " + text + ": is no goal; expected " + GOALS);
  }

  private static double elevation(String option, String text, String angle) {
    try {
      double degrees = Quantity.parse(angle).degrees();
      if (degrees >= 0 && degrees <= 90) {
        return degrees;
      }
    } catch (UnitException e) {
      // Reported below.
    }
    throw new InputException(
        option + " " + text + ": elevation must lie between 0deg and 90deg; write gain@30deg");
  }

  private static double number(String option, String text, String value, Dimension dimension) {
    try {
      return Quantity.parse(value).in(dimension);
    } catch (UnitException e) {
      throw new InputException(option + " " + text + ": " + e.getMessage());
    }
  }
}
