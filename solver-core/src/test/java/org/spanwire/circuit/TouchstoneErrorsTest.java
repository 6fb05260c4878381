package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bad files: every refusal names the place. */
class TouchstoneErrorsTest {

  private static final String TWO =
      "[Version] 2.0|# Hz S RI|[Number of Ports] 2|[Two-Port Data Order] 12_21|"
          + "[Number of Frequencies] 1|[Network Data]|1 0 0 0 0 0 0 0 0|[End]";

  /** Lines are parted by a bar. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '`',
      value = {
        "x.s1p;! nothing; x.s1p: file holds no data",
        "x.s1p;# Hz S RI; x.s1p: file holds no network data",
        "x.txt;# Hz S RI|1 0 0; x.txt: name of a version 1 file",
        "x.s0p;# Hz S RI|1 0 0; x.s0p: name of a version 1 file",
        "x.s1p;1 0 0; x.s1p:1:1: expected the option line",
        "x.s1p;#Hz S RI|1 0 0; x.s1p:1:1: expected a blank after '#'",
        "x.s1p;# Hz S XY|1 0 0; x.s1p:1:8: 'XY' is no unit",
        "x.s1p;# Hz S RI R|1 0 0; x.s1p:1:12: R needs a reference",
        "x.s1p;# Hz S RI R -50|1 0 0; x.s1p:1:13: reference impedance -50.0 ohm must be positive",
        "x.s1p;# Hz H RI|1 0 0; x.s1p: hybrid parameters need 2 ports",
        "x.s3p;# Hz S RI R 50 75|1 0 0; x.s3p: 2 reference impedances after R for 3 ports",
        "x.s1p;# Hz S RI|1 0 zero; x.s1p:2:5: 'zero' is no finite number",
        "x.s1p;# Hz S RI|1 0 1e999; x.s1p:2:5: '1e999' is no finite number",
        "x.s1p;# Hz S RI|1 NaN 0; x.s1p:2:3: 'NaN' is no finite number",
        "x.s1p;# Hz S RI|1 0x1p3 0; x.s1p:2:3: '0x1p3' is no finite number",
        "x.s1p;# Hz S RI|2 0 0|! c|1 0 0; x.s1p:4:1: frequency 1 is not above",
        "x.s1p;# Hz S RI|-2 0 0; x.s1p:2:1: frequency -2 is not above",
        "x.s1p;# Hz S RI|1 0 0 0 0; x.s1p:2:7: line has more numbers",
        "x.s1p;# Hz S RI|1 0; x.s1p:2:1: line of data has an even count",
        "x.s1p;# Hz S RI|1 0 0|[End]; x.s1p:3:1: keyword in a file without [Version]",
        "x.s2p;# Hz S RI|1 0 0 0 0 0 0|2 0 0 0 0 0 0 0 0; x.s2p:2:1: matrix has 6 of 8 numbers",
        "x.s2p;# Hz S RI|1 0 0 0 0 0 0 0 0|1 2 3 4 5|2 3; x.s2p:4:1: noise data have 5 numbers",
        "x.s3p;# Hz S RI|1 0 0 0 0 0 0; x.s3p:2:1: matrix has 6 of 18 numbers",
        "x.ts;[Version] 3.0; x.ts:1:11: version is none of 2.0 and 2.1",
        "x.ts;[Version 2.0; x.ts:1:1: keyword has no closing bracket",
        "x.ts;[Version] 2.0|# Hz S RI|[Matrix Format] Full; x.ts:3:17: expected [Number of Ports]",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 0; x.ts:3:19: [number of ports] is 0; expected"
            + " 1",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 2.5; x.ts:3:19: [number of ports] needs one",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 999999999; x.ts:3:19: [number of ports] is",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 1|[Colour] red; x.ts:4:10: unknown keyword"
            + " [colour]",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 1|1 0 0; x.ts:4:1: data before [Network Data]",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 1|[Network Data]; x.ts:4:1: [Number of Freq",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 1|[Mixed-Mode Order] D2,3; x.ts:4:20:"
            + " mixed-mode",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 2|[Reference] 50|[End]; x.ts:4:15: [Reference]"
            + " has 1 of 2",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 1|[Reference] 50 75; x.ts:4:16: [Reference] has"
            + " more",
        "x.ts;[Version] 2.0|# Hz|[Number of Ports] 1|[Matrix Format] Half; x.ts:4:17: [matrix"
            + " format] needs one of FULL, LOWER, UPPER",
        "x.ts;[Version] 2.0|# Hz|[Begin Information]|words; x.ts:3:1: information block does not"
            + " end",
        "x.ts;[Version] 2.0; x.ts: file ends before its option line",
      })
  void saysWhere(String name, String text, String message) {
    assertThatThrownBy(() -> Touchstone.parse(name, text.replace('|', '\n')))
        .isInstanceOf(TouchstoneException.class)
        .hasMessageStartingWith(message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "Frequencies] 1;Frequencies] 2; 8:1: file has 1 frequencies, announced 2",
        "|[End];'';: file ends without [End]",
        "[End];[End]|3 0 0; 8:1: data after [End]",
        "[End];[Noise Data]|1 2 3 4 5|[End]; 10:1: file has 1 noise frequencies, announced 0",
        "|[Two-Port Data Order] 12_21;'';5:1: [Two-Port Data Order] is missing",
        "[End];[Reference] 50; 8:13: expected [End] here",
        "0 0|[End];0|[End]; 7:1: line of data has an even count",
      })
  void versionTwoSections(String part, String replacement, String message) {
    assertThat(Touchstone.parse("x.ts", TWO.replace('|', '\n')).ports()).isEqualTo(2);
    assertThatThrownBy(
            () -> Touchstone.parse("x.ts", TWO.replace(part, replacement).replace('|', '\n')))
        .isInstanceOf(TouchstoneException.class)
        .hasMessageStartingWith(
            "x.ts:" + (message.startsWith(":") ? message.substring(1) : message));
  }

  /** Damaged files end in a located refusal or in a file, never in another exception. */
  @Test
  void damageNeverEscapes() {
    SplittableRandom random = new SplittableRandom(13);
    String[] originals = {
      TWO.replace('|', '\n'), "# MHz S MA R 50\n1 0.1 20 0.3 4 0.5 6 0.7 8\n2 1 0 1 0 1 0 1 0\n",
    };
    String alphabet = "[]#! \n\r0129.eE+-SRMk\u0000é";
    int refused = 0;
    for (int i = 0; i < 4000; i++) {
      StringBuilder text = new StringBuilder(originals[i % 2]);
      for (int k = random.nextInt(1, 6); k > 0; k--) {
        char c = alphabet.charAt(random.nextInt(alphabet.length()));
        text.setCharAt(random.nextInt(text.length()), c);
      }
      try {
        Touchstone.parse("x.s2p", text.toString());
      } catch (TouchstoneException e) {
        refused++;
        assertThat(e.getMessage()).startsWith("x.s2p").doesNotContain("\n", "\u0000");
      }
    }
    assertThat(refused).isGreaterThan(1000);
  }
}
