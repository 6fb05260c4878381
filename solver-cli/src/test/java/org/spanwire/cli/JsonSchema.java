package org.spanwire.cli;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;

/** The published schemas as the command prints them, in the hands of an independent validator. */
public final class JsonSchema {

  private static final JsonSchema DESIGN = new JsonSchema("design");
  private static final JsonSchema RESULT = new JsonSchema("result");

  private final Schema schema;

  JsonSchema(String subject) {
    schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(Run.of("schema", subject).out());
  }

  public static JsonSchema design() {
    return DESIGN;
  }

  public static JsonSchema result() {
    return RESULT;
  }

  /** What is wrong with a JSON text; nothing if it is valid. */
  public List<String> faultsOfJson(String json) {
    return schema.validate(json, InputFormat.JSON).stream().map(Object::toString).toList();
  }

  /** What is wrong with a YAML text; nothing if it is valid. */
  public List<String> faultsOfYaml(String yaml) {
    return schema.validate(yaml, InputFormat.YAML).stream().map(Object::toString).toList();
  }
}
