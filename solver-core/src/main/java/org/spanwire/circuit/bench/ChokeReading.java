package org.spanwire.circuit.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.NetworkData;

/**
 * Choking impedance from a measurement, the terminals of each side tied together.
 *
 * @param impedance in ohms
 * @param uncertaintyOhm how far off it may be, in ohms, for the error of the reading stated
 */
public record ChokeReading(Complex impedance, double uncertaintyOhm) {

  /**
   * All readings of a measured choke: of one port to ground, or of two ports in series between
   * them.
   *
   * @param data of 1 or 2 ports
   * @param emptyFixture the fixture without the choke, of 2 ports, at the data's frequencies
   * @param error |δ| of the scattering parameters
   * @throws IllegalArgumentException if the ports do not fit
   */
  public static List<BenchReadings.ChokeAt> ofData(
      NetworkData data, Optional<NetworkData> emptyFixture, double error) {
    boolean reflection = data.ports() == 1;
    if (data.ports() > 2 || emptyFixture.isPresent() && reflection) {
      throw new IllegalArgumentException(
          "has %d ports%s; expected 1, or 2 with or without an empty fixture of 2"
              .formatted(data.ports(), emptyFixture.isPresent() ? " and a fixture" : ""));
    }
    List<BenchReadings.ChokeAt> readings = new ArrayList<>();
    double[] frequencies = data.frequencies();
    for (int i = 0; i < frequencies.length; i++) {
      NPort sample = data.sample(i);
      double reference = sample.reference(1).getReal();
      ChokeReading reading;
      if (reflection) {
        reading = ofReflection(sample.s(1, 1), reference, error);
      } else if (emptyFixture.isPresent()) {
        reading = ofSeriesThrough(sample, emptyFixture.get().at(frequencies[i]), error);
      } else {
        reading = ofSeriesThrough(sample.s(2, 1), reference, error);
      }
      readings.add(new BenchReadings.ChokeAt(frequencies[i], reading));
    }
    return readings;
  }

  /**
   * In series between two ports of R0: Z = 2 R0 (1/S21 − 1). An error δ of S21 moves Z by δ |Z + 2
   * R0|²/(2 R0).
   *
   * @param s21 transmission
   * @param referenceOhm R0 in ohms
   * @param error |δ| of S21
   */
  public static ChokeReading ofSeriesThrough(Complex s21, double referenceOhm, double error) {
    Complex z = s21.reciprocal().subtract(1).multiply(2 * referenceOhm);
    return new ChokeReading(z, spread(z, 2 * referenceOhm, error));
  }

  /**
   * In series between the ports of a measured 2-port: Z = −1/Y21, from which capacitance from
   * either end to ground is absent. The empty fixture, measured in the same way, takes away what
   * bridges the choke: 1/Z = −(Y21 − Y21 empty).
   *
   * @param error |δ| of the scattering parameters
   */
  public static ChokeReading ofSeriesThrough(NPort measured, NPort emptyFixture, double error) {
    Complex y = emptyFixture.admittance()[1][0].subtract(measured.admittance()[1][0]);
    Complex z = y.equals(Complex.ZERO) ? Complex.INF : y.reciprocal();
    double reference = measured.reference(1).getReal() + measured.reference(2).getReal();
    return new ChokeReading(z, spread(z, reference, error));
  }

  /**
   * From one port to ground: Z = R0 (1 + Γ)/(1 − Γ). An error δ of Γ moves Z by δ |Z + R0|²/(2 R0).
   *
   * @param reflection Γ
   * @param referenceOhm R0 in ohms
   * @param error |δ| of Γ
   */
  public static ChokeReading ofReflection(Complex reflection, double referenceOhm, double error) {
    Complex z = reflection.add(1).divide(Complex.ONE.subtract(reflection)).multiply(referenceOhm);
    return new ChokeReading(z, error * square(z.add(referenceOhm)) / (2 * referenceOhm));
  }

  /**
   * The same without a capacitance in parallel, known to within some error: 1/Z − jωC. The error of
   * the reading grows with |Z/Z_read|², the capacitance adds |Z|² ω δC.
   *
   * @param farads capacitance of the fixture
   * @param error |δ| of it in farads
   * @param frequencyHz frequency in hertz
   */
  public ChokeReading withoutCapacitance(double farads, double error, double frequencyHz) {
    double w = 2 * Math.PI * frequencyHz;
    Complex z = impedance.reciprocal().subtract(new Complex(0, w * farads)).reciprocal();
    double scale = square(z) / square(impedance);
    return new ChokeReading(z, uncertaintyOhm * scale + square(z) * w * error);
  }

  private static double spread(Complex z, double sum, double error) {
    return z.isInfinite() ? Double.POSITIVE_INFINITY : error * square(z.add(sum)) / sum;
  }

  private static double square(Complex z) {
    return z.getReal() * z.getReal() + z.getImaginary() * z.getImaginary();
  }
}
