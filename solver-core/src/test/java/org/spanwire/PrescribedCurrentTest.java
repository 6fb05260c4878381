package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.result.Direction;
import org.spanwire.result.EffectiveLength;
import org.spanwire.result.NearField;
import org.spanwire.unit.PhysicalConstants;

/** Prescribed currents against closed forms and single integrals. */
class PrescribedCurrentTest {

  /** At this frequency the wavelength is 1 m. */
  private static final double ONE_METRE = PhysicalConstants.SPEED_OF_LIGHT;

  private static final double ETA = PhysicalConstants.IMPEDANCE_OF_FREE_SPACE;

  /** A dipole with the current sin k(h − |z|) about a centre along a unit vector. */
  private static PrescribedCurrent dipole(
      double hertz, Ground ground, double length, double radius, Point centre, Point unit) {
    double k = PhysicalConstants.wavenumber(hertz);
    Wire wire =
        Wire.of(
            "dipole",
            Conductor.perfect(radius),
            along(centre, unit, -0.5 * length),
            centre,
            along(centre, unit, 0.5 * length));
    return PrescribedCurrent.builder(hertz)
        .ground(ground)
        .wire(wire, s -> new Complex(Math.sin(k * (0.5 * length - Math.abs(s - 0.5 * length)))))
        .build();
  }

  private static Point along(Point from, Point unit, double s) {
    return new Point(from.x() + s * unit.x(), from.y() + s * unit.y(), from.z() + s * unit.z());
  }

  private static final Point ORIGIN = new Point(0, 0, 0);
  private static final Point X = new Point(1, 0, 0);
  private static final Point Z = new Point(0, 0, 1);

  /** A uniform current of 1 A. */
  private static PrescribedCurrent uniform(
      double hertz, Ground ground, double length, double radius, Point centre, Point unit) {
    Wire wire =
        Wire.of(
            "short",
            Conductor.perfect(radius),
            along(centre, unit, -0.5 * length),
            along(centre, unit, 0.5 * length));
    return PrescribedCurrent.builder(hertz).ground(ground).wire(wire, s -> Complex.ONE).build();
  }

  private static Complex impedance(PrescribedCurrent a, PrescribedCurrent b) {
    return a.reaction(b).negate();
  }

  /**
   * Induced-EMF impedance with the closed-form field of the axis at ρ = a, by quadrature (mpmath);
   * Schelkunoff, Balanis 2016 chapter 8.
   */
  @ParameterizedTest
  @CsvSource({
    "0.25, 0.0001, 13.43118991, -722.947612",
    "0.25, 0.001, 13.43108429, -448.1817961",
    "0.45, 0.0001, 54.29182804, -94.46584147",
    "0.45, 0.001, 54.29139501, -51.0972082",
    "0.48, 0.0001, 64.93696731, -12.75439061",
    "0.48, 0.001, 64.93644784, 4.274665007",
    "0.5, 0.0001, 73.07900437, 42.47744356",
    "0.5, 0.001, 73.07841852, 42.13857358",
    "0.75, 0.0001, 371.3600906, 1069.153191",
    "0.75, 0.001, 371.3570013, 791.6789021"
  })
  void selfImpedance(double length, double radius, double resistance, double reactance) {
    PrescribedCurrent dipole = dipole(ONE_METRE, Ground.freeSpace(), length, radius, ORIGIN, Z);
    double terminal = Math.sin(Math.PI * length);
    Complex z = impedance(dipole, dipole).divide(terminal * terminal);
    Complex expected = new Complex(resistance, reactance);
    assertThat(z.subtract(expected).abs()).isLessThan(1e-7 * expected.abs());
  }

  /**
   * Carter 1932, Balanis 2016 eq. 8-69 and quadrature of the closed-form field; parallel half-wave
   * dipoles by side distance and axial offset. The row of touching ends belongs to a radius of 1e-6
   * λ.
   */
  @ParameterizedTest
  @CsvSource({
    "0.01, 0, 73.01984632, 38.76747331",
    "0.05, 0, 71.60750745, 24.25189627",
    "0.1, 0, 67.28703292, 7.532577521",
    "0.125, 0, 64.1378242, -0.07277918505",
    "0.15, 0, 60.39280326, -7.091565565",
    "0.2, 0, 51.36110129, -19.15855869",
    "0.25, 0, 40.75750405, -28.32944006",
    "0.3, 0, 29.23593703, -34.41475309",
    "0.4, 0, 6.212384795, -37.40369611",
    "0.5, 0, -12.52340745, -29.90793593",
    "0.6, 0, -23.29661658, -15.8619363",
    "0.75, 0, -22.48124397, 6.627643842",
    "0.8, 0, -18.47944446, 12.24897561",
    "1, 0, 4.008855693, 17.72975529",
    "1.25, 0, 14.54578837, -2.66058296",
    "1.5, 0, -1.886004997, -12.29584447",
    "2, 0, 1.083466182, 9.35797728",
    "0, 0.5, 26.39597998, 20.14799225",
    "0, 0.55, 20.27196493, 2.526783946",
    "0, 0.6, 14.66410387, -4.011560533",
    "0, 0.75, 2.044259292, -7.965454924",
    "0, 1.0, -4.115930558, -0.7215541823",
    "0, 1.5, 1.73334844, 0.1914986138",
    "0.25, 0.25, 30.87699609, -18.39007444",
    "0.25, 0.5, 10.62552063, -12.516552",
    "0.5, 0.25, -12.88769948, -22.12899567",
    "0.5, 0.5, -11.88234958, -7.839383529",
    "0.5, 1, -0.7026040991, 4.049938957",
    "1, 0.5, 9.027451636, 8.895931203",
    "1, 1, 4.055810969, -4.202290722"
  })
  void mutualImpedance(double beside, double along, double resistance, double reactance) {
    PrescribedCurrent one = dipole(ONE_METRE, Ground.freeSpace(), 0.5, 1e-6, ORIGIN, Z);
    PrescribedCurrent other =
        dipole(ONE_METRE, Ground.freeSpace(), 0.5, 1e-6, new Point(beside, 0, along), Z);
    Complex expected = new Complex(resistance, reactance);
    assertThat(impedance(one, other).subtract(expected).abs()).isLessThan(1e-6 * 73);
  }

  /**
   * Elementary dipoles over soil at 7.1 MHz: single Sommerfeld integrals for R/R0 and ΔX/R0 (Vogler
   * and Noble, NBS Monograph 72, 1964), here as a short length of wire. Tolerance 0.1 %.
   */
  @ParameterizedTest
  @CsvSource({
    "70, 5, 0.05, 2.039171951, 14.28478816, 0.1367249312, 5.246331168",
    "70, 5, 0.1, 1.875050565, 2.268876317, 0.3147162308, 0.7791768585",
    "70, 5, 0.25, 1.3013336, -0.1007198147, 1.155983831, 0.4211889339",
    "70, 5, 0.5, 0.9247961637, 0.01310817999, 0.9595274844, -0.2292063197",
    "30, 0.01, 0.05, 3.354044359, 13.87015159, 1.172056892, 5.534493293",
    "30, 0.01, 0.1, 2.155328767, 1.980469852, 0.7161654522, 0.761101852",
    "30, 0.01, 0.25, 1.233596601, -0.1316589402, 1.151908915, 0.2891586025",
    "30, 0.01, 0.5, 0.9430342164, 0.02019771506, 0.9522481001, -0.1662219231",
    "13, 0.005, 0.05, 4.018544017, 13.32440589, 1.55630669, 5.509003779",
    "13, 0.005, 0.1, 2.267817257, 1.818287523, 0.8713230437, 0.7586493757",
    "13, 0.005, 0.25, 1.202692794, -0.1444455651, 1.153763625, 0.23505668",
    "13, 0.005, 0.5, 0.950859547, 0.02329223672, 0.9475199593, -0.1406235867",
    "15, 0.001, 0.05, 3.288705292, 12.72972953, 1.432240194, 5.203665676",
    "15, 0.001, 0.1, 2.103689145, 1.729434443, 0.8768143112, 0.628338989",
    "15, 0.001, 0.25, 1.190580132, -0.1157789756, 1.104043295, 0.2290421945",
    "15, 0.001, 0.5, 0.9540589723, 0.01613793469, 0.970950165, -0.1341922481",
    "3, 0.0001, 0.05, 2.58501517, 7.363643885, 1.406537279, 3.187423516",
    "3, 0.0001, 0.1, 1.731464269, 0.9801856008, 1.057361156, 0.4041558832",
    "3, 0.0001, 0.25, 1.093565467, -0.08130404909, 1.054785264, 0.08854861234",
    "3, 0.0001, 0.5, 0.9787314821, 0.01176453188, 0.9848491109, -0.05854254882",
    "80, 0.003, 0.05, 2.829114795, 13.86247427, 0.9512040959, 5.279945954",
    "80, 0.003, 0.1, 2.008504569, 2.028625974, 0.590595317, 0.6817723282",
    "80, 0.003, 0.25, 1.249935138, -0.1082816707, 1.125720069, 0.3312769859",
    "80, 0.003, 0.5, 0.9385683743, 0.0142892947, 0.9675743959, -0.1843890025"
  })
  void elementaryDipoles(
      double epsilon,
      double sigma,
      double height,
      double verticalR,
      double verticalX,
      double horizontalR,
      double horizontalX) {
    double hertz = 7.1e6;
    double wavelength = PhysicalConstants.wavelength(hertz);
    double length = 5e-4 * wavelength;
    double r0 = ETA * 2 * Math.PI / 3 * 5e-4 * 5e-4;
    Point centre = new Point(0, 0, height * wavelength);
    Soil soil = Soil.of(epsilon, sigma);
    for (boolean vertical : new boolean[] {true, false}) {
      PrescribedCurrent over = uniform(hertz, soil, length, 0.1 * length, centre, vertical ? Z : X);
      PrescribedCurrent free = over.over(Ground.freeSpace());
      Complex change = impedance(over, over).subtract(impedance(free, free)).divide(r0);
      double resistance = vertical ? verticalR : horizontalR;
      double reactance = vertical ? verticalX : horizontalX;
      assertThat(1 + change.getReal()).isCloseTo(resistance, within(1e-3 * resistance));
      assertThat(change.getImaginary()).isCloseTo(reactance, within(1e-3 * Math.abs(reactance)));
    }
  }

  /** Horizontal half-wave dipole over soil, Z(H) − Z(∞) by the same integrals; 0.1 %. */
  @ParameterizedTest
  @CsvSource({
    "70, 5, 7100000, 0.1, 23.13028101, 62.10432869",
    "13, 0.005, 7100000, 0.02, 80.09973133, 79.02073394",
    "3, 0.0001, 7100000, 0.5, 71.70921579, 38.1252851"
  })
  void halfWaveDipoleOverSoil(
      double epsilon,
      double sigma,
      double hertz,
      double height,
      double resistance,
      double reactance) {
    double wavelength = PhysicalConstants.wavelength(hertz);
    Point centre = new Point(0, 0, height * wavelength);
    PrescribedCurrent over =
        dipole(hertz, Soil.of(epsilon, sigma), 0.5 * wavelength, 1e-5 * wavelength, centre, X);
    PrescribedCurrent free = over.over(Ground.freeSpace());
    Complex change = impedance(over, over).subtract(impedance(free, free));
    // Zero radius, free space: 73.07901029 + j42.51511471 ohm.
    Complex expected = new Complex(resistance - 73.07901029, reactance - 42.51511471);
    assertThat(change.subtract(expected).abs()).isLessThan(1e-6 * expected.abs());
  }

  /** Horizontal half-wave dipole at 7.1 MHz with Fresnel reflection, gain broadside; 0.02 dB. */
  @ParameterizedTest
  @CsvSource({
    "13, 0.005, 0.1, 4.516742905, -8.425341854, -2.9210716, -0.01883921353, 2.418895959, 4.516742905",
    "13, 0.005, 0.25, 5.993440061, -3.595703439, 1.622754802, 4.077140977, 5.638165897, 5.824813097",
    "13, 0.005, 0.5, 7.595083792, 2.678622168, 6.862920124, 7.544686406, 4.836178754, -5.863338318",
    "13, 0.005, 1, 7.826645716, 6.988346206, 5.933027595, -11.11126497, 6.859053465, -6.039775857",
    "70, 5, 0.1, 8.572162174, -6.015846522, -0.1881446525, 3.023649545, 5.87539651, 8.572162174",
    "70, 5, 0.25, 7.418898287, -3.894704628, 1.667215217, 4.462731065, 6.499894229, 7.418443072",
    "70, 5, 0.5, 8.400184368, 2.734726999, 7.302001022, 8.40007069, 6.374345631, -32.65119424",
    "70, 5, 1, 8.228808316, 7.197615252, 6.67096899, -38.82929315, 7.895161692, -32.83606262",
    "30, 0.01, 0.1, 5.264644246, -8.220475651, -2.610345807, 0.3938211463, 2.968490107, 5.264644246",
    "30, 0.01, 0.25, 6.39896787, -3.73946011, 1.593113016, 4.162316711, 5.885090714, 6.319581248",
    "30, 0.01, 0.5, 7.830434535, 2.665171654, 6.980272788, 7.807980921, 5.33908304, -8.720272516",
    "30, 0.01, 1, 7.949600388, 7.045678828, 6.182072823, -14.26376906, 7.160939742, -8.89601666",
    "15, 0.001, 0.1, 3.646737325, -9.167990534, -3.712331192, -0.8456599262, 1.560984118, 3.646737325",
    "15, 0.001, 0.25, 5.862281906, -3.797516028, 1.390084165, 3.838126891, 5.430503439, 5.768142389",
    "15, 0.001, 0.5, 7.302808381, 2.335901478, 6.52351859, 7.27187695, 4.871112314, -5.458508656",
    "15, 0.001, 1, 7.679312514, 6.816362799, 5.905335256, -10.47046162, 6.489654462, -5.574617118",
    "3, 0.0001, 0.1, 2.040932846, -8.200812695, -3.356441065, -1.031000837, 0.728090931, 2.040932846",
    "3, 0.0001, 0.25, 4.247898867, -3.470958314, 1.125845523, 3.071389587, 4.116525713, 4.021941368",
    "3, 0.0001, 0.5, 5.890395452, 1.833950101, 5.444600312, 5.764256285, 3.405562307, -0.4841058119",
    "3, 0.0001, 1, 6.858598434, 6.216530307, 4.855610222, -3.859659542, 4.796991227, -0.5382765547"
  })
  void gainOfHorizontalDipoles(
      double epsilon,
      double sigma,
      double height,
      double peak,
      double at10,
      double at20,
      double at30,
      double at45,
      double at90) {
    double wavelength = PhysicalConstants.wavelength(7.1e6);
    PrescribedCurrent current =
        dipole(
            7.1e6,
            Soil.of(epsilon, sigma),
            0.5 * wavelength,
            1e-6 * wavelength,
            new Point(0, 0, height * wavelength),
            X);
    assertThat(current.peakGain().gainDbi()).isCloseTo(peak, within(0.001));
    double[] elevation = {10, 20, 30, 45, 90};
    double[] expected = {at10, at20, at30, at45, at90};
    for (int i = 0; i < elevation.length; i++) {
      assertThat(current.gainDbi(new Direction(elevation[i], 90)))
          .isCloseTo(expected[i], within(0.001));
    }
  }

  /** Vertical half-wave dipole, the same. */
  @ParameterizedTest
  @CsvSource({
    "13, 0.005, 7100000, 0.3, 0.2108615799, -4.247703744, -0.8214111654, 0.03485740087, -2.210104321",
    "13, 0.005, 14200000, 0.3, 0.5317208194, -4.240669558, -0.6758483438, 0.4290302251, -1.520638939",
    "70, 5, 7100000, 0.3, 6.517283836, 6.487118757, 6.293405652, 4.378600752, 0.7470264003",
    "70, 5, 14200000, 0.3, 6.277343866, 6.188425184, 6.120970826, 4.265113254, 0.6422787976",
    "3, 0.0001, 7100000, 0.3, 0.7012900801, -5.962749787, -1.632726317, 0.6740078069, -0.02109399723",
    "3, 0.0001, 14200000, 0.3, 0.7526810041, -5.918254773, -1.587157981, 0.7244977759, 0.0344454846"
  })
  void gainOfVerticalDipoles(
      double epsilon,
      double sigma,
      double hertz,
      double height,
      double peak,
      double at5,
      double at10,
      double at20,
      double at30) {
    double wavelength = PhysicalConstants.wavelength(hertz);
    PrescribedCurrent current =
        dipole(
            hertz,
            Soil.of(epsilon, sigma),
            0.5 * wavelength,
            1e-6 * wavelength,
            new Point(0, 0, height * wavelength),
            Z);
    assertThat(current.peakGain().gainDbi()).isCloseTo(peak, within(0.001));
    double[] elevation = {5, 10, 20, 30};
    double[] expected = {at5, at10, at20, at30};
    for (int i = 0; i < elevation.length; i++) {
      assertThat(current.gainDbi(new Direction(elevation[i], 0)))
          .isCloseTo(expected[i], within(0.001));
    }
  }

  /**
   * Poynting's flux through z = 0 under a vertical half-wave dipole against the power absorbed,
   * which is found from plane waves. Beyond the last ring the flux falls like 1/ρ⁴.
   */
  @Test
  void fluxThroughTheSurface() {
    double hertz = 7.1e6;
    double wavelength = PhysicalConstants.wavelength(hertz);
    PrescribedCurrent current =
        dipole(
            hertz,
            Soil.of(13, 0.005),
            0.5 * wavelength,
            1e-6 * wavelength,
            new Point(0, 0, 0.3 * wavelength),
            Z);
    GaussLegendre rule = GaussLegendre.of(8);
    double inner = 0;
    double outer = 0.1 * wavelength;
    double flux = 0;
    while (inner < 40 * wavelength) {
      for (int i = 0; i < rule.size(); i++) {
        double rho = inner + 0.5 * (1 + rule.node(i)) * (outer - inner);
        flux += 0.5 * (outer - inner) * rule.weight(i) * 2 * Math.PI * rho * down(current, rho);
      }
      inner = outer;
      outer *= 1.6;
    }
    flux += Math.PI * inner * inner * down(current, inner);
    assertThat(flux).isCloseTo(current.absorbedPower(), within(3e-4 * flux));
  }

  private static double down(PrescribedCurrent current, double rho) {
    NearField there = current.nearField(new Point(rho, 0, 0));
    return -there.ex().multiply(there.hy().conjugate()).getReal();
  }

  @Test
  void reactionIsReciprocal() {
    double hertz = 14.2e6;
    Soil soil = Soil.of(13, 0.005);
    PrescribedCurrent a =
        uniform(hertz, soil, 1.5, 1e-3, new Point(0, 0, 1.5), new Point(0.6, 0, 0.8));
    PrescribedCurrent b =
        dipole(hertz, soil, 4, 3e-3, new Point(5, 3, 2), new Point(-0.48, 0.6, 0.64));
    for (Ground ground : new Ground[] {soil, Ground.perfect(), Ground.freeSpace()}) {
      Complex there = a.over(ground).reaction(b.over(ground));
      Complex back = b.over(ground).reaction(a.over(ground));
      assertThat(there.subtract(back).abs()).isLessThan(1e-7 * there.abs());
    }
  }

  /** Reaction with itself and radiated plus absorbed power are one resistance. */
  @Test
  void reactionGivesThePower() {
    double hertz = 14.2e6;
    PrescribedCurrent current =
        dipole(hertz, Soil.of(13, 0.005), 8, 1e-3, new Point(0, 0, 5), new Point(0.6, 0, 0.8));
    double resistance = impedance(current, current).getReal();
    assertThat(current.radiatedPower() + current.absorbedPower())
        .isCloseTo(resistance, within(1e-6 * resistance));
  }

  /** Kraus, Antennas: effective height λ/π and aperture 0.130580 λ² of the half-wave dipole. */
  @Test
  void effectiveLengthOfTheHalfWaveDipole() {
    PrescribedCurrent dipole = dipole(ONE_METRE, Ground.freeSpace(), 0.5, 1e-7, ORIGIN, Z);
    EffectiveLength length = dipole.effectiveLength(new Direction(0, 70), Complex.ONE);
    // θ points downward at the horizon, positive current upward.
    assertThat(length.theta().getReal()).isCloseTo(-1 / Math.PI, within(1e-9));
    assertThat(length.theta().getImaginary()).isCloseTo(0, within(1e-9));
    assertThat(length.phi().abs()).isLessThan(1e-12);
    double aperture =
        length.magnitude() * length.magnitude() * ETA / (4 * length.sourceImpedance().getReal());
    assertThat(aperture).isCloseTo(0.130580, within(1e-6));
    assertThat(length.openCircuitVoltage(new Complex(-2), Complex.ONE).getReal())
        .isCloseTo(2 / Math.PI, within(1e-9));
  }

  @Test
  void directivityHasAnError() {
    PrescribedCurrent dipole = dipole(ONE_METRE, Ground.freeSpace(), 0.5, 1e-7, ORIGIN, Z);
    // Balanis 2016, section 4.6: 1.640922.
    assertThat(dipole.directivityDbi()).isCloseTo(10 * Math.log10(1.640922), within(2e-6));
    assertThat(dipole.directivityErrorDb()).isBetween(0.0, 1e-5);
  }

  @Test
  void mistakesAreRefused() {
    Wire wire = Wire.of("w", Conductor.perfect(1e-3), new Point(0, 0, -1), new Point(0, 0, 1));
    assertThatThrownBy(() -> PrescribedCurrent.builder(0))
        .hasMessageContaining("must be positive and finite");
    assertThatThrownBy(() -> PrescribedCurrent.builder(1e7).build())
        .hasMessageContaining("add at least one");
    assertThatThrownBy(
            () ->
                PrescribedCurrent.builder(1e7)
                    .wire(wire, s -> s < 0.3 ? Complex.ONE : Complex.ZERO)
                    .build())
        .hasMessageContaining("jumps near 0.");
    assertThatThrownBy(() -> PrescribedCurrent.builder(1e7).wire(wire, s -> Complex.NaN).build())
        .hasMessageContaining("must be finite");
    assertThatThrownBy(
            () ->
                PrescribedCurrent.builder(1e7)
                    .ground(Soil.of(13, 0.005))
                    .wire(wire, s -> Complex.ONE)
                    .build())
        .hasMessageContaining("raise them");
    PrescribedCurrent current = PrescribedCurrent.builder(1e7).wire(wire, s -> Complex.ONE).build();
    assertThatThrownBy(() -> current.nearField(new Point(0, 5e-4, 0)))
        .hasMessageContaining("outside the conductors");
    PrescribedCurrent other = PrescribedCurrent.builder(2e7).wire(wire, s -> Complex.ONE).build();
    assertThatThrownBy(() -> current.reaction(other)).hasMessageContaining("must be the same");
  }
}
