package org.spanwire.internal.halfspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.internal.math.VectorQuadrature;

class SommerfeldKernelTest {

  /**
   * Re ε, Im ε, k0ρ, k0ζ, then the four kernels over k0. mpmath, 30 digits: the defining integrals
   * over kρ on a path that leaves the real axis by min(k0, 6/ρ) into the upper half-plane, 40-point
   * Gauss–Legendre panels, tail cut at e^{−72}.
   */
  static double[][] highPrecision() {
    return new double[][] {
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        0,
        1e-05,
        -0.04222666550878745,
        -0.3994168484514209,
        100398.8681251448,
        -6305.622415967965,
        -50199.46564895535,
        3152.40091472562,
        0.0,
        0.0
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        0.0002,
        0.0001,
        -0.04266271792596074,
        -0.3992911646444189,
        4489.849826008363,
        -283.5377948262621,
        -2244.956940104712,
        141.3587161694636,
        -1387.480722525197,
        87.1194639720627
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        0.5,
        0.02,
        -0.2652225181032143,
        -0.2802005576908116,
        1.297233191911364,
        -1.50562772941216,
        -0.9081351486432242,
        0.453067928002576,
        -1.120269307407883,
        0.3927393415908401
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        0,
        0.6,
        -0.2197903384091136,
        -0.04042365767706616,
        0.9827585855299468,
        -1.095792802608753,
        -0.7180240486614494,
        0.4966204791394274,
        0.0,
        0.0
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        1.5,
        1.0,
        -0.0704713355055802,
        0.1703001746745945,
        -0.2770033771737269,
        -0.270760010981481,
        0.05336612926679877,
        0.3099236973096942,
        0.05573136720352775,
        0.2074998111076123
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        8,
        0.5,
        0.01008204814288819,
        0.1180077269626526,
        -0.03664852267068955,
        0.08243088241992657,
        -0.0007040566188705564,
        0.1027116348001192,
        0.04915078463935868,
        0.02226782285876496
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        3,
        0.03,
        0.2034731702023496,
        0.2445117969511714,
        -0.04200207389179004,
        0.3729356889300943,
        0.2011860460044572,
        0.09489566803121676,
        0.319537046497091,
        -0.05362233565326901
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        20,
        15,
        -0.01734069506939105,
        -0.002449589940058169,
        0.01168182346397332,
        -0.001201283070156757,
        -0.02544347441103681,
        -0.002871819101360244,
        -0.01090013225138641,
        -0.0006020468528107188
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        60,
        1.0,
        0.01551202849727644,
        -0.00484426549879197,
        0.01515098020641771,
        -0.003106389386599725,
        0.0155425318935125,
        -0.004378803093937477,
        0.0002629445761479631,
        -0.001554331666992711
      },
      // very dry 3, 1e-4 S/m, 7.1 MHz
      {
        3,
        -0.25317047285,
        300,
        200,
        0.001001683428865947,
        0.0008203139819340655,
        -0.0005216989244865849,
        -0.0003850281264618851,
        0.001395793591695777,
        0.001157419095161144,
        0.0005913342219337878,
        0.0005053361908583148
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        0,
        1e-05,
        -1.029999981097708,
        -1.752375945412305,
        184279.0106108715,
        -14217.67552578482,
        -92139.9977892493,
        7107.675050146477,
        0.0,
        0.0
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        0.0002,
        0.0001,
        -1.03212666913921,
        -1.749436668052892,
        8240.085869131085,
        -639.7724590312418,
        -4120.536871907666,
        318.7250723559296,
        -2546.691971265021,
        196.4292886032904
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        0.5,
        0.02,
        -1.403761981074454,
        -0.09137236826083831,
        1.381176249586163,
        -2.427930614388562,
        -1.546315934574559,
        0.9824994139319525,
        -1.418745972890537,
        1.16833593877682
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        0,
        0.6,
        -0.6933223121779472,
        0.2298433973582126,
        1.465963469726118,
        -1.765871020483814,
        -1.20735489199536,
        0.9521962718388708,
        0.0,
        0.0
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        1.5,
        1.0,
        0.0642535513691026,
        0.3920631458553,
        -0.3316234300389975,
        -0.4255622927711254,
        0.1459326207262662,
        0.4911208006486392,
        0.07811665605124189,
        0.174063931935403
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        8,
        0.5,
        0.01898886180726581,
        0.1185786794878673,
        -0.09414214722125313,
        0.002834902094139604,
        0.02043007556295072,
        0.1138582388862706,
        0.01937428568350633,
        0.03650613392314276
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        3,
        0.03,
        0.3200703171587446,
        0.0575625398783486,
        -0.1779110184508864,
        0.2223906707967186,
        0.3034882361595524,
        0.03276978656518349,
        0.1436787316618861,
        -0.02928612848811103
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        20,
        15,
        -0.03051007684100755,
        -0.001000981476065304,
        0.02625537086894554,
        -0.002948189848047063,
        -0.03732810759856018,
        -0.003009017653801691,
        -0.009204004972433607,
        -0.002597705660772201
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        60,
        1.0,
        0.01568179376443127,
        -0.00519263516015158,
        0.0164099214259296,
        0.003963092910933593,
        0.01547624343431788,
        -0.004820122998200919,
        0.0007321527327481769,
        -0.002186790904488308
      },
      // average 13, 5 mS/m, 7.1 MHz
      {
        13,
        -12.6585236425,
        300,
        200,
        0.001762268158864475,
        0.001270552850386608,
        -0.001437827717146309,
        -0.000812296389353135,
        0.002030826980804115,
        0.001630182955498781,
        0.0004037330111825172,
        0.000538988789311568
      },
      // fresh water 80, 3 mS/m, 14.2 MHz
      {
        80,
        -3.79755709275,
        0,
        1e-05,
        -0.1420516093438026,
        -5.031116868560151,
        195072.4189203517,
        -238.4100817207261,
        -97536.2781283176,
        116.4777909434113,
        0.0,
        0.0
      },
      // fresh water 80, 3 mS/m, 14.2 MHz
      {
        80,
        -3.79755709275,
        0.5,
        0.02,
        -2.680898765044484,
        0.8299608449025969,
        0.4712404310675944,
        -1.203609024443086,
        -1.712336400346225,
        0.9350176265915723,
        0.01997450656241772,
        1.794524321963948
      },
      // fresh water 80, 3 mS/m, 14.2 MHz
      {
        80,
        -3.79755709275,
        1.5,
        1.0,
        0.07578310450043945,
        0.484041732931569,
        -0.2103426372341169,
        -0.4640064164266023,
        0.1244899890448007,
        0.5276949356920016,
        0.06867440758946622,
        0.07943899514476376
      },
      // fresh water 80, 3 mS/m, 14.2 MHz
      {
        80,
        -3.79755709275,
        3,
        0.03,
        0.3397188552958677,
        0.04873712436974669,
        -0.2229047469225962,
        0.06423731576326908,
        0.322873243199744,
        0.0468423480771264,
        0.06427520534128442,
        -0.03339631038360307
      },
      // fresh water 80, 3 mS/m, 14.2 MHz
      {
        80,
        -3.79755709275,
        60,
        1.0,
        0.01577109113832603,
        -0.005185768091927485,
        0.005292203462473397,
        0.006745662235938596,
        0.01568888725460909,
        -0.005067224715399966,
        0.001194300282122471,
        -0.001359248226281058
      },
      // sea 70, 5 S/m, 3.65 MHz
      {
        70,
        -24623.4295512,
        0.0002,
        0.0001,
        -73.38629273862882,
        -69.52730755456267,
        8870.91814435934,
        -72.30362281877501,
        -4472.134712569414,
        1.363240473877041,
        -2763.46115193465,
        2.529513498008417
      },
      // sea 70, 5 S/m, 3.65 MHz
      {
        70,
        -24623.4295512,
        0,
        0.6,
        -1.348228498300958,
        0.9109063308781402,
        1.394125153907909,
        -0.9803443982593232,
        -1.375482239743114,
        0.9411819446077286,
        0.0,
        0.0
      },
      // sea 70, 5 S/m, 3.65 MHz
      {
        70,
        -24623.4295512,
        8,
        0.5,
        0.02012386376713897,
        0.1230415655465174,
        -0.02496795439506447,
        -0.1219386657993737,
        0.0200864371748433,
        0.1231287087764128,
        -0.00073494298840921,
        0.001419280872306002
      },
      // sea 70, 5 S/m, 3.65 MHz
      {
        70,
        -24623.4295512,
        20,
        15,
        -0.03945215527034393,
        -0.005059912456911795,
        0.03940527095617895,
        0.004824296831740785,
        -0.03964850491209063,
        -0.005290866367948938,
        -0.0002620308479523756,
        -0.0003080952512140245
      },
      // sea 70, 5 S/m, 3.65 MHz
      {
        70,
        -24623.4295512,
        300,
        200,
        0.002069134029117962,
        0.001825964095942607,
        -0.002068123005659493,
        -0.001801733174806176,
        0.002070532817433041,
        0.001845315151418759,
        2.09970041918738e-6,
        2.902797723885154e-5
      },
      // lossless 13
      {
        13,
        0.0,
        0,
        1e-05,
        -0.0003306473627603612,
        -1.548406575621581,
        171428.5710062453,
        -3.744370617698604,
        -85714.2857169256,
        0.8170029964769147,
        0.0,
        0.0
      },
      // lossless 13
      {
        13,
        0.0,
        0.5,
        0.02,
        -1.189329433964468,
        -0.7804750838974551,
        1.49706746890099,
        -2.744807207522424,
        -1.529513044850798,
        0.7950917200704135,
        -1.862860500939335,
        1.163029987905838
      },
      // lossless 13
      {
        13,
        0.0,
        1.5,
        1.0,
        -0.01636796316356273,
        0.4082221662422809,
        -0.299495976752588,
        -0.3478934544522236,
        0.1039339393607104,
        0.4768319454876478,
        0.137784865280536,
        0.1783419585356758
      },
      // lossless 13
      {
        13,
        0.0,
        3,
        0.03,
        0.2712568190171542,
        0.06030285962394109,
        -0.1449843740379589,
        0.1555285034212284,
        0.2953012859004532,
        0.05492362473768498,
        0.1210883611943864,
        -0.01845271008373982
      },
    };
  }

  @ParameterizedTest
  @MethodSource("highPrecision")
  void agreesWithHighPrecisionQuadrature(double[] row) {
    SommerfeldKernel kernel = new SommerfeldKernel(1, new Complex(row[0], row[1]));
    double[] out = new double[8];
    kernel.evaluate(row[2], row[3], out, 0);
    double[] expected = java.util.Arrays.copyOfRange(row, 4, 12);
    assertThat(difference(out, expected, row[2], row[3]))
        .isLessThan(SommerfeldKernel.DEFAULT_TOLERANCE);
  }

  /**
   * Two contours that share nothing but the spectral factors: J0 and J1 on one, Hankel functions on
   * the other.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1.0005, 1.5, 3, 13, 80})
  void verticalPathAndSaddlePathAgree(double permittivity) {
    Random random = new Random(11);
    for (int i = 0; i < 40; i++) {
      double loss = i % 2 == 0 ? 0 : Math.pow(10, -2 + 6 * random.nextDouble());
      double zeta = Math.pow(10, -4 + 5 * random.nextDouble());
      double rho = zeta * (0.3 + 2 * random.nextDouble());
      if (rho * rho > 12 * zeta) {
        continue;
      }
      double distance = Math.hypot(rho, zeta);
      double limit = 1e-10 / distance;
      ReflectionSpectrum spectrum = new ReflectionSpectrum(permittivity, -loss);
      double[] vertical = new double[8];
      double[] saddle = new double[8];
      new VerticalPath(spectrum).add(rho, zeta, limit, 26, new VectorQuadrature(8), vertical);
      new SaddlePath(spectrum).add(rho, zeta, limit, 26, new VectorQuadrature(8), saddle);
      turn(vertical, zeta);
      turn(saddle, distance);
      assertThat(difference(vertical, saddle, rho, zeta))
          .as("rho %s zeta %s loss %s", rho, zeta, loss)
          .isLessThan(3e-9);
    }
  }

  /**
   * Wires near the surface seen from far, up to k0R' = 1000, where only the saddle path is at hand:
   * two tolerances.
   */
  @ParameterizedTest
  @ValueSource(doubles = {3, 13, 80})
  void toleranceIsKeptAtGrazingIncidence(double permittivity) {
    Random random = new Random(12);
    for (int i = 0; i < 60; i++) {
      double loss = i % 3 == 0 ? 0 : Math.pow(10, -2 + 7 * random.nextDouble());
      double rho = Math.pow(10, -4 + 7 * random.nextDouble());
      double zeta = rho * Math.pow(10, -0.5 - 4 * random.nextDouble());
      Complex soil = new Complex(permittivity, -loss);
      double[] coarse = new double[8];
      double[] fine = new double[8];
      new SommerfeldKernel(1, soil, 1e-7).evaluate(rho, zeta, coarse, 0);
      new SommerfeldKernel(1, soil, 1e-11).evaluate(rho, zeta, fine, 0);
      assertThat(difference(coarse, fine, rho, zeta))
          .as("rho %s zeta %s loss %s", rho, zeta, loss)
          .isLessThan(1e-7);
    }
  }

  /**
   * To first order in 1/√ε the kernels of a good conductor differ from those of perfect ground by
   * 1/√|ε|.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1e4, 1e8, 1e14, 1e17})
  void tendsToPerfectGround(double loss) {
    SommerfeldKernel soil = new SommerfeldKernel(1, new Complex(1, -loss));
    PerfectGroundKernel perfect = new PerfectGroundKernel(1);
    double[] a = new double[8];
    double[] b = new double[8];
    for (double[] p : new double[][] {{0, 0.1}, {0.3, 0.5}, {2, 0.7}, {10, 1}, {100, 3}}) {
      soil.evaluate(p[0], p[1], a, 0);
      perfect.evaluate(p[0], p[1], b, 0);
      double distance = Math.hypot(p[0], p[1]);
      double bound = (10 + 3 * Math.max(distance, 1 / distance)) / Math.sqrt(loss) + 1e-9;
      assertThat(difference(a, b, p[0], p[1])).isLessThan(bound);
    }
  }

  @Test
  void vanishesInFreeSpaceAndInProportionToTheContrast() {
    double[] none = new double[8];
    double[] small = new double[8];
    double[] smaller = new double[8];
    for (double[] p : new double[][] {{0, 0.1}, {0.4, 0.5}, {2, 0.3}, {30, 60}}) {
      new SommerfeldKernel(1, Complex.ONE).evaluate(p[0], p[1], none, 0);
      for (double value : none) {
        assertThat(value).isZero();
      }
      new SommerfeldKernel(1, new Complex(1 + 1e-6, 0), 1e-12).evaluate(p[0], p[1], small, 0);
      new SommerfeldKernel(1, new Complex(1 + 0.5e-6, 0), 1e-12).evaluate(p[0], p[1], smaller, 0);
      double distance = Math.hypot(p[0], p[1]);
      for (int i = 0; i < 8; i++) {
        assertThat(Math.abs(small[i] - 2 * smaller[i]) * distance).isLessThan(2e-9);
        assertThat(Math.abs(small[i]) * distance).isLessThan(1e-4);
      }
    }
  }

  /**
   * Close to the image the kernels are those of statics: potential −K/R', vertical current +2K/R',
   * K = (ε − 1)/(ε + 1).
   */
  @Test
  void tendsToTheStaticImages() {
    Complex eps = new Complex(13, -12.66);
    Complex image = eps.subtract(1).divide(eps.add(1));
    double[] out = new double[8];
    for (double[] p : new double[][] {{0, 1e-5}, {1e-5, 2e-5}, {2e-5, 1e-6}}) {
      new SommerfeldKernel(1, eps).evaluate(p[0], p[1], out, 0);
      double distance = Math.hypot(p[0], p[1]);
      assertThat(Math.hypot(out[0], out[1]) * distance).isLessThan(3e-4);
      assertThat(new Complex(out[4], out[5]).multiply(distance).add(image).abs()).isLessThan(1e-3);
      assertThat(new Complex(out[2], out[3]).multiply(distance).subtract(image.multiply(2)).abs())
          .isLessThan(1e-3);
    }
  }

  @Test
  void kernelsScaleWithTheWavenumber() {
    Complex eps = new Complex(13, -5);
    double[] a = new double[8];
    double[] b = new double[9];
    new SommerfeldKernel(1, eps).evaluate(1.5, 0.4, a, 0);
    new SommerfeldKernel(0.25, eps).evaluate(6, 1.6, b, 1);
    for (int i = 0; i < 8; i++) {
      assertThat(4 * b[i + 1]).isCloseTo(a[i], within(1e-14));
    }
  }

  @Test
  void refusesWhatIsOutOfRange() {
    assertThatThrownBy(() -> new SommerfeldKernel(1, new Complex(0.9, 0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("real part of at least 1");
    assertThatThrownBy(() -> new SommerfeldKernel(1, new Complex(3, 0.1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SommerfeldKernel(Double.NaN, new Complex(3, 0)))
        .isInstanceOf(IllegalArgumentException.class);
    SommerfeldKernel kernel = new SommerfeldKernel(1, new Complex(3, 0));
    assertThatThrownBy(() -> kernel.evaluate(1, 0, new double[8], 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("height sum");
  }

  /** Turns kernels that carry e^{jr} back. */
  private static void turn(double[] values, double r) {
    for (int i = 0; i < 8; i += 2) {
      double re = values[i] * Math.cos(r) + values[i + 1] * Math.sin(r);
      values[i + 1] = values[i + 1] * Math.cos(r) - values[i] * Math.sin(r);
      values[i] = re;
    }
  }

  /** Largest difference of a kernel relative to 1/R'. */
  private static double difference(double[] a, double[] b, double rho, double zeta) {
    double worst = 0;
    for (int i = 0; i < 8; i += 2) {
      worst = Math.max(worst, Math.hypot(a[i] - b[i], a[i + 1] - b[i + 1]));
    }
    return worst * Math.hypot(rho, zeta);
  }
}
