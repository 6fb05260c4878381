package org.spanwire.study;

import java.util.List;
import org.spanwire.unit.Quantity;

/**
 * What single changes would give a band the next better verdict.
 *
 * @param band name of the band
 * @param worst largest SWR at the transmitter now
 * @param now the verdict now
 * @param wanted the next better verdict
 * @param fixes the changes found, the cheapest first; perhaps none
 */
public record BandFixes(String band, double worst, Verdict now, Verdict wanted, List<Fix> fixes) {

  /** Takes a copy. */
  public BandFixes {
    fixes = List.copyOf(fixes);
  }

  /** What is changed. */
  public enum Part {
    /** A parameter of the design. */
    PARAMETER,
    /** The impedance ratio of the ideal transformer. */
    RATIO,
    /** The choke's impedance, as a multiple of what it is. */
    CHOKE
  }

  /**
   * One change, from a polynomial through solutions, verified by solutions.
   *
   * @param part what is changed
   * @param name name of the parameter, or of the part
   * @param from value now
   * @param to value that gives the band the better verdict
   * @param worst largest SWR at the transmitter then
   * @param perUnit slope of the largest SWR now, per SI unit of the value; 0 for a part that is
   *     exchanged
   * @param spoilt other bands that get a worse verdict by it
   */
  public record Fix(
      Part part,
      String name,
      Quantity from,
      Quantity to,
      double worst,
      double perUnit,
      List<String> spoilt) {

    /** Takes a copy. */
    public Fix {
      spoilt = List.copyOf(spoilt);
    }

    /**
     * What changes are ranked by: bands spoilt, then the relative change; exchanging a part counts
     * as a change of a tenth. Common practice, no source.
     */
    double cost() {
      double relative = Math.abs(to.value() - from.value()) / Math.abs(from.value());
      return spoilt.size() + (part == Part.PARAMETER ? relative : 0.1 + 0.01 * relative);
    }
  }
}
