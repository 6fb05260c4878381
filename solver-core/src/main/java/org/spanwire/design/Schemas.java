package org.spanwire.design;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The published JSON Schemas (draft 2020-12) of what users' files and pipelines depend on. */
public final class Schemas {

  private Schemas() {}

  /** JSON Schema of the design file. */
  public static String design() {
    return read("spanwire-design-1.schema.json");
  }

  /** JSON Schema of the machine-readable results. */
  public static String result() {
    return read("spanwire-result-1.schema.json");
  }

  /** JSON Schema of typed bench readings, see {@link BenchReader}. */
  public static String readings() {
    return read("spanwire-readings-1.schema.json");
  }

  /** JSON Schema of SWR typed at an installation, see {@link MeasuredSwrReader}. */
  public static String measured() {
    return read("spanwire-measured-1.schema.json");
  }

  /** JSON Schema of a transformer to be wound, see {@link TransformerSheetReader}. */
  public static String transformer() {
    return read("spanwire-transformer-1.schema.json");
  }

  private static String read(String file) {
    try (InputStream in = Schemas.class.getResourceAsStream(file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
