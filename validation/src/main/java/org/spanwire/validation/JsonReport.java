package org.spanwire.validation;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/** Writes a run as JSON. */
final class JsonReport {

  private static final ObjectMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private JsonReport() {}

  static String of(ValidationRun run, List<Section> sections) {
    ObjectNode root = JSON.createObjectNode();
    root.put("format", "spanwire-validation/1");
    root.put("commit", run.stamp().commit());
    root.put("jdk", run.stamp().jdk());
    root.put("machine", run.stamp().machine());
    root.put("date", run.stamp().date().toString());
    root.put("seconds", run.elapsed().toMillis() / 1e3);
    root.put("solver_tolerance", Workbench.SOLVER_TOLERANCE);
    root.put("passed", run.passed());
    root.put("total", run.outcomes().size());
    ArrayNode cases = root.putArray("cases");
    run.outcomes().forEach(outcome -> write(cases.addObject(), outcome));
    ArrayNode faults = root.putArray("faults");
    sections.forEach(section -> section.faults().forEach(faults::add));
    try {
      return JSON.writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the report cannot be written as JSON", e);
    }
  }

  private static void write(ObjectNode node, Outcome outcome) {
    ValidationCase subject = outcome.subject();
    node.put("id", subject.id());
    node.put("group", subject.group());
    node.put("quantity", CaseText.name(subject.quantity()));
    node.put("unit", subject.quantity().unit());
    write(node.putArray("expected"), subject.expected());
    outcome.got().ifPresent(got -> write(node.putArray("got"), got));
    outcome.failure().ifPresent(why -> node.put("failure", why));
    if (outcome.got().isPresent()) {
      node.put("deviation", outcome.deviation());
    }
    node.put("tolerance", subject.tolerance().limit());
    node.put("relative", subject.tolerance().relative());
    node.put("reason", subject.tolerance().reason());
    node.put("source", subject.source());
    node.put("origin", subject.origin().label());
    node.put("pass", outcome.passes());
  }

  private static void write(ArrayNode pair, Complex value) {
    pair.add(value.getReal()).add(value.getImaginary());
  }
}
