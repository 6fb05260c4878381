package org.spanwire.design;

import java.util.Optional;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.parser.Parser;

/**
 * Refuses what a design never needs and what can exhaust memory or stack: aliases, anchors, tags,
 * deep nesting.
 */
final class StrictParser implements Parser {

  private static final int DEEPEST_NESTING = 20;

  private final Parser parser;
  private final String name;
  private int depth;

  StrictParser(Parser parser, String name) {
    this.parser = parser;
    this.name = name;
  }

  @Override
  public boolean checkEvent(Event.ID choice) {
    return parser.checkEvent(choice);
  }

  @Override
  public Event peekEvent() {
    return parser.peekEvent();
  }

  @Override
  public boolean hasNext() {
    return parser.hasNext();
  }

  @Override
  public Event next() {
    Event event = parser.next();
    if (event instanceof AliasEvent) {
      throw refuse(event, "alias is not allowed; write the value out, or use a parameter");
    }
    if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
      throw refuse(event, "anchor is not allowed; remove it, and use a parameter instead");
    }
    tag(event).ifPresent(tag -> refuseTag(event, tag));
    if (event instanceof CollectionStartEvent && ++depth > DEEPEST_NESTING) {
      throw refuse(event, "nested more than " + DEEPEST_NESTING + " deep; check the brackets");
    }
    if (event instanceof CollectionEndEvent) {
      depth--;
    }
    return event;
  }

  private static Optional<String> tag(Event event) {
    if (event instanceof ScalarEvent scalar) {
      return scalar.getTag();
    }
    return event instanceof CollectionStartEvent start ? start.getTag() : Optional.empty();
  }

  private void refuseTag(Event event, String tag) {
    throw refuse(event, "tag " + Words.quote(tag) + " is not allowed; remove it");
  }

  private DesignException refuse(Event event, String problem) {
    Mark mark = event.getStartMark().orElseThrow();
    return new DesignException(name, mark.getLine() + 1, mark.getColumn() + 1, problem);
  }
}
