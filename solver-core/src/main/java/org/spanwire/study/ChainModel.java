package org.spanwire.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Attenuator;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.FeedChain;
import org.spanwire.circuit.Ladder;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.Network;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.Transformer;
import org.spanwire.circuit.Winding;
import org.spanwire.design.Design;
import org.spanwire.design.Stage;
import org.spanwire.geometry.LumpedImpedance;

/**
 * The stages of a design as a circuit from the transmitter to the feedpoint. A choke acts on the
 * common mode alone and so has no place among the 2-ports.
 *
 * @param chain 2-ports from the transmitter
 * @param feedpointOhm reference of SWR at the feedpoint
 * @param transmitter number of tuners beside the transmitter: SWR there is that before any tuner
 * @param transformerInput number of stages before the transformer nearest to the feedpoint
 * @param choke sum of all chokes' impedances
 * @param terminals with a feed line: what lies between the chain and the two terminals, ports as in
 *     {@link Terminals}
 * @param lossless whether the terminals are an ideal tie, so that the chain ends at the feedpoint
 */
record ChainModel(
    FeedChain chain,
    double feedpointOhm,
    int transmitter,
    Optional<Integer> transformerInput,
    List<Stage.Choke> choke,
    Network terminals,
    boolean lossless) {

  /** Name of a transformer among the stages; a second one is numbered. */
  static final String TRANSFORMER = "transformer";

  /**
   * The model of a feed chain.
   *
   * @param chain its stages, the design's or the like
   * @param route whether the outside of the line is a conductor of the antenna
   */
  static ChainModel of(Design design, List<Stage> chain, boolean route) {
    List<Stage> towardsAntenna = new ArrayList<>(chain);
    Collections.reverse(towardsAntenna);
    int top = route ? topTransformer(towardsAntenna) : -1;
    List<FeedChain.Stage> stages = new ArrayList<>();
    List<Stage.Choke> chokes = new ArrayList<>();
    Map<String, Integer> used = new HashMap<>();
    Optional<Integer> input = Optional.empty();
    Network terminals = Terminals.tie(Stage.Output.UNBALANCED, design.referenceOhm());
    boolean lossless = true;
    double reference = design.referenceOhm();
    for (int i = 0; i < towardsAntenna.size(); i++) {
      Stage stage = towardsAntenna.get(i);
      if (stage instanceof Stage.Choke choke) {
        chokes.add(choke);
      } else if (stage instanceof Stage.Transformer transformer) {
        input = Optional.of(stages.size());
        Real real = Real.of(transformer);
        double near = reference;
        reference *= transformer.ratio();
        if (i == top && real.threeTerminals()) {
          terminals = real.network().orElseThrow();
          lossless = false;
          continue;
        }
        if (i == top) {
          terminals = Terminals.tie(transformer.output(), reference);
        }
        Network network =
            real.network()
                .map(Transformer::floating)
                .orElseGet(() -> Transformer.ideal(transformer.ratio(), near));
        stages.add(FeedChain.Stage.of(name(stage, used), network, reference));
      } else {
        stages.add(between(stage, name(stage, used), reference));
      }
    }
    FeedChain.Source source =
        new FeedChain.Source(
            design.powerWatts().orElse(Installation.ASSUMED_POWER), design.referenceOhm());
    int tuners = (int) towardsAntenna.stream().takeWhile(Stage.Tuner.class::isInstance).count();
    return new ChainModel(
        new FeedChain(source, stages), reference, tuners, input, chokes, terminals, lossless);
  }

  /** The transformer at the feedpoint, above the line; -1 for none. */
  private static int topTransformer(List<Stage> towardsAntenna) {
    for (int i = towardsAntenna.size() - 1; i >= 0; i--) {
      if (towardsAntenna.get(i) instanceof Stage.Line) {
        return -1;
      }
      if (towardsAntenna.get(i) instanceof Stage.Transformer) {
        return i;
      }
    }
    return -1;
  }

  private static String name(Stage stage, Map<String, Integer> used) {
    int number = used.merge(stage.kind(), 1, Integer::sum);
    return number == 1 ? stage.kind() : stage.kind() + " " + number;
  }

  /**
   * What is known of a transformer.
   *
   * @param network of one measured or wound
   * @param threeTerminals whether it knows both antenna terminals and its common node
   */
  private record Real(Optional<Network> network, boolean threeTerminals) {
    static Real of(Stage.Transformer transformer) {
      if (transformer.wound().isPresent()) {
        return new Real(transformer.wound().map(Winding::transformer), true);
      }
      Optional<Touchstone> file = transformer.touchstone().map(Touchstone::read);
      return new Real(
          file.map(Touchstone::network), file.filter(each -> each.ports() == 3).isPresent());
    }
  }

  /** A stage that leaves the reference impedance as it is. */
  private static FeedChain.Stage between(Stage stage, String name, double reference) {
    if (stage instanceof Stage.Tuner tuner) {
      return FeedChain.Stage.of(name, tuner.at(reference));
    }
    Network network;
    if (stage instanceof Stage.Line line) {
      network = line.line();
    } else if (stage instanceof Stage.Matching matching) {
      network = matching.ladder();
    } else if (stage instanceof Stage.Attenuator attenuator) {
      network = new Attenuator(attenuator.lossDb(), reference);
    } else {
      Stage.Stub stub = (Stage.Stub) stage;
      LumpedImpedance seen = stub.line().stub(stub.shorted() ? Complex.ZERO : Complex.INF);
      network = Ladder.of(new Ladder.Element(stub.inSeries(), seen));
    }
    return FeedChain.Stage.of(name, network, reference);
  }

  /** Impedance in ohms of all chokes together. */
  Complex chokeImpedance(double frequencyHz) {
    Complex sum = Complex.ZERO;
    for (Stage.Choke each : choke) {
      sum = sum.add(each.impedance().at(frequencyHz));
    }
    return sum;
  }

  /**
   * All 2-ports in cascade, then the terminals: port 1 at the transmitter, 2 and 3 at the arms.
   *
   * @param seen impedance in ohms that the terminals show to the chain
   */
  NPort toTerminals(double frequencyHz, Complex seen) {
    NPort end = terminals.at(frequencyHz);
    return chain.network(frequencyHz, seen).map(all -> all.join(2, end, 1)).orElse(end);
  }

  /**
   * SWR planes of a state that ends at the feedpoint.
   *
   * @param state its last plane at the feedpoint
   */
  List<PlaneMismatch> planes(ChainState state) {
    List<PlaneMismatch> planes = new ArrayList<>();
    List<ChainState.Plane> all = state.planes();
    Mismatch last = all.get(all.size() - 1).mismatch();
    planes.add(new PlaneMismatch(Plane.FEEDPOINT, Mismatch.of(last.impedance(), feedpointOhm)));
    planes.add(new PlaneMismatch(Plane.TRANSMITTER, all.get(transmitter).mismatch()));
    transformerInput.ifPresent(
        index -> planes.add(new PlaneMismatch(Plane.TRANSFORMER_INPUT, all.get(index).mismatch())));
    return planes;
  }
}
