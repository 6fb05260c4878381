package org.spanwire.cli.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The files of a comparison: its own page, and one for each design beside it.
 *
 * @param comparison the page with the comparison
 * @param pages the designs' pages, by design file in the order given
 */
record RangeFiles(Path comparison, Map<Path, Path> pages) {

  private static final String HTML = ".html";

  /**
   * Names them, and refuses what cannot be written before the work begins.
   *
   * @param output a directory, for {@code index.html} and pages named after the designs, or the
   *     comparison's own file, whose name goes before theirs
   */
  static RangeFiles of(Path output, List<Path> designs) {
    boolean directory = Files.isDirectory(output);
    Path comparison = directory ? output.resolve("index.html") : output;
    String prefix = directory ? "" : stem(output) + "-";
    Map<Path, Path> pages = new LinkedHashMap<>();
    for (Path design : designs) {
      Path page = comparison.resolveSibling(prefix + stem(design) + HTML);
      if (page.equals(comparison) || pages.containsValue(page)) {
        throw new InputException(
            design + ": its page would be " + page + ", which another page is; rename the design");
      }
      pages.put(design, page);
    }
    for (Path design : designs) {
      OutputOptions.checkTarget(comparison, design, "a design");
      pages.values().forEach(page -> OutputOptions.checkTarget(page, design, "a design"));
    }
    return new RangeFiles(comparison, pages);
  }

  private static String stem(Path file) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }
}
