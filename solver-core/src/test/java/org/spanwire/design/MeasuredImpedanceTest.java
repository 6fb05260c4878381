package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.LumpedImpedance;

class MeasuredImpedanceTest {

  @TempDir Path directory;

  private LumpedImpedance read(String file, String content) throws IOException {
    Files.writeString(directory.resolve(file), content);
    Path design = directory.resolve("design.yaml");
    Files.writeString(
        design,
        Designs.spoilt(
            "feed-chain",
            "fittings:\n  part: {wire: radiator, at: 3 m, impedance: part.s1p}\nfeed-chain"));
    return DesignReader.read(design).antenna().fittings().get(0).impedance();
  }

  /** S = (Z − R)/(Z + R) at R = 50 ohm: 0.2 is 75 ohm, 1 is open, −1 is a short. */
  @Test
  void readsAOnePort() throws IOException {
    LumpedImpedance part = read("part.s1p", "# MHz S RI R 50\n7 0.2 0\n14 1 0\n21 -1 0\n28 0 1\n");
    assertThat(part.at(7e6).subtract(new Complex(75)).abs()).isLessThan(1e-12);
    assertThat(part.at(14e6)).isEqualTo(Complex.INF);
    assertThat(part.at(21e6)).isEqualTo(Complex.ZERO);
    assertThat(part.at(28e6).subtract(new Complex(0, 50)).abs()).isLessThan(1e-12);
  }

  @Test
  void hasNoAnswerOutsideTheMeasurement() throws IOException {
    LumpedImpedance part = read("part.s1p", "# MHz S RI R 50\n7 0.2 0\n14 0.3 0\n");
    assertThatExceptionOfType(GeometryException.class)
        .isThrownBy(() -> part.at(15e6))
        .withMessageContaining("frequency 15 MHz lies outside")
        .withMessageContaining("from 7 MHz to 14 MHz; measure over a wider range")
        .satisfies(e -> assertThat(e.subjectName()).isEqualTo("part"));
  }

  @Test
  void placesAFaultInTheFileItLiesIn() {
    assertThatExceptionOfType(DesignException.class)
        .isThrownBy(() -> read("part.s1p", "# MHz S RI R 50\n7 0.2 zero\n"))
        .satisfies(e -> assertThat(e.file()).endsWith("part.s1p"))
        .satisfies(e -> assertThat(e.line()).isEqualTo(2));
  }

  @Test
  void placesAMissingFileInTheDesign() {
    assertThatExceptionOfType(DesignException.class)
        .isThrownBy(() -> read("other.s1p", ""))
        .withMessageContaining("part.s1p: no such file")
        .satisfies(e -> assertThat(e.file()).endsWith("design.yaml"))
        .satisfies(e -> assertThat(e.line()).isPositive());
  }

  @Test
  void needsOnePort() {
    assertThatExceptionOfType(DesignException.class)
        .isThrownBy(
            () ->
                read(
                    "part.s1p",
                    """
                    [Version] 2.0
                    # MHz S RI R 50
                    [Number of Ports] 2
                    [Two-Port Data Order] 12_21
                    [Number of Frequencies] 1
                    [Network Data]
                    7 0 0 1 0 1 0 0 0
                    [End]
                    """))
        .withMessageContaining("impedance of fitting 'part' has 2 ports; expected a file of one");
  }
}
