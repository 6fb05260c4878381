package org.spanwire.validation.guide;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.FeedChain;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.Transformer;
import org.spanwire.circuit.TransmissionLine;

public final class TransformerChainExample {
  public static void main(String[] args) {
    Complex feedpoint = new Complex(133, 74);
    TransmissionLine line =
        new TransmissionLine(50, 15, 0.66, LineAttenuation.ofConductor(10e6, 0.045));
    // From the transmitter towards the antenna: 100 W, 15 m of line, a transformer 4:1.
    FeedChain chain =
        new FeedChain(
            new FeedChain.Source(100, 50),
            List.of(
                FeedChain.Stage.of("line", line, 50),
                FeedChain.Stage.of("transformer", Transformer.ideal(4, 50), 200)));
    ChainState state = chain.at(5.36e6, feedpoint);
    for (ChainState.Plane plane : state.planes()) {
      System.out.printf("%s: SWR %.2f%n", plane.name(), plane.mismatch().swr());
    }
    for (ChainState.StageLoss loss : state.losses()) {
      System.out.printf("heat in the %s %.1f W%n", loss.name(), loss.watts());
    }
    System.out.printf("to the antenna %.1f W of 100 W%n", state.deliveredPower());
  }
}
