package org.spanwire.practice;

import org.spanwire.unit.PhysicalConstants;

/**
 * How much heat a level wire gives off in still air, without sun: natural convection by the
 * correlation of S. W. Churchill and H. H. S. Chu (Int. J. Heat Mass Transfer 18, 1049, 1975,
 * equation 10) and radiation. The coat counts as part of the wire; its own thermal resistance is
 * left out.
 *
 * <p>Air between 270 K and 400 K: conductivity, viscosity and diffusivity by powers of the
 * temperature through the tabulated values at 300 K and 350 K (Incropera and DeWitt, Fundamentals
 * of Heat and Mass Transfer, table A.4), from memory.
 *
 * @param ambient temperature of the air in kelvins
 * @param limit highest temperature of the wire in kelvins, above the ambient
 * @param emissivity of the surface, 0 to 1
 */
public record WireCooling(double ambient, double limit, double emissivity) {

  private static final double STEFAN_BOLTZMANN = 5.670374419e-8;

  /** 40 °C in the shade, 70 °C at the wire as a common plastic coat bears, weathered surface. */
  public static final WireCooling SUMMER = new WireCooling(313.15, 343.15, 0.5);

  /** Checks the ranges. */
  public WireCooling {
    if (!(ambient >= 250 && limit > ambient && limit <= 450)
        || !(emissivity >= 0 && emissivity <= 1)) {
      throw new IllegalArgumentException(
          "ambient "
              + ambient
              + " K and limit "
              + limit
              + " K must rise between 250 K and 450 K, emissivity "
              + emissivity
              + " lie between 0 and 1");
    }
  }

  /**
   * Watts per metre that hold a wire at its limit.
   *
   * @param diameter outer diameter in metres, positive
   */
  public double wattsPerMetre(double diameter) {
    double film = 0.5 * (ambient + limit);
    double ratio = film / 300;
    double conductivity = 26.3e-3 * Math.pow(ratio, 0.854);
    double viscosity = 15.89e-6 * Math.pow(ratio, 1.784);
    double diffusivity = 22.5e-6 * Math.pow(ratio, 1.845);
    double rayleigh =
        PhysicalConstants.STANDARD_GRAVITY
            * (limit - ambient)
            / film
            * Math.pow(diameter, 3)
            / (viscosity * diffusivity);
    double prandtl = viscosity / diffusivity;
    double root =
        0.60
            + 0.387
                * Math.pow(rayleigh, 1.0 / 6)
                / Math.pow(1 + Math.pow(0.559 / prandtl, 9.0 / 16), 8.0 / 27);
    double convected = Math.PI * conductivity * root * root * (limit - ambient);
    double radiated =
        Math.PI
            * diameter
            * emissivity
            * STEFAN_BOLTZMANN
            * (Math.pow(limit, 4) - Math.pow(ambient, 4));
    return convected + radiated;
  }
}
