package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JunitXmlTest {

  private static String of(String title) {
    return of(title, "kit.yaml");
  }

  private static String of(String title, String file) {
    return JunitXml.of(
        new CheckReport(
            List.of(
                new CheckReport.Checked(
                    MadeUpCheck.design(title, file),
                    List.of(
                        MadeUpCheck.keptSwr(),
                        MadeUpCheck.failedEfficiency(),
                        MadeUpCheck.undecidedYield()))),
            "1.2.3",
            0.001));
  }

  /** What is in doubt fails too, and says so by its type. */
  @Test
  void everyRequirementIsATestAndWhatIsNotMetAFailure() {
    assertThat(of("Hut kit"))
        .isEqualTo(
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <testsuite name="spanwire check" time="0" tests="3" errors="0" skipped="0" \
            failures="2">
              <testcase name="7.1 MHz: SWR at the transmitter &lt;= 2.00" classname="Hut kit" \
            time="0"></testcase>
              <testcase name="40 m: radiation efficiency &gt;= 95.0 %" classname="Hut kit" \
            time="0">
                <failure message="found 87.5 %, limit &gt;= 95.0 %, margin -7.5 %" \
            type="failed">kit.yaml: the largest loss is in soil</failure>
              </testcase>
              <testcase name="design: yield &gt;= 90.0 %" classname="Hut kit" time="0">
                <failure message="found 90.6 %, limit &gt;= 90.0 %, margin +0.6 %" \
            type="undecided">kit.yaml: the limit lies within the numerical error</failure>
              </testcase>
            </testsuite>
            """);
  }

  @ParameterizedTest
  @CsvSource({"Kit 1.5, Kit 1 5", "<Hut> & 'kit', &lt;Hut&gt; &amp; 'kit'", "Übung 天线, Übung 天线"})
  void aTitleIsAClassWithoutPackage(String title, String written) {
    assertThat(of('"' + title + '"')).contains("classname=\"" + written + "\"");
  }

  /** Names of files may hold nearly anything. */
  @Test
  void controlCharactersBecomeQuestionMarks() {
    assertThat(of("Hut kit", "kit\u0007\u001f.yaml"))
        .contains(">kit??.yaml: the largest loss is in soil<");
  }

  /** Written as YAML escapes them. */
  @ParameterizedTest
  @CsvSource({
    "'not a character \\uFFFF', 'not a character ?'",
    "'last one \\uFFFD', 'last one \uFFFD'",
    "'beyond 16 bits \\U0001F4E1', 'beyond 16 bits \uD83D\uDCE1'"
  })
  void charactersThatXmlCannotHoldBecomeQuestionMarks(String title, String written) {
    assertThat(of('"' + title + '"')).contains("classname=\"" + written + "\"");
  }
}
