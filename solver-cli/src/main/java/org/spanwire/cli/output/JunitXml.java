package org.spanwire.cli.output;

import java.io.StringWriter;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.spanwire.study.CheckedRequirement;

/**
 * A check as JUnit XML in the form that build servers read: one suite, a test for each requirement,
 * its class the design. Times are not measured and written as 0.
 */
public final class JunitXml {

  private JunitXml() {}

  /** The whole file. */
  public static String of(CheckReport report) {
    StringWriter out = new StringWriter();
    try {
      XMLStreamWriter xml = XMLOutputFactory.newFactory().createXMLStreamWriter(out);
      xml.writeStartDocument("UTF-8", "1.0");
      suite(xml, report);
      xml.writeEndDocument();
      xml.close();
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e);
    }
    return out.append('\n').toString();
  }

  private static void suite(XMLStreamWriter xml, CheckReport report) throws XMLStreamException {
    List<CheckedRequirement> all =
        report.designs().stream().flatMap(each -> each.requirements().stream()).toList();
    long failures = all.stream().filter(checked -> !checked.passed()).count();
    line(xml, 0);
    xml.writeStartElement("testsuite");
    xml.writeAttribute("name", "spanwire check");
    xml.writeAttribute("time", "0");
    xml.writeAttribute("tests", Integer.toString(all.size()));
    xml.writeAttribute("errors", "0");
    xml.writeAttribute("skipped", "0");
    xml.writeAttribute("failures", Long.toString(failures));
    for (CheckReport.Checked design : report.designs()) {
      for (CheckedRequirement checked : design.requirements()) {
        test(xml, design, checked);
      }
    }
    line(xml, 0);
    xml.writeEndElement();
  }

  private static void test(
      XMLStreamWriter xml, CheckReport.Checked design, CheckedRequirement checked)
      throws XMLStreamException {
    line(xml, 1);
    xml.writeStartElement("testcase");
    xml.writeAttribute("name", text(RequirementText.whole(checked)));
    // A dot would be taken for the end of a package name.
    xml.writeAttribute("classname", text(design.design().title()).replace('.', ' '));
    xml.writeAttribute("time", "0");
    if (!checked.passed()) {
      line(xml, 2);
      xml.writeStartElement("failure");
      xml.writeAttribute("message", text(message(checked)));
      xml.writeAttribute("type", checked.outcome().label());
      xml.writeCharacters(text(design.design().source() + ": " + checked.cause()));
      xml.writeEndElement();
      line(xml, 1);
    }
    xml.writeEndElement();
  }

  private static String message(CheckedRequirement checked) {
    return "found "
        + RequirementText.withUnit(checked, RequirementText.found(checked))
        + ", limit "
        + RequirementText.withUnit(checked, RequirementText.limit(checked))
        + ", margin "
        + RequirementText.withUnit(checked, RequirementText.margin(checked));
  }

  private static void line(XMLStreamWriter xml, int depth) throws XMLStreamException {
    xml.writeCharacters("\n" + "  ".repeat(depth));
  }

  /** XML 1.0 cannot hold all characters, not even escaped. */
  private static String text(String any) {
    return any.replaceAll("[^\\t\\n\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]", "?");
  }
}
