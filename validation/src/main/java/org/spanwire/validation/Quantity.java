package org.spanwire.validation;

import java.util.Set;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Span;
import org.spanwire.geometry.SpanShape;
import org.spanwire.unit.PhysicalConstants;

/** What a case can ask for, with the unit of the answer. */
enum Quantity {
  INPUT_IMPEDANCE("ohm", Impedances::input),
  INPUT_RESISTANCE("ohm", (c, b) -> real(Impedances.input(c, b).getReal())),
  INPUT_REACTANCE("ohm", (c, b) -> real(Impedances.input(c, b).getImaginary())),
  INDUCTANCE("µH", Impedances::microhenries),
  SELF_IMPEDANCE("ohm", (c, b) -> Impedances.port(c, b, 0, 0)),
  MUTUAL_IMPEDANCE("ohm", (c, b) -> Impedances.port(c, b, 0, 1)),
  /** Self less mutual impedance: what a horizontal dipole has over its image. */
  ODD_MODE_IMPEDANCE("ohm", Impedances::oddMode),
  /** Input impedances of the two feeds driven with equal currents. */
  FIRST_DRIVEN_IMPEDANCE("ohm", (c, b) -> Impedances.driven(c, b, 0)),
  SECOND_DRIVEN_IMPEDANCE("ohm", (c, b) -> Impedances.driven(c, b, 1)),
  IMPEDANCE_RATIO("1", Impedances::ratio),
  RESISTANCE_RATIO("1", Impedances::resistanceRatio),
  /** Change of the impedance from that of the reference, over the resistance of the reference. */
  IMPEDANCE_CHANGE("1", Impedances::change),
  RESONANT_VALUE("wavelength", Impedances::resonance),
  RESONANT_RESISTANCE("ohm", Impedances::resonantResistance),
  /** Resistance at resonance over that of the reference at its own resonance. */
  RESONANT_RESISTANCE_RATIO("1", Impedances::resonantResistanceRatio),
  /** |Z21|² / 4 R11 R22, what two matched antennas pass on. */
  COUPLING("dB", Impedances::coupling),
  RECIPROCITY_DEFECT("1", Laws::reciprocityDefect),

  /** Of prescribed currents, referred to the largest. */
  RADIATION_RESISTANCE("ohm", Impedances::radiationResistance),

  PATTERN_INTEGRAL("1", Laws::patternIntegral),
  CURL_DEFECT("1", Laws::curlDefect),
  MODE_DEFECT("1", Laws::modeDefect),
  LOSS_INCREASE("1", Laws::lossIncrease),
  SPLIT_SOURCE("1", Laws::splitSource),

  PEAK_GAIN("dBi", Patterns::peakGain),
  /** Peak gain with equal currents over the peak gain of the reference. */
  DRIVEN_GAIN_INCREASE("dB", Patterns::drivenGainIncrease),
  /** Peak gain over that of a lossless half-wave dipole in free space, 2.151 dBi. */
  PEAK_GAIN_OVER_DIPOLE("dBd", Patterns::peakGainOverDipole),
  PEAK_ELEVATION("deg", Patterns::peakElevation),
  GAIN_AT("dBi", Patterns::gainAt),
  LOBE_ANGLE("deg", Patterns::lobeAngle),
  HALF_POWER_BEAMWIDTH("deg", Patterns::beamwidth),
  UNATTENUATED_FIELD("mV/m", Patterns::unattenuatedField),
  EFFECTIVE_LENGTH("wavelength", Patterns::effectiveLength),
  RADIATION_EFFICIENCY("1", Patterns::efficiency),
  EFFICIENCY_DECIBELS("dB", Patterns::efficiencyDecibels),
  POWER_BALANCE("1", Patterns::powerBalance),
  POWER_BALANCE_WITH_SOIL("1", Patterns::powerBalanceWithSoil),

  SURFACE_IMPEDANCE("ohm/m", MediumFunctions::surfaceImpedance),
  MATERIAL_CONDUCTIVITY("MS/m", MediumFunctions::conductivity),
  WIRE_MASS("g/m", MediumFunctions::wireMass),
  /** Velocity of the waves on a wire many wavelengths long over that of light. */
  VELOCITY_FACTOR("1", WireFunctions::velocityFactor),
  /** Conductance of a wire without ends. */
  ENDLESS_CONDUCTANCE("mS", WireFunctions::endlessConductance),
  /** Field strength at a radiated power. */
  ELECTRIC_FIELD("V/m", WireFunctions::electricField),
  MAGNETIC_FIELD("A/m", WireFunctions::magneticField),

  PENETRATION_DEPTH("m", GroundFunctions::penetrationDepth),
  SOIL_PERMITTIVITY("1", GroundFunctions::permittivity),
  SOIL_CONDUCTIVITY("S/m", GroundFunctions::conductivity),
  /** Reflection coefficient of soil for a plane wave. */
  VERTICAL_REFLECTION("1", (c, b) -> GroundFunctions.reflection(c, true)),
  HORIZONTAL_REFLECTION("1", (c, b) -> GroundFunctions.reflection(c, false)),
  LEAST_REFLECTION_ELEVATION("deg", GroundFunctions::leastReflectionElevation),
  LEAST_REFLECTION("1", GroundFunctions::leastReflection),
  SURFACE_WAVE_ATTENUATION("1", GroundFunctions::surfaceWaveAttenuation),
  SURFACE_WAVE_FIELD("mV/m", GroundFunctions::surfaceWaveField),
  GROUND_WAVE_FIELD("mV/m", GroundFunctions::groundWaveField),

  REFLECTION_MAGNITUDE("1", LineFunctions::reflectionMagnitude),
  RETURN_LOSS("dB", LineFunctions::returnLoss),
  MISMATCH_LOSS("dB", LineFunctions::mismatchLoss),
  /** Loss of a line that ends in a mismatch, for its loss when matched. */
  TOTAL_LINE_LOSS("dB", LineFunctions::totalLoss),
  IMPEDANCE_THROUGH_LINE("ohm", LineFunctions::throughLine),
  TWO_WIRE_LINE_IMPEDANCE("ohm", LineFunctions::twoWireImpedance),
  WIRE_OVER_GROUND_IMPEDANCE("ohm", LineFunctions::wireOverGroundImpedance),
  COAXIAL_LINE_IMPEDANCE("ohm", LineFunctions::coaxialImpedance),

  EQUAL_DELAY_IMPEDANCE("ohm", TransformerFunctions::equalDelayImpedance),
  AUTOTRANSFORMER_TRANSFER("1", (c, b) -> real(TransformerFunctions.autotransformerShare(c))),
  AUTOTRANSFORMER_TRANSFER_DECIBELS(
      "dB", (c, b) -> real(10 * Math.log10(TransformerFunctions.autotransformerShare(c)))),
  /** What a differential load loses by outputs that are not equal and opposite. */
  COMBINING_LOSS("dB", TransformerFunctions::combiningLoss),
  COMMON_OVER_DIFFERENTIAL("1", TransformerFunctions::commonOverDifferential),
  CORE_INDUCTANCE("nH", TransformerFunctions::coreInductance),
  WINDING_IMPEDANCE("ohm", TransformerFunctions::windingImpedance),
  EXPOSURE_LIMIT_ELECTRIC("V/m", ExposureFunctions::electricLimit),
  EXPOSURE_LIMIT_MAGNETIC("A/m", ExposureFunctions::magneticLimit),
  EXPOSURE_LIMIT_DENSITY("W/m²", ExposureFunctions::densityLimit),
  EXPOSURE_AVERAGING("min", ExposureFunctions::averagingTime),
  FAR_FIELD_SCREEN("m", ExposureFunctions::screenDistance),
  EXEMPT_ERP("W", ExposureFunctions::exemptErp),
  PLANE_WAVE_ELECTRIC("V/m", ExposureFunctions::planeWaveElectric),
  PLANE_WAVE_MAGNETIC("A/m", ExposureFunctions::planeWaveMagnetic),
  /** Field of a level half wave of 1 A over soil. */
  ELECTRIC_FIELD_OVER_SOIL("V/m", ExposureFunctions::electricOverSoil),
  MAGNETIC_FIELD_OVER_SOIL("A/m", ExposureFunctions::magneticOverSoil),
  HERTZ_DIPOLE_WAVE_IMPEDANCE("ohm", ExposureFunctions::waveImpedance),

  HORIZONTAL_TENSION("N", (c, b) -> real(hanging(c).horizontalTension())),
  SUPPORT_TENSION("N", (c, b) -> real(hanging(c).largestSupportTension())),
  HANGING_LENGTH("m", (c, b) -> real(hanging(c).length())),
  /** Horizontal tension over weight per length. */
  CATENARY_PARAMETER(
      "m",
      (c, b) ->
          real(
              hanging(c).horizontalTension()
                  / (c.parameters().number("kilogramsPerMetre")
                      * PhysicalConstants.STANDARD_GRAVITY)));

  @FunctionalInterface
  private interface Measurement {
    Complex of(ValidationCase subject, Workbench bench);
  }

  private static final Set<String> PARAMETER_NAMES =
      Set.of(
          ThinLimit.PARAMETER,
          Prescribed.PARAMETER,
          "soilName",
          "numericalDistance",
          "numericalAngleDegrees",
          "searchParameter",
          "searchFrom",
          "searchTo",
          "towardElevationDegrees",
          "towardAzimuthDegrees",
          "powerWatts",
          "atRhoMetres",
          "atZMetres",
          "loadOhm",
          "loadReactanceOhm",
          "referenceOhm",
          "matchedLossDecibels",
          "loadSwr",
          "lineLength",
          "spacingOverDiameter",
          "heightOverRadius",
          "outerOverInner",
          "linePermittivity",
          "windingLines",
          "windingOhm",
          "windingLength",
          "amplitudeDecibels",
          "phaseErrorDegrees",
          "coreOuterMillimetres",
          "coreInnerMillimetres",
          "coreHeightMillimetres",
          "corePermeability",
          "corePermeabilityLoss",
          "turns",
          "strayPicofarads",
          "limit",
          "gainDecibels",
          "wattsPerSquareMetre",
          "fieldFactor",
          "distanceMetres",
          "heightMetres",
          "atXMetres",
          "atYMetres",
          "phaseDistance",
          "spanMetres",
          "sagMetres",
          "kilogramsPerMetre");

  private final String unit;

  /** A reference to a method without state. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final Measurement measurement;

  Quantity(String unit, Measurement measurement) {
    this.unit = unit;
    this.measurement = measurement;
  }

  String unit() {
    return unit;
  }

  /** The names of the parameters that quantities take besides those of the structure. */
  static Set<String> parameterNames() {
    return PARAMETER_NAMES;
  }

  /** The answer to a case; the limit of vanishing radius if the case asks for it. */
  Complex measure(ValidationCase subject, Workbench bench) {
    return subject.parameters().has(ThinLimit.PARAMETER)
        ? ThinLimit.of(subject, thin -> measurement.of(thin, bench))
        : measurement.of(subject, bench);
  }

  /** A wire that does not stretch, between level supports. */
  private static SpanShape hanging(ValidationCase c) {
    Point first = new Point(0, 0, 0);
    Point last = new Point(c.parameters().number("spanMetres"), 0, 0);
    double weight = c.parameters().number("kilogramsPerMetre") * PhysicalConstants.STANDARD_GRAVITY;
    return Span.ofWeight(first, last, weight).ofSag(c.parameters().number("sagMetres"));
  }

  private static Complex real(double value) {
    return new Complex(value);
  }
}
