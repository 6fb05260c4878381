package org.spanwire.internal.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Judge: EJML's pivoting LU of the same matrix. */
class ComplexSystemTest {

  private static ZMatrixRMaj symmetric(int n, double diagonal, long number) {
    Random random = new Random(number);
    ZMatrixRMaj a = new ZMatrixRMaj(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = i; j < n; j++) {
        double re = random.nextGaussian() + (i == j ? diagonal : 0);
        double im = random.nextGaussian();
        a.set(i, j, re, im);
        a.set(j, i, re, im);
      }
    }
    return a;
  }

  private static double worst(ZMatrixRMaj a, int leading, ComplexSystem system, long number) {
    Random random = new Random(number);
    double[] re = new double[leading];
    double[] im = new double[leading];
    ZMatrixRMaj b = new ZMatrixRMaj(leading, 1);
    for (int i = 0; i < leading; i++) {
      re[i] = random.nextGaussian();
      im[i] = random.nextGaussian();
      b.set(i, 0, re[i], im[i]);
    }
    ZMatrixRMaj block = new ZMatrixRMaj(leading, leading);
    for (int i = 0; i < leading; i++) {
      System.arraycopy(a.data, 2 * i * a.numCols, block.data, 2 * i * leading, 2 * leading);
    }
    LinearSolverDense<ZMatrixRMaj> judge = LinearSolverFactory_ZDRM.lu(leading);
    assertThat(judge.setA(block)).isTrue();
    ZMatrixRMaj x = new ZMatrixRMaj(leading, 1);
    judge.solve(b, x);
    system.solveLeading(leading, re, im);
    double size = 0;
    double difference = 0;
    for (int i = 0; i < leading; i++) {
      size = Math.max(size, Math.hypot(x.data[2 * i], x.data[2 * i + 1]));
      difference =
          Math.max(difference, Math.hypot(re[i] - x.data[2 * i], im[i] - x.data[2 * i + 1]));
    }
    return difference / size;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 47, 48, 49, 97, 300})
  void solvesTheWholeAndItsLeadingBlocks(int n) {
    ZMatrixRMaj a = symmetric(n, 3, n);
    ComplexSystem system = new ComplexSystem(a.copy());
    for (int leading : new int[] {n, Math.max(1, n / 2), Math.max(1, n - 1)}) {
      assertThat(worst(a, leading, system, 5)).isLessThan(1e-9);
    }
  }

  @Test
  void entriesOfVeryDifferentSizeKeepTheirAccuracy() {
    int n = 60;
    ZMatrixRMaj a = symmetric(n, 8, 11);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double scale = Math.pow(10, (i + j) / 6.0 - 10);
        a.data[2 * (i * n + j)] *= scale;
        a.data[2 * (i * n + j) + 1] *= scale;
      }
    }
    ComplexSystem system = new ComplexSystem(a.copy());
    double[] re = new double[n];
    double[] im = new double[n];
    for (int j = 0; j < n; j++) {
      re[j] = a.data[2 * (3 * n + j)];
      im[j] = a.data[2 * (3 * n + j) + 1];
    }
    system.solve(re, im);
    for (int j = 0; j < n; j++) {
      assertThat(re[j])
          .isCloseTo(j == 3 ? 1 : 0, within(1e-9 * Math.pow(10, (3 - j) / 6.0) + 1e-10));
    }
  }

  @Test
  void aVanishingPivotIsLeftToPivoting() {
    ZMatrixRMaj a = new ZMatrixRMaj(3, 3);
    double[][] rows = {{1, 1, 2}, {1, 1 + 1e-15, 1}, {2, 1, 1}};
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        a.set(i, j, rows[i][j], 0);
      }
    }
    double[] re = {4, 3, 4};
    double[] im = new double[3];
    new ComplexSystem(a).solve(re, im);
    assertThat(re).usingComparatorWithPrecision(1e-9).containsExactly(1, 1, 1);
  }

  @Test
  void refusesAZeroDiagonalAndASingularMatrix() {
    ZMatrixRMaj zero = new ZMatrixRMaj(2, 2);
    assertThatThrownBy(() -> new ComplexSystem(zero)).isInstanceOf(ArithmeticException.class);
    ZMatrixRMaj singular = new ZMatrixRMaj(2, 2);
    for (int i = 0; i < 4; i++) {
      singular.data[2 * i] = 1;
    }
    ComplexSystem system = new ComplexSystem(singular);
    assertThatThrownBy(() -> system.solve(new double[] {1, 2}, new double[2]))
        .isInstanceOf(ArithmeticException.class);
  }

  /** bᵀA⁻¹c for the whole matrix and a leading block, against solutions with refinement. */
  @Test
  void theInverseRootGivesBilinearForms() {
    int n = 60;
    ComplexSystem system = new ComplexSystem(symmetric(n, 12, 5));
    InverseRoot root = system.inverseRoot();
    int[] rows = {3, 17, 40};
    double[] b = {1, -2, 0.5};
    double[] tRe = new double[n];
    double[] tIm = new double[n];
    root.project(rows, b, tRe, tIm);
    for (int leading : new int[] {n, 45}) {
      double[] re = new double[leading];
      double[] im = new double[leading];
      for (int i = 0; i < rows.length; i++) {
        re[rows[i]] = b[i];
      }
      system.solveLeading(leading, re, im);
      double rightRe = 0;
      double rightIm = 0;
      for (int i = 0; i < rows.length; i++) {
        rightRe += b[i] * re[rows[i]];
        rightIm += b[i] * im[rows[i]];
      }
      double gotRe = 0;
      double gotIm = 0;
      for (int i = 0; i < leading; i++) {
        gotRe += tRe[i] * tRe[i] - tIm[i] * tIm[i];
        gotIm += 2 * tRe[i] * tIm[i];
      }
      assertThat(gotRe).isCloseTo(rightRe, within(1e-12));
      assertThat(gotIm).isCloseTo(rightIm, within(1e-12));
    }
  }

  /** [[1, 1], [1, 1 + 1e-13]] leaves a pivot of rounding: no accurate root. */
  @Test
  void anInverseThatNeedsPivotingIsRefused() {
    ZMatrixRMaj a = new ZMatrixRMaj(3, 3);
    double[][] entries = {{1, 1, 2}, {1, 1 + 1e-15, 3}, {2, 3, 1}};
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        a.set(i, j, entries[i][j], 0);
      }
    }
    ComplexSystem system = new ComplexSystem(a);
    assertThatThrownBy(system::inverseRoot).isInstanceOf(ArithmeticException.class);
  }
}
