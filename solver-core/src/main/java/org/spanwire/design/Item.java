package org.spanwire.design;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/** One value of a document, with its place and what it is called in messages. */
final class Item {

  private final Document document;
  private final Node node;
  private final String name;

  Item(Document document, Node node, String name) {
    this.document = document;
    this.node = node;
    this.name = name;
  }

  String name() {
    return name;
  }

  /** The same value under another name. */
  Item as(String newName) {
    return new Item(document, node, newName);
  }

  boolean isText() {
    return node instanceof ScalarNode;
  }

  boolean isList() {
    return node instanceof SequenceNode;
  }

  /** A scalar's text, stripped, not empty. */
  String text() {
    if (!(node instanceof ScalarNode scalar)) {
      throw fault(name + " is " + kind() + "; expected a single value");
    }
    String text = scalar.getValue().strip();
    if (text.isEmpty() || node.getTag().equals(Tag.NULL)) {
      throw fault(name + " has no value; write one, or remove the key");
    }
    return text;
  }

  List<Item> items(String expected) {
    if (!(node instanceof SequenceNode sequence)) {
      throw fault(name + " is " + kind() + "; expected " + expected);
    }
    List<Item> items = new ArrayList<>();
    for (Node child : sequence.getValue()) {
      items.add(new Item(document, child, "item " + (items.size() + 1) + " of " + name));
    }
    return items;
  }

  /** A mapping with fixed keys. */
  Fields fields(String... allowed) {
    return new Fields(
        document, this, mapping("a mapping with " + String.join(", ", allowed)), allowed);
  }

  /** A mapping whose keys are names given by the user. */
  Names names(String kind) {
    return new Names(document, this, mapping("a mapping of named " + kind + "s"), kind);
  }

  private MappingNode mapping(String expected) {
    if (node instanceof MappingNode mapping) {
      return mapping;
    }
    throw fault(name + " is " + kind() + "; expected " + expected);
  }

  /** The value that one of a few words stands for. */
  <T> T choice(Map<String, T> words) {
    T value = words.get(text());
    if (value == null) {
      throw fault(
          name
              + " is "
              + Words.quote(text())
              + "; "
              + Words.remedy(text(), words.keySet().stream().sorted().toList()));
    }
    return value;
  }

  /** A path of a file named in the document, relative to the document. */
  Path path() {
    String text = text();
    try {
      return document.directory().map(d -> d.resolve(text)).orElseGet(() -> Path.of(text));
    } catch (InvalidPathException e) {
      throw fault(name + " " + Words.quote(text) + " is no file name; expected a path");
    }
  }

  /** A value whose constructor checks its own ranges; what it refuses is placed here. */
  <T> T checked(Supplier<T> value) {
    try {
      return value.get();
    } catch (IllegalArgumentException e) {
      throw fault(name + ": " + e.getMessage());
    }
  }

  DesignException fault(String problem) {
    Mark mark = node.getStartMark().orElseThrow();
    return new DesignException(document.name(), mark.getLine() + 1, mark.getColumn() + 1, problem);
  }

  /** The fault of naming something that is not known. */
  DesignException unknown(String kind, Collection<String> known) {
    return fault(
        "unknown " + kind + " " + Words.quote(text()) + "; " + Words.remedy(text(), known));
  }

  private String kind() {
    if (node instanceof ScalarNode scalar) {
      return scalar.getValue().isBlank()
          ? "empty"
          : "the single value " + Words.quote(scalar.getValue());
    }
    return node instanceof SequenceNode ? "a list" : "a mapping";
  }
}
