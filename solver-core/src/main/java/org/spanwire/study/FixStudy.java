package org.spanwire.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.spanwire.Solver;
import org.spanwire.circuit.NPort;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.Parameter;
import org.spanwire.design.Stage;
import org.spanwire.geometry.GeometryException;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/**
 * Looks for the smallest single change that gives a band the next better verdict: of each parameter
 * of the design within its limits and 15 % of its value, of the ratio of an ideal transformer, and
 * of the choke. What is found on polynomials through solutions is verified by solutions.
 *
 * @param design with at least one band
 */
public record FixStudy(Design design) {

  private static final double REACH = 0.15;
  private static final double ACCURACY = 1e-2;
  private static final int SOLVES_PER_BAND = 50;
  private static final int STEPS = 60;
  private static final int FREQUENCIES = 5;
  private static final int TRIES = 6;
  private static final double FURTHER = 0.005;
  private static final double SLOPE_STEP = 1e-3;
  private static final int MOST_FIXES = 3;
  private static final List<Double> RATIOS =
      List.of(1.0, 1.5, 2.0, 2.25, 3.0, 4.0, 5.0, 6.0, 8.0, 9.0, 12.0, 16.0);
  private static final List<Double> CHOKE_FACTORS = List.of(2.0, 4.0, 0.5, 0.25);

  /**
   * Runs the study on several threads; the result does not depend on their number.
   *
   * @return the bands that need a tuner or more, in the order of the design
   */
  public List<BandFixes> run(Solver solver, int threads) {
    return new Run(solver, threads).result();
  }

  private static Verdict better(Verdict verdict) {
    return Verdict.values()[verdict.ordinal() - 1];
  }

  private final class Run {
    private final Solver solver;
    private final int threads;
    private final List<Band> bands = design.bands();
    private final List<List<NPort>> terminals = new ArrayList<>();
    private final double[] worst;
    private final List<List<BandFixes.Fix>> found = new ArrayList<>();

    Run(Solver solver, int threads) {
      this.solver = solver;
      this.threads = threads;
      Installation installation = Installation.of(design);
      try (Workers workers = new Workers(threads)) {
        for (Band band : bands) {
          List<Callable<NPort>> tasks = new ArrayList<>();
          for (double f : InstallationSet.frequencies(band, FREQUENCIES)) {
            tasks.add(() -> installation.solveWithPorts(solver, f).terminals());
          }
          terminals.add(workers.run(tasks));
          found.add(new ArrayList<>());
        }
      }
      worst = worst(installation);
    }

    /** The largest SWR of every band for the design's antenna behind a chain. */
    private double[] worst(Installation chain) {
      double[] worst = new double[bands.size()];
      for (int band = 0; band < worst.length; band++) {
        double[] frequencies = InstallationSet.frequencies(bands.get(band), FREQUENCIES);
        for (int i = 0; i < frequencies.length; i++) {
          double swr =
              Look.swr(chain.planes(frequencies[i], terminals.get(band).get(i)), Plane.TRANSMITTER);
          worst[band] = Math.max(worst[band], swr);
        }
      }
      return worst;
    }

    List<BandFixes> result() {
      if (IntStream.range(0, bands.size()).noneMatch(this::isNeedy)) {
        return List.of();
      }
      design.parameters().values().forEach(this::tryParameter);
      tryRatios();
      tryChokes();
      List<BandFixes> result = new ArrayList<>();
      for (int band = 0; band < bands.size(); band++) {
        if (isNeedy(band)) {
          result.add(
              new BandFixes(
                  bands.get(band).name(),
                  worst[band],
                  verdict(band),
                  better(verdict(band)),
                  found.get(band).stream()
                      .sorted(Comparator.comparingDouble(BandFixes.Fix::cost))
                      .limit(MOST_FIXES)
                      .toList()));
        }
      }
      return result;
    }

    private Verdict verdict(int band) {
      return Verdict.of(worst[band]);
    }

    private boolean isNeedy(int band) {
      return verdict(band) != Verdict.DIRECT;
    }

    private List<String> spoilt(double[] then, int except) {
      return IntStream.range(0, bands.size())
          .filter(i -> i != except && Verdict.of(then[i]).compareTo(verdict(i)) > 0)
          .mapToObj(i -> bands.get(i).name())
          .toList();
    }

    private void tryParameter(Parameter parameter) {
      double value = parameter.value().value();
      double low = value - REACH * Math.abs(value);
      double high = value + REACH * Math.abs(value);
      if (parameter.limits().isPresent()) {
        low = Math.max(low, parameter.limits().get().low().value());
        high = Math.min(high, parameter.limits().get().high().value());
      }
      if (!(high > low)) {
        return;
      }
      Dimension dimension = parameter.value().dimension();
      ParameterBox box =
          new ParameterBox(
              design,
              List.of(
                  new ParameterSample.Range(
                      parameter.name(),
                      new Quantity(low, dimension),
                      new Quantity(high, dimension))));
      try {
        double frequency = bands.get(0).lowHz();
        if (box.ofAntenna(frequency).isEmpty() && box.ofChain(frequency).isEmpty()) {
          return;
        }
        PortModel model =
            PortModel.of(
                new PortModel.Request(
                    box,
                    bands.stream().map(b -> new FrequencyRange(b.lowHz(), b.highHz())).toList(),
                    List.of(),
                    ACCURACY,
                    SOLVES_PER_BAND * bands.size()),
                solver.withTolerance(Math.max(2e-3, solver.options().tolerance())),
                threads);
        for (int band = 0; band < bands.size(); band++) {
          if (isNeedy(band)) {
            fix(parameter, box, model, band).ifPresent(found.get(band)::add);
          }
        }
      } catch (GeometryException | DesignException e) {
        // The antenna cannot be built all over the range: no change of this parameter is offered.
        return;
      }
    }

    /** The nearest value to either side that does, verified. */
    private Optional<BandFixes.Fix> fix(
        Parameter parameter, ParameterBox box, PortModel model, int band) {
      double from = parameter.value().value();
      DoubleUnaryOperator swr = x -> model.at(x).worstSwr(band, Plane.TRANSMITTER);
      double limit = better(verdict(band)).limit();
      List<BandFixes.Fix> fixes = new ArrayList<>();
      for (double end : new double[] {box.low(0), box.high(0)}) {
        crossing(swr, limit, from, end)
            .flatMap(to -> verified(parameter, box, model, band, to, end, swr))
            .ifPresent(fixes::add);
      }
      return fixes.stream().min(Comparator.comparingDouble(BandFixes.Fix::cost));
    }

    private static Optional<Double> crossing(
        DoubleUnaryOperator swr, double limit, double from, double end) {
      for (int i = 1; i <= STEPS; i++) {
        double to = from + (end - from) * i / STEPS;
        if (swr.applyAsDouble(to) <= limit) {
          double outside = from + (end - from) * (i - 1) / STEPS;
          double inside = to;
          for (int n = 0; n < 20; n++) {
            double middle = (outside + inside) / 2;
            if (swr.applyAsDouble(middle) <= limit) {
              inside = middle;
            } else {
              outside = middle;
            }
          }
          return Optional.of(inside);
        }
      }
      return Optional.empty();
    }

    private Optional<BandFixes.Fix> verified(
        Parameter parameter,
        ParameterBox box,
        PortModel model,
        int band,
        double crossing,
        double end,
        DoubleUnaryOperator swr) {
      double limit = better(verdict(band)).limit();
      double from = parameter.value().value();
      double step = FURTHER * (end - from);
      double to = crossing;
      for (int n = 0; n < TRIES && (end - to) * step >= 0; n++) {
        double solved = solved(box.with(to), band);
        if (solved <= limit) {
          double place = to;
          double[] then =
              IntStream.range(0, bands.size())
                  .mapToDouble(i -> model.at(place).worstSwr(i, Plane.TRANSMITTER))
                  .toArray();
          double h = SLOPE_STEP * (box.high(0) - box.low(0));
          double slope = (swr.applyAsDouble(from + h) - swr.applyAsDouble(from - h)) / (2 * h);
          return Optional.of(
              new BandFixes.Fix(
                  BandFixes.Part.PARAMETER,
                  parameter.name(),
                  parameter.value(),
                  new Quantity(to, parameter.value().dimension()),
                  solved,
                  slope,
                  spoilt(then, band)));
        }
        to += step;
      }
      return Optional.empty();
    }

    private double solved(Design changed, int band) {
      Installation installation = Installation.of(changed);
      double worst = 1;
      for (double f : InstallationSet.frequencies(bands.get(band), FREQUENCIES)) {
        Operation operation = installation.solve(solver, f);
        worst = Math.max(worst, Look.swr(operation.feeds().get(0).planes(), Plane.TRANSMITTER));
      }
      return worst;
    }

    private void tryRatios() {
      List<Stage.Transformer> transformers =
          design.feedChain().stream()
              .filter(Stage.Transformer.class::isInstance)
              .map(Stage.Transformer.class::cast)
              .toList();
      if (transformers.size() != 1 || !transformers.get(0).isIdeal()) {
        return;
      }
      Stage.Transformer now = transformers.get(0);
      List<Double> nearest =
          RATIOS.stream()
              .filter(ratio -> ratio != now.ratio())
              .sorted(Comparator.comparingDouble(r -> Math.abs(Math.log(r / now.ratio()))))
              .toList();
      for (double ratio : nearest) {
        Stage.Transformer other =
            new Stage.Transformer(ratio, now.touchstone(), now.wound(), now.output());
        double[] then = worst(Installation.withStages(design, replaced(now, other)));
        add(BandFixes.Part.RATIO, "transformer ratio", now.ratio(), ratio, then);
      }
    }

    private void tryChokes() {
      List<Stage> chokes =
          design.feedChain().stream().filter(Stage.Choke.class::isInstance).toList();
      if (chokes.size() != 1 || design.feedLine().isEmpty()) {
        return;
      }
      Stage.Choke now = (Stage.Choke) chokes.get(0);
      for (double factor : CHOKE_FACTORS) {
        Stage.Choke other = new Stage.Choke(f -> now.impedance().at(f).multiply(factor));
        double[] then = worst(Installation.withStages(design, replaced(now, other)));
        add(BandFixes.Part.CHOKE, "choke impedance", 1, factor, then);
      }
    }

    private List<Stage> replaced(Stage now, Stage other) {
      return design.feedChain().stream().map(stage -> stage == now ? other : stage).toList();
    }

    /** The first of its kind that does is taken: they come nearest first. */
    private void add(BandFixes.Part part, String name, double from, double to, double[] then) {
      for (int band = 0; band < bands.size(); band++) {
        if (isNeedy(band)
            && then[band] <= better(verdict(band)).limit()
            && found.get(band).stream().noneMatch(fix -> fix.part() == part)) {
          found
              .get(band)
              .add(
                  new BandFixes.Fix(
                      part,
                      name,
                      new Quantity(from, Dimension.NUMBER),
                      new Quantity(to, Dimension.NUMBER),
                      then[band],
                      0,
                      spoilt(then, band)));
        }
      }
    }
  }
}
