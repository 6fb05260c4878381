package org.spanwire.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import nu.validator.htmlparser.sax.HtmlParser;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/** What the HTML standard finds wrong with a page. */
final class HtmlFaults implements ErrorHandler {

  private final List<String> faults = new ArrayList<>();

  /** Line, column and fault; none for a page that is correct. */
  static List<String> of(String html) throws IOException, SAXException {
    HtmlFaults found = new HtmlFaults();
    HtmlParser parser = new HtmlParser();
    parser.setContentHandler(new DefaultHandler());
    parser.setErrorHandler(found);
    InputSource source =
        new InputSource(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
    source.setEncoding("UTF-8");
    parser.parse(source);
    return found.faults;
  }

  @Override
  public void warning(SAXParseException e) {
    error(e);
  }

  @Override
  public void error(SAXParseException e) {
    faults.add(e.getLineNumber() + ":" + e.getColumnNumber() + " " + e.getMessage());
  }

  @Override
  public void fatalError(SAXParseException e) {
    error(e);
  }
}
