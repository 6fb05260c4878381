package org.spanwire.cli.chart;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.io.StringWriter;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGGraphics2DIOException;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * A chart as an SVG document of its own.
 *
 * @param text the document
 * @param marks its places to be read out
 */
public record SvgPicture(String text, List<Mark> marks) {

  private static final String NAMESPACE = "http://www.w3.org/2000/svg";

  /** Takes a copy. */
  public SvgPicture {
    marks = List.copyOf(marks);
  }

  /**
   * Draws a chart.
   *
   * @param id letters, digits and hyphens that no other picture of the same page has; every
   *     identifier inside begins with it
   */
  public static SvgPicture of(Chart chart, String id) {
    try {
      Document document =
          DocumentBuilderFactory.newNSInstance()
              .newDocumentBuilder()
              .getDOMImplementation()
              .createDocument(NAMESPACE, "svg", null);
      SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
      context.setComment(null);
      context.setPrecision(1);
      context.setIDGenerator(
          new SVGIDGenerator() {
            @Override
            public String generateID(String prefix) {
              return id + "-" + super.generateID(prefix);
            }
          });
      SVGGraphics2D graphics = new SVGGraphics2D(context, false);
      graphics.setSVGCanvasSize(new Dimension(chart.width(), chart.height()));
      List<Mark> marks =
          chart.draw(graphics, new Rectangle2D.Double(0, 0, chart.width(), chart.height()));
      Element root = graphics.getRoot();
      describe(root, chart, id);
      StringWriter out = new StringWriter();
      graphics.stream(root, out, false, false);
      return new SvgPicture(out.toString(), marks);
    } catch (ParserConfigurationException | SVGGraphics2DIOException e) {
      throw new IllegalStateException("a chart could not be written as SVG", e);
    }
  }

  /** What the picture shows, in words: SVG 2, section 5.8, and WAI-ARIA. */
  private static void describe(Element root, Chart chart, String id) {
    root.setAttribute("viewBox", "0 0 " + chart.width() + " " + chart.height());
    root.setAttribute("role", "img");
    root.setAttribute("aria-labelledby", id + "-title " + id + "-desc");
    root.insertBefore(text(root, "desc", id, chart.description()), root.getFirstChild());
    root.insertBefore(text(root, "title", id, chart.title()), root.getFirstChild());
  }

  private static Element text(Element root, String name, String id, String text) {
    Element element = root.getOwnerDocument().createElementNS(NAMESPACE, name);
    element.setAttribute("id", id + "-" + name);
    element.setTextContent(text);
    return element;
  }
}
