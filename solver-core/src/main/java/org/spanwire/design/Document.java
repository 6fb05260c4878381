package org.spanwire.design;

import java.nio.file.Path;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.composer.Composer;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/**
 * A YAML or JSON document as a tree of nodes that know their place.
 *
 * @param name name of the file for messages
 * @param directory where files named in the document are looked for; empty for a text without file
 * @param node the tree
 */
record Document(String name, Optional<Path> directory, Node node) {

  static Document parse(String text, String name, Optional<Path> directory) {
    if (text.length() > TextFile.LARGEST) {
      throw TextFile.tooLarge(name, text.length() + " characters");
    }
    LoadSettings settings =
        LoadSettings.builder()
            .setLabel(name)
            .setCodePointLimit(TextFile.LARGEST)
            .setAllowNonScalarKeys(true)
            .build();
    try {
      ParserImpl parser = new ParserImpl(settings, new StreamReader(settings, text));
      Optional<Node> root = new Composer(settings, new StrictParser(parser, name)).getSingleNode();
      return root.map(node -> new Document(name, directory, node))
          .orElseThrow(() -> TextFile.whole(name, "holds nothing; expected a design"));
    } catch (MarkedYamlEngineException e) {
      throw syntax(name, e.getProblemMark().or(e::getContextMark), e.getProblem());
    } catch (ReaderException e) {
      int[] place = TextFile.end(text.substring(0, text.offsetByCodePoints(0, e.getPosition())));
      throw new DesignException(
          name,
          place[0],
          place[1],
          String.format("character U+%04X is not allowed in YAML; remove it", e.getCodePoint()));
    } catch (YamlEngineException e) {
      throw syntax(name, Optional.empty(), e.getMessage());
    }
  }

  Item root() {
    return new Item(this, node, "the design");
  }

  private static DesignException syntax(String name, Optional<Mark> mark, String problem) {
    return new DesignException(
        name,
        mark.map(m -> m.getLine() + 1).orElse(1),
        mark.map(m -> m.getColumn() + 1).orElse(1),
        "not valid YAML: " + problem + "; check indentation, brackets and quotes here");
  }
}
