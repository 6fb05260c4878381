package org.spanwire.medium;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The wave along the surface of flat soil. */
class SurfaceWaveTest {

  /** F(p) for p = |p| e^{−jb}: mpmath, 25 digits, 1 − j√(πp) e^{−p} erfc(j√p). */
  @ParameterizedTest
  @CsvSource({
    "0.01, 0, 0.9801328015, -0.175481764",
    "0.1, 0, 0.8128149055, -0.507160578",
    "0.3, 0, 0.5067562892, -0.7191959269",
    "0.5, 0, 0.275221541, -0.7601734505",
    "1, 0, -0.07615901383, -0.6520493322",
    "2, 0, -0.2799761491, -0.3392352475",
    "3, 0, -0.2612693429, -0.1528453103",
    "5, 0, -0.1570508894, -0.02670468927",
    "10, 0, -0.06075161986, -0.0002544662075",
    "20, 0, -0.02716357695, -1.633805283e-08",
    "50, 0, -0.01031615649, -2.417329452e-21",
    "100, 0, -0.005076943752, -6.593662989e-43",
    "1000, 0, -0.0005007518816, -0",
    "0.01, 10, 0.9654357397, -0.1714392352",
    "0.1, 10, 0.7796409119, -0.4762647288",
    "0.3, 10, 0.4848966181, -0.6524219945",
    "0.5, 10, 0.2770103661, -0.6783829115",
    "1, 10, -0.02371556818, -0.5781877156",
    "2, 10, -0.2005320759, -0.3240976746",
    "3, 10, -0.2002059983, -0.1729170252",
    "5, 10, -0.1344533501, -0.05710399287",
    "10, 10, -0.05856270416, -0.01321202383",
    "20, 10, -0.02662398672, -0.005136640306",
    "50, 10, -0.01014384648, -0.001847345652",
    "100, 10, -0.004996191764, -0.0008948744957",
    "1000, 10, -0.0004931102748, -8.708154568e-05",
    "0.01, 30, 0.9381164588, -0.1600698203",
    "0.1, 30, 0.725401271, -0.4135419138",
    "0.3, 30, 0.4563056406, -0.5345677022",
    "0.5, 30, 0.2871149613, -0.5425136541",
    "1, 30, 0.05826313057, -0.4612584707",
    "2, 30, -0.08423858063, -0.2888102082",
    "3, 30, -0.1051567029, -0.1850952428",
    "5, 30, -0.08648705371, -0.09149214463",
    "10, 30, -0.0462713647, -0.03391875662",
    "20, 30, -0.02255631315, -0.01439744445",
    "50, 30, -0.008809635537, -0.005275763306",
    "100, 30, -0.004367591477, -0.002566885209",
    "1000, 30, -0.0004333876986, -0.0002506513998",
    "0.01, 60, 0.9030791814, -0.1362863175",
    "0.1, 60, 0.6682135914, -0.3213893283",
    "0.3, 60, 0.435873253, -0.3899921583",
    "0.5, 60, 0.3065027138, -0.3873923007",
    "1, 60, 0.1401518903, -0.3319307092",
    "2, 60, 0.02536617017, -0.2304109149",
    "3, 60, -0.008514052297, -0.1678072551",
    "5, 60, -0.02318204482, -0.1030352654",
    "10, 60, -0.01933113251, -0.04907948021",
    "20, 60, -0.01131489727, -0.02323183238",
    "50, 60, -0.004834533183, -0.008919071832",
    "100, 60, -0.002460593831, -0.004395019544",
    "1000, 60, -0.0002496231217, -0.0004336622152",
    "0.01, 90, 0.8757948142, -0.1065789738",
    "0.1, 90, 0.6318964322, -0.2344529623",
    "0.3, 90, 0.4282867617, -0.2729915466",
    "0.5, 90, 0.3232372933, -0.2682329534",
    "1, 90, 0.1904745183, -0.2321993901",
    "2, 90, 0.090796501, -0.1710865813",
    "3, 90, 0.05275774126, -0.1325782618",
    "5, 90, 0.02384472887, -0.08968458549",
    "10, 90, 0.006958872988, -0.04835149556",
    "20, 90, 0.001836261764, -0.02477413553",
    "50, 90, 0.0002989601985, -0.009985093182",
    "100, 90, 7.493453664e-05, -0.004998127943",
    "1000, 90, 7.499934377e-07, -0.000499998125"
  })
  void attenuation(double size, double degrees, double re, double im) {
    double b = Math.toRadians(degrees);
    Complex p = new Complex(size * Math.cos(b), -size * Math.sin(b));
    Complex expected = new Complex(re, im);
    assertThat(SurfaceWave.attenuation(p).subtract(expected).abs())
        .isLessThan(1e-8 * expected.abs());
  }

  @Test
  void seriesAndClosedFormMeet() {
    for (double b : new double[] {0, 0.5, 1.5}) {
      Complex near = new Complex(49.999999 * Math.cos(b), -49.999999 * Math.sin(b));
      Complex far = new Complex(50.000001 * Math.cos(b), -50.000001 * Math.sin(b));
      Complex ratio = SurfaceWave.attenuation(near).divide(SurfaceWave.attenuation(far));
      assertThat(ratio.subtract(1).abs()).isLessThan(1e-7);
    }
  }

  @Test
  void farAwayItFallsWithTheSquareOfDistance() {
    Soil soil = Soil.of(15, 0.001);
    double near = SurfaceWave.fieldStrength(soil, 28.5e6, 1e5, 300);
    double far = SurfaceWave.fieldStrength(soil, 28.5e6, 1e6, 300);
    assertThat(near / far).isCloseTo(100, within(0.1));
  }

  /**
   * Flat-earth fields in mV/m at 1 km and 10 km of 1 kW from a short vertical, the same formula in
   * mpmath. Directivity 3 gives √(3 η0 · 1 kW/4π) = 299.896 V, which ITU-R P.341 rounds to 300 V.
   */
  @ParameterizedTest
  @CsvSource({
    "70, 5, 1.9e6, 299.8336, 29.93289",
    "30, 0.01, 7.1e6, 78.6766, 0.84639",
    "15, 0.001, 1.9e6, 104.4583, 1.47778",
    "3, 0.0001, 28.5e6, 2.2584, 0.02259"
  })
  void fieldStrengths(double epsilon, double sigma, double hertz, double atOne, double atTen) {
    Soil soil = Soil.of(epsilon, sigma);
    assertThat(1e3 * SurfaceWave.fieldStrength(soil, hertz, 1e3, 299.89624))
        .isCloseTo(atOne, within(3e-6 * atOne));
    assertThat(1e3 * SurfaceWave.fieldStrength(soil, hertz, 1e4, 299.89624))
        .isCloseTo(atTen, within(1e-6 * atTen + 5e-6));
  }
}
