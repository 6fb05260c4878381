package org.spanwire.circuit;

import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.LumpedImpedance;

/**
 * Impedances in series and in shunt, from port 1 to port 2: L, pi and T networks, stubs, traps. At
 * least one element; an impedance may be {@link Complex#INF} or 0.
 *
 * @param elements in order from port 1
 */
public record Ladder(List<Element> elements) implements Network {

  private static final double REFERENCE = 50;

  /**
   * One element.
   *
   * @param inSeries true in series, false in shunt
   * @param impedance its impedance
   */
  public record Element(boolean inSeries, LumpedImpedance impedance) {
    /** Checks that there is an impedance. */
    public Element {
      Objects.requireNonNull(impedance, "impedance");
    }

    /** S11 = Z/(Z + 2 R) in series, −R/(R + 2 Z) in shunt (Pozar, section 4.3). */
    private NPort at(double frequencyHz) {
      Complex z = impedance.at(frequencyHz);
      Complex own;
      if (z.isInfinite()) {
        own = inSeries ? Complex.ONE : Complex.ZERO;
      } else if (inSeries) {
        own = z.divide(z.add(2 * REFERENCE));
      } else {
        own = new Complex(-REFERENCE, 0).divide(z.multiply(2).add(REFERENCE));
      }
      Complex through = inSeries ? Complex.ONE.subtract(own) : Complex.ONE.add(own);
      return NPort.ofScattering(new Complex[][] {{own, through}, {through, own}}, REFERENCE);
    }
  }

  /** Checks that there is an element. */
  public Ladder {
    elements = List.copyOf(elements);
    if (elements.isEmpty()) {
      throw new IllegalArgumentException("a ladder needs at least one element");
    }
  }

  /** An impedance in series. */
  public static Element series(LumpedImpedance impedance) {
    return new Element(true, impedance);
  }

  /** An impedance in shunt. */
  public static Element shunt(LumpedImpedance impedance) {
    return new Element(false, impedance);
  }

  /** Elements in order from port 1. */
  public static Ladder of(Element... elements) {
    return new Ladder(List.of(elements));
  }

  /** A pi network: shunt, series, shunt. */
  public static Ladder pi(LumpedImpedance first, LumpedImpedance middle, LumpedImpedance last) {
    return of(shunt(first), series(middle), shunt(last));
  }

  /** A T network: series, shunt, series. */
  public static Ladder tee(LumpedImpedance first, LumpedImpedance middle, LumpedImpedance last) {
    return of(series(first), shunt(middle), series(last));
  }

  @Override
  public NPort at(double frequencyHz) {
    return elements.stream().map(e -> e.at(frequencyHz)).reduce(NPort::cascade).orElseThrow();
  }
}
