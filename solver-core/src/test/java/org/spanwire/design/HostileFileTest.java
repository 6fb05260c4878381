package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HostileFileTest {

  @TempDir Path directory;

  private Path file(byte[] content) throws IOException {
    return Files.write(directory.resolve("design.yaml"), content);
  }

  private Path file(String content) throws IOException {
    return file(content.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void missing() {
    Path path = directory.resolve("none.yaml");
    assertThatThrownBy(() -> DesignReader.read(path))
        .isInstanceOf(DesignException.class)
        .hasMessage(path + ": no such file; check the path");
  }

  @Test
  void directory() {
    assertThatThrownBy(() -> DesignReader.read(directory))
        .isInstanceOf(DesignException.class)
        .hasMessage(directory + ": is a directory; name a file in it");
  }

  @Test
  void hundredMegabytesAreRefusedUnread() throws IOException {
    Path path = directory.resolve("large.yaml");
    try (RandomAccessFile large = new RandomAccessFile(path.toFile(), "rw")) {
      large.setLength(100 << 20);
    }
    Assertions.assertTimeout(
        Duration.ofMillis(500),
        () ->
            assertThatThrownBy(() -> DesignReader.read(path))
                .isInstanceOf(DesignException.class)
                .hasMessage(
                    path
                        + ": file has 104857600 bytes, limit 4194304 bytes; is it the right file?"));
  }

  @Test
  void longTextIsRefused() {
    assertThatThrownBy(() -> DesignReader.read("#".repeat((4 << 20) + 1), "long.yaml"))
        .isInstanceOf(DesignException.class)
        .hasMessageStartingWith("long.yaml: file has 4194305 characters, limit 4194304");
  }

  @Test
  void aliasesThatMultiply() throws IOException {
    StringBuilder bomb = new StringBuilder("a0: &a0 [x, x]\n");
    for (int i = 1; i < 40; i++) {
      bomb.append("a%d: &a%d [*a%d, *a%d]%n".formatted(i, i, i - 1, i - 1));
    }
    Path path = file(bomb.toString());
    assertThatThrownBy(() -> DesignReader.read(path))
        .isInstanceOf(DesignException.class)
        .hasMessage(path + ":1:5: anchor is not allowed; remove it, and use a parameter instead");
  }

  @Test
  void deepNesting() throws IOException {
    Path flow = file("title: " + "[".repeat(100_000));
    assertThatThrownBy(() -> DesignReader.read(flow))
        .isInstanceOf(DesignException.class)
        .hasMessage(flow + ":1:27: nested more than 20 deep; check the brackets");
    StringBuilder block = new StringBuilder();
    for (int i = 0; i < 1000; i++) {
      block.append(" ".repeat(i)).append("a:\n");
    }
    Path indented = file(block.toString());
    assertThatThrownBy(() -> DesignReader.read(indented))
        .hasMessage(indented + ":21:21: nested more than 20 deep; check the brackets");
  }

  @Test
  void manyParametersThatReferToOneAnother() throws IOException {
    StringBuilder chain = new StringBuilder("parameters:\n");
    for (int i = 0; i < 20_000; i++) {
      chain.append("  p%d: p%d%n".formatted(i, i + 1));
    }
    chain.append("  p20000: 1 m\n");
    Path path = file(Designs.spoilt("parameters:\n", chain.toString()));
    assertThatThrownBy(() -> DesignReader.read(path))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("parameters refer to one another more than 50 deep");
  }

  @Test
  void bytesThatAreNoUtf8() throws IOException {
    Path path =
        file(
            "format: spanwire-design/1\ntitle: H\u00fctte\n".getBytes(StandardCharsets.ISO_8859_1));
    assertThatThrownBy(() -> DesignReader.read(path))
        .isInstanceOf(DesignException.class)
        .hasMessage(path + ":2:9: byte 0xfc is not UTF-8; save the file as UTF-8");
  }

  @Test
  void truncatedUtf8() throws IOException {
    Path path = file(new byte[] {'a', ':', ' ', (byte) 0xc3});
    assertThatThrownBy(() -> DesignReader.read(path))
        .hasMessage(path + ":1:4: byte 0xc3 is not UTF-8; save the file as UTF-8");
  }

  @Test
  void nothingAtAll() throws IOException {
    Path path = file("# only a comment\n");
    assertThatThrownBy(() -> DesignReader.read(path))
        .isInstanceOf(DesignException.class)
        .hasMessage(path + ": holds nothing; expected a design");
  }

  @Test
  void aByteOrderMarkAndWindowsLineEndsDoNoHarm() throws IOException {
    Path path = file("\ufeff" + Designs.SMALL.replace("\n", "\r\n"));
    assertThat(DesignReader.read(path).title()).isEqualTo("Small");
  }

  @Test
  void controlCharactersOfTheFileNeverReachTheTerminal() throws IOException {
    Path path = file(Designs.spoilt("title: Small", "\"\\e[31mred\\n\": x"));
    assertThatThrownBy(() -> DesignReader.read(path))
        .hasMessageMatching("\\P{Cntrl}+")
        .hasMessageContaining("unknown key ' [31mred '");
  }

  @Test
  void faultsOfAnImpedanceTableArePlacedInTheTable() throws IOException {
    String header = "frequency_hz,resistance_ohm,reactance_ohm\n";
    Path path =
        file(
            Designs.spoilt(
                "feed-chain",
                "fittings:\n  t: {wire: radiator, at: 3 m, impedance: z.csv}\nfeed-chain"));
    Path table = directory.resolve("z.csv");
    Files.writeString(table, "f,r,x\n1,2,3\n");
    assertThatThrownBy(() -> DesignReader.read(path))
        .hasMessageStartingWith(table + ":1:1: header 'f,r,x'; expected");
    Files.writeString(table, header + "1e6,2,3\n1e6,2,3\n");
    assertThatThrownBy(() -> DesignReader.read(path))
        .hasMessageStartingWith(table + ":3:1: frequency 1e6 Hz is not above");
    Files.writeString(table, header + "1e6,2,three\n");
    assertThatThrownBy(() -> DesignReader.read(path))
        .hasMessageStartingWith(table + ":2:7: value 'three' is no finite number");
    Files.writeString(table, header + "1e6,2\n");
    assertThatThrownBy(() -> DesignReader.read(path))
        .hasMessageStartingWith(table + ":2:1: row has 2 values");
    Files.writeString(table, header);
    assertThatThrownBy(() -> DesignReader.read(path))
        .hasMessageStartingWith(table + ":1:1: table has no rows");
  }
}
