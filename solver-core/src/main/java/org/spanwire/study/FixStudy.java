package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.spanwire.Solver;
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
 * of the choke. Slopes from one solution tell which parameters may help which bands at all. Their
 * crossings, far from where slopes hold, are found on polynomials through solutions and verified by
 * solutions.
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

  /** Largest step of the slopes of solutions over a value. */
  private static final double STEP = 5e-3;

  /** How much farther than at first a parameter may go on moving a reflection coefficient. */
  private static final double SLACK = 3;

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
    private final InstallationFamily antenna;
    private final double[] worst;
    private final double[] worstHz;
    private final List<ParameterSample.Range> ranges = new ArrayList<>();
    private final List<List<BandFixes.Fix>> found = new ArrayList<>();

    Run(Solver solver, int threads) {
      this.solver = solver;
      this.threads = threads;
      Installation installation = Installation.of(design);
      antenna = new InstallationFamily(installation, solver, frequencies(), threads);
      worst = worst(installation);
      worstHz = new double[worst.length];
      for (int band = 0; band < worst.length; band++) {
        found.add(new ArrayList<>());
        for (double f : frequencies(band)) {
          worstHz[band] = swr(installation, f) == worst[band] ? f : worstHz[band];
        }
      }
    }

    private double[] frequencies(int band) {
      return InstallationSet.frequencies(bands.get(band), FREQUENCIES);
    }

    private List<Double> frequencies() {
      return IntStream.range(0, bands.size())
          .boxed()
          .flatMap(band -> Arrays.stream(frequencies(band)).boxed())
          .toList();
    }

    private double swr(Installation chain, double frequencyHz) {
      return Look.swr(
          chain.planes(frequencyHz, antenna.withPorts(frequencyHz).terminals()), Plane.TRANSMITTER);
    }

    /** The largest SWR of every band for the design's antenna behind a chain. */
    private double[] worst(Installation chain) {
      return IntStream.range(0, bands.size())
          .mapToDouble(
              band -> Arrays.stream(frequencies(band)).map(f -> swr(chain, f)).max().orElseThrow())
          .toArray();
    }

    List<BandFixes> result() {
      if (IntStream.range(0, bands.size()).noneMatch(this::isNeedy)) {
        return List.of();
      }
      design.parameters().values().forEach(p -> range(p).ifPresent(ranges::add));
      tryParameters();
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

    /** What a parameter may be changed to. */
    private Optional<ParameterSample.Range> range(Parameter parameter) {
      double value = parameter.value().value();
      double low = value - REACH * Math.abs(value);
      double high = value + REACH * Math.abs(value);
      if (parameter.limits().isPresent()) {
        low = Math.max(low, parameter.limits().get().low().value());
        high = Math.min(high, parameter.limits().get().high().value());
      }
      Dimension dimension = parameter.value().dimension();
      return high > low
          ? Optional.of(
              new ParameterSample.Range(
                  parameter.name(), new Quantity(low, dimension), new Quantity(high, dimension)))
          : Optional.empty();
    }

    private double nominal(ParameterSample.Range range) {
      return design.parameters().get(range.parameter()).value().value();
    }

    private void tryParameters() {
      double[] centre = ranges.stream().mapToDouble(this::nominal).toArray();
      double[] reach = Arrays.stream(centre).map(value -> STEP * Math.abs(value)).toArray();
      Tangent tangent = new Tangent(new ParameterBox(design, ranges), centre, reach, solver);
      int[] needy = IntStream.range(0, bands.size()).filter(this::isNeedy).toArray();
      try (Workers workers = new Workers(threads)) {
        tangent.prepare(Arrays.stream(needy).mapToObj(band -> worstHz[band]).toList(), workers);
      }
      for (int i = 0; i < ranges.size(); i++) {
        int index = i;
        List<Integer> hopeful =
            Arrays.stream(needy).filter(band -> mayDo(tangent, index, band)).boxed().toList();
        if (!hopeful.isEmpty()) {
          tryParameter(tangent, index, hopeful);
        }
      }
    }

    /**
     * Whether the slope lets the whole range, {@link #SLACK} times over, bring the worst frequency
     * of a band to the wanted SWR, measured in the hyperbolic plane.
     */
    private boolean mayDo(Tangent tangent, int parameter, int band) {
      double limit = better(verdict(band)).limit();
      // From the middle, where SWR is 1, it is artanh |Γ| = ½ ln SWR to any place.
      double way = Math.log(worst[band] / limit) / 2;
      ParameterSample.Range range = ranges.get(parameter);
      double at = nominal(range);
      double most = Math.max(range.to().value() - at, at - range.from().value());
      return tangent
          .speed(worstHz[band], parameter)
          .map(speed -> SLACK * speed * most >= way)
          .orElse(true);
    }

    /** Looks for the crossings of the bands that a parameter may help, on polynomials. */
    private void tryParameter(Tangent tangent, int index, List<Integer> hopeful) {
      ParameterBox box = new ParameterBox(design, List.of(ranges.get(index)));
      try {
        PortModel model =
            PortModel.of(
                new PortModel.Request(
                    box,
                    hopeful.stream()
                        .map(bands::get)
                        .map(b -> new FrequencyRange(b.lowHz(), b.highHz()))
                        .toList(),
                    List.of(),
                    ACCURACY,
                    SOLVES_PER_BAND * hopeful.size()),
                solver.withTolerance(Math.max(2e-3, solver.options().tolerance())),
                threads);
        for (int n = 0; n < hopeful.size(); n++) {
          int modelled = n;
          int band = hopeful.get(n);
          DoubleUnaryOperator swr = x -> model.at(x).worstSwr(modelled, Plane.TRANSMITTER);
          double slope =
              tangent
                  .slope((look, f) -> look.swr(0, f, Plane.TRANSMITTER), worstHz[band], index)
                  .orElseGet(() -> slope(swr, nominal(ranges.get(index)), box));
          fix(box, swr, band, slope).ifPresent(found.get(band)::add);
        }
      } catch (GeometryException | DesignException e) {
        // The antenna cannot be built all over the range: no change of this parameter is offered.
        return;
      }
    }

    /** Of a value at its limit, or next to a bend: to one side as well as to the other. */
    private static double slope(DoubleUnaryOperator swr, double at, ParameterBox box) {
      double h = SLOPE_STEP * (box.high(0) - box.low(0));
      return (swr.applyAsDouble(at + h) - swr.applyAsDouble(at - h)) / (2 * h);
    }

    /** The nearest value to either side that does, verified. */
    private Optional<BandFixes.Fix> fix(
        ParameterBox box, DoubleUnaryOperator swr, int band, double slope) {
      Parameter parameter = design.parameters().get(box.ranges().get(0).parameter());
      double from = parameter.value().value();
      double limit = better(verdict(band)).limit();
      List<BandFixes.Fix> fixes = new ArrayList<>();
      for (double end : new double[] {box.low(0), box.high(0)}) {
        crossing(swr, limit, from, end)
            .flatMap(to -> verified(parameter, box, band, to, end, slope))
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
        int band,
        double crossing,
        double end,
        double slope) {
      double limit = better(verdict(band)).limit();
      double step = FURTHER * (end - parameter.value().value());
      double to = crossing;
      for (int n = 0; n < TRIES && (end - to) * step >= 0; n++) {
        double[] then = solved(box.with(to));
        if (then[band] <= limit) {
          return Optional.of(
              new BandFixes.Fix(
                  BandFixes.Part.PARAMETER,
                  parameter.name(),
                  parameter.value(),
                  new Quantity(to, parameter.value().dimension()),
                  then[band],
                  slope,
                  spoilt(then, band)));
        }
        to += step;
      }
      return Optional.empty();
    }

    /** The largest SWR of every band of a changed design. */
    private double[] solved(Design changed) {
      Installation installation = Installation.of(changed);
      InstallationFamily family =
          new InstallationFamily(installation, solver, frequencies(), threads);
      return IntStream.range(0, bands.size())
          .mapToDouble(
              band ->
                  Arrays.stream(frequencies(band))
                      .map(f -> Look.swr(family.at(f).feeds().get(0).planes(), Plane.TRANSMITTER))
                      .max()
                      .orElseThrow())
          .toArray();
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
