package org.spanwire.circuit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * The stages between a transmitter and an antenna, in that order.
 *
 * @param source the transmitter
 * @param stages from the transmitter to the feedpoint; may be empty
 */
public record FeedChain(Source source, List<Stage> stages) {

  /**
   * A transmitter as a linear source.
   *
   * @param availablePower power into a conjugate match, in watts, positive
   * @param referenceOhm its source impedance and the reference of SWR at its terminals, in ohms
   */
  public record Source(double availablePower, double referenceOhm) {
    /** Checks the ranges. */
    public Source {
      if (!(availablePower > 0) || !(referenceOhm > 0)) {
        throw new IllegalArgumentException(
            "source needs a positive power and impedance, got %s W and %s ohm"
                .formatted(availablePower, referenceOhm));
      }
    }
  }

  /** A 2-port that may depend on the load that it faces, as a tuner does. */
  @FunctionalInterface
  public interface Element {
    /** Its parameters at a frequency in hertz, facing a load in ohms at port 2. */
    NPort facing(double frequencyHz, Complex load);
  }

  /**
   * A stage.
   *
   * @param name for tables
   * @param element 2-port with port 1 towards the transmitter
   * @param referenceOhm reference of SWR on its antenna side, in ohms, positive
   */
  public record Stage(String name, Element element, double referenceOhm) {
    /** Checks the ranges. */
    public Stage {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(element, "element");
      if (!(referenceOhm > 0)) {
        throw new IllegalArgumentException(
            "reference of stage " + name + " is " + referenceOhm + " ohm; it must be positive");
      }
    }

    /** A 2-port that the load does not change. */
    public static Stage of(String name, Network network, double referenceOhm) {
      return new Stage(name, (f, load) -> network.at(f), referenceOhm);
    }

    /** A tuner; its antenna side has the tuner's reference. */
    public static Stage of(String name, Tuner tuner) {
      return new Stage(name, (f, load) -> tuner.facing(load), tuner.referenceOhm());
    }
  }

  /** Copies the list. */
  public FeedChain {
    Objects.requireNonNull(source, "source");
    stages = List.copyOf(stages);
  }

  /**
   * All stages in cascade, each as it is with the load it faces; empty without stages.
   *
   * @param frequencyHz frequency in hertz, positive
   * @param load impedance at the feedpoint in ohms, {@link Complex#INF} for none
   */
  public Optional<NPort> network(double frequencyHz, Complex load) {
    return Arrays.stream(faced(frequencyHz, load).networks()).reduce(NPort::cascade);
  }

  /** What every stage is and sees, the transmitter first; one more is seen than there are. */
  private record Faced(Complex[] seen, NPort[] networks) {}

  private Faced faced(double frequencyHz, Complex load) {
    int count = stages.size();
    Complex[] seen = new Complex[count + 1];
    NPort[] networks = new NPort[count];
    seen[count] = load;
    for (int k = count - 1; k >= 0; k--) {
      networks[k] = stages.get(k).element().facing(frequencyHz, seen[k + 1]);
      seen[k] = networks[k].terminated(2, seen[k + 1]).inputImpedance();
    }
    return new Faced(seen, networks);
  }

  /**
   * What happens at one frequency.
   *
   * @param frequencyHz frequency in hertz, positive
   * @param load impedance at the feedpoint in ohms, {@link Complex#INF} for none
   */
  public ChainState at(double frequencyHz, Complex load) {
    Faced faced = faced(frequencyHz, load);
    Complex[] seen = faced.seen();
    NPort[] networks = faced.networks();
    Drive drive = Drive.of(source, seen[0]);
    List<ChainState.Plane> planes = new ArrayList<>();
    List<ChainState.StageLoss> losses = new ArrayList<>();
    planes.add(
        new ChainState.Plane(
            "transmitter", Mismatch.of(seen[0], source.referenceOhm()), drive.power()));
    for (int k = 0; k < stages.size(); k++) {
      Stage stage = stages.get(k);
      Drive next = drive.through(networks[k], seen[k + 1]);
      losses.add(new ChainState.StageLoss(stage.name(), next.lost()));
      planes.add(
          new ChainState.Plane(
              stage.name(), Mismatch.of(seen[k + 1], stage.referenceOhm()), next.power()));
      drive = next;
    }
    return new ChainState(frequencyHz, source.availablePower(), planes, losses);
  }

  /** Voltage and current (rms) at a plane, and the watts lost in the stage before it. */
  private record Drive(Complex voltage, Complex current, double lost) {

    static Drive of(Source source, Complex load) {
      double r = source.referenceOhm();
      double open = 2 * Math.sqrt(source.availablePower() * r);
      if (load.isInfinite()) {
        return new Drive(new Complex(open, 0), Complex.ZERO, 0);
      }
      Complex current = new Complex(open, 0).divide(load.add(r));
      return new Drive(load.multiply(current), current, 0);
    }

    double power() {
      return voltage.multiply(current.conjugate()).getReal();
    }

    /** Drives a 2-port; its loss is counted from its waves, apart from the power that leaves it. */
    Drive through(NPort s, Complex load) {
      Complex z1 = s.reference(1);
      Complex z2 = s.reference(2);
      Complex a1 = voltage.add(z1.multiply(current)).divide(2 * Math.sqrt(z1.getReal()));
      // d a2 = n b2 at the load, b2 = S21 a1 + S22 a2.
      Complex n = load.isInfinite() ? Complex.ONE : load.subtract(z2);
      Complex d = load.isInfinite() ? Complex.ONE : load.add(z2.conjugate());
      Complex denominator = d.subtract(n.multiply(s.s(2, 2)));
      Complex onward = s.s(2, 1).multiply(a1);
      boolean cutOff = onward.equals(Complex.ZERO);
      Complex a2 = cutOff ? Complex.ZERO : n.multiply(onward).divide(denominator);
      Complex b2 = cutOff ? Complex.ZERO : d.multiply(onward).divide(denominator);
      Complex b1 = s.s(1, 1).multiply(a1).add(s.s(1, 2).multiply(a2));
      double root = Math.sqrt(z2.getReal());
      return new Drive(
          z2.conjugate().multiply(a2).add(z2.multiply(b2)).divide(root),
          b2.subtract(a2).divide(root),
          square(a1) - square(b1) + square(a2) - square(b2));
    }

    private static double square(Complex wave) {
      return wave.getReal() * wave.getReal() + wave.getImaginary() * wave.getImaginary();
    }
  }
}
