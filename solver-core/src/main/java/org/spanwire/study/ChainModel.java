package org.spanwire.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.FeedChain;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.Network;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.Transformer;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.design.Design;
import org.spanwire.design.Stage;

/**
 * The stages of a design as a circuit from the transmitter to the feedpoint. A choke acts on the
 * common mode alone and so has no place among the 2-ports.
 *
 * @param chain 2-ports from the transmitter
 * @param feedpointOhm reference of SWR at the feedpoint
 * @param transformerInput number of stages before the transformer nearest to the feedpoint
 * @param choke sum of all chokes' impedances
 * @param terminals with a feed line: what lies between the chain and the two terminals, ports as in
 *     {@link Terminals}
 * @param lossless whether the terminals are an ideal tie, so that the chain ends at the feedpoint
 */
record ChainModel(
    FeedChain chain,
    double feedpointOhm,
    Optional<Integer> transformerInput,
    List<Stage.Choke> choke,
    Network terminals,
    boolean lossless) {

  /** Name of a line among the stages; a second one is numbered. */
  static final String LINE = "line";

  static ChainModel of(Design design) {
    List<Stage> towardsAntenna = new ArrayList<>(design.feedChain());
    Collections.reverse(towardsAntenna);
    boolean route = design.feedLine().isPresent();
    int top = route ? topTransformer(towardsAntenna) : -1;
    List<FeedChain.Stage> stages = new ArrayList<>();
    List<Stage.Choke> chokes = new ArrayList<>();
    Map<String, Integer> used = new HashMap<>();
    Optional<Integer> input = Optional.empty();
    Network terminals = Terminals.tie(Stage.Output.UNBALANCED, design.feedpointReferenceOhm());
    boolean lossless = true;
    double reference = design.referenceOhm();
    for (int i = 0; i < towardsAntenna.size(); i++) {
      Stage stage = towardsAntenna.get(i);
      if (stage instanceof Stage.Choke choke) {
        chokes.add(choke);
      } else if (stage instanceof Stage.Line line) {
        stages.add(FeedChain.Stage.of(name(LINE, used), line(line), reference));
      } else if (stage instanceof Stage.Transformer transformer) {
        input = Optional.of(stages.size());
        Optional<Touchstone> measured = transformer.touchstone().map(Touchstone::read);
        double near = reference;
        reference *= transformer.ratio();
        if (i == top && measured.isPresent() && measured.get().ports() == 3) {
          terminals = measured.get().network();
          lossless = false;
          continue;
        }
        if (i == top) {
          terminals = Terminals.tie(transformer.output(), reference);
        }
        Network network =
            measured
                .map(file -> Transformer.floating(file.network()))
                .orElseGet(() -> Transformer.ideal(transformer.ratio(), near));
        stages.add(FeedChain.Stage.of(name("transformer", used), network, reference));
      }
    }
    FeedChain.Source source =
        new FeedChain.Source(
            design.powerWatts().orElse(Installation.ASSUMED_POWER), design.referenceOhm());
    return new ChainModel(
        new FeedChain(source, stages), reference, input, chokes, terminals, lossless);
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

  private static String name(String kind, Map<String, Integer> used) {
    int number = used.merge(kind, 1, Integer::sum);
    return number == 1 ? kind : kind + " " + number;
  }

  private static Network line(Stage.Line line) {
    LineAttenuation attenuation =
        line.loss()
            .map(
                loss ->
                    LineAttenuation.ofConductor(
                        loss.frequencyHz(), loss.decibels() / loss.length()))
            .orElse(LineAttenuation.NONE);
    return new TransmissionLine(
        line.impedanceOhm(), line.length(), line.velocityFactor(), attenuation);
  }

  /** Impedance in ohms of all chokes together. */
  Complex chokeImpedance(double frequencyHz) {
    Complex sum = Complex.ZERO;
    for (Stage.Choke each : choke) {
      sum = sum.add(each.impedance().at(frequencyHz));
    }
    return sum;
  }

  /** All 2-ports in cascade, then the terminals: port 1 at the transmitter, 2 and 3 at the arms. */
  NPort toTerminals(double frequencyHz) {
    NPort end = terminals.at(frequencyHz);
    NPort chained = null;
    for (FeedChain.Stage stage : chain.stages()) {
      NPort next = stage.element().facing(frequencyHz, new Complex(stage.referenceOhm(), 0));
      chained = chained == null ? next : chained.cascade(next);
    }
    return chained == null ? end : chained.join(2, end, 1);
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
    planes.add(new PlaneMismatch(Plane.TRANSMITTER, all.get(0).mismatch()));
    transformerInput.ifPresent(
        index -> planes.add(new PlaneMismatch(Plane.TRANSFORMER_INPUT, all.get(index).mismatch())));
    return planes;
  }
}
