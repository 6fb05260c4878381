package org.spanwire.cli.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.spanwire.design.Stage;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.study.Sweep;

/** SHA-256 of everything that the rows of a sweep depend on, the program's version included. */
final class SweepFingerprint {

  private SweepFingerprint() {}

  static String of(Sweep sweep, DesignOptions design, List<String> vary, Optional<Integer> sample) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(Files.readAllBytes(design.file()));
      add(digest, ProgramVersion.number());
      add(digest, design.settings());
      add(digest, vary);
      add(digest, sample);
      add(digest, sweep.frequenciesHz());
      add(digest, sweep.request());
      addFiles(digest, sweep);
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    } catch (IOException e) {
      throw new InputException(e.getMessage() + ": could not be read; check the path");
    }
  }

  /**
   * What the design file only names: tables of impedance, measured transformers, core materials.
   */
  private static void addFiles(MessageDigest digest, Sweep sweep) throws IOException {
    List<LumpedImpedance> tables = new ArrayList<>();
    sweep.base().antenna().fittings().forEach(fitting -> tables.add(fitting.impedance()));
    for (Stage stage : sweep.base().feedChain()) {
      if (stage instanceof Stage.Choke choke) {
        tables.add(choke.impedance());
      } else if (stage instanceof Stage.Transformer transformer) {
        transformer.wound().ifPresent(winding -> tables.add(winding.transformer().choke()));
        if (transformer.touchstone().isPresent()) {
          digest.update(Files.readAllBytes(transformer.touchstone().get()));
        }
      }
    }
    for (LumpedImpedance table : tables) {
      sweep.frequenciesHz().forEach(f -> add(digest, table.at(f)));
    }
  }

  private static void add(MessageDigest digest, Object value) {
    digest.update((byte) 0);
    digest.update(value.toString().getBytes(StandardCharsets.UTF_8));
  }
}
