package org.spanwire.unit;

/**
 * Physical constants in SI units (CODATA 2018; the speed of light is exact by definition of the
 * metre).
 */
public final class PhysicalConstants {

  /** Speed of light in vacuum, m/s. */
  public static final double SPEED_OF_LIGHT = 299_792_458.0;

  /** Standard acceleration of gravity, m/s², exact (CGPM 1901). */
  public static final double STANDARD_GRAVITY = 9.80665;

  /** Magnetic constant μ0, H/m. */
  public static final double MAGNETIC_CONSTANT = 1.256_637_062_12e-6;

  /** Electric constant ε0 = 1/(μ0 c²), F/m. */
  public static final double ELECTRIC_CONSTANT =
      1 / (MAGNETIC_CONSTANT * SPEED_OF_LIGHT * SPEED_OF_LIGHT);

  /** Impedance of free space η0 = μ0 c, ohm. */
  public static final double IMPEDANCE_OF_FREE_SPACE = MAGNETIC_CONSTANT * SPEED_OF_LIGHT;

  private PhysicalConstants() {}

  /** Free-space wavelength in metres of a frequency in hertz. */
  public static double wavelength(double frequencyHz) {
    return SPEED_OF_LIGHT / frequencyHz;
  }

  /** Free-space wavenumber 2πf/c in rad/m of a frequency in hertz. */
  public static double wavenumber(double frequencyHz) {
    return 2 * Math.PI * frequencyHz / SPEED_OF_LIGHT;
  }
}
