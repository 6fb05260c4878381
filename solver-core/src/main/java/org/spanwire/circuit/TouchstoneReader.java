package org.spanwire.circuit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.spanwire.circuit.TouchstoneOptions.Format;
import org.spanwire.circuit.TouchstoneOptions.Matrix;
import org.spanwire.circuit.TouchstoneOptions.Order;
import org.spanwire.circuit.TouchstoneOptions.Parameter;
import org.spanwire.circuit.TouchstoneOptions.Unit;
import org.spanwire.circuit.TouchstoneOptions.Version;

/** Reads the text of a Touchstone file, line by line. */
final class TouchstoneReader {

  private static final int MOST_PORTS = 1000;
  private static final int MOST_FREQUENCIES = 10_000_000;
  private static final Pattern EXTENSION =
      Pattern.compile(".*\\.s(\\d{1,4})p", Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

  private final String file;
  private final TouchstoneLines lines;

  private Version version = Version.V1;
  private Unit unit = Unit.GHZ;
  private Parameter parameter = Parameter.S;
  private Format format = Format.MA;
  private Matrix matrix = Matrix.FULL;
  private Order order = Order.ORDER_21_12;
  private boolean orderStated;
  private double[] optionReferences = {50};
  private double[] references;
  private int ports;
  private int frequencyCount = -1;
  private int noiseCount;
  private final List<double[]> records = new ArrayList<>();
  private final List<double[]> noise = new ArrayList<>();

  TouchstoneReader(String file, String text) {
    this.file = file;
    lines = new TouchstoneLines(file, text);
  }

  Touchstone read() {
    TouchstoneLine first = lines.next().orElseThrow(() -> whole("file holds no data"));
    if (first.keyword().equals("version")) {
      version(first);
      header();
      sections();
    } else {
      lines.pushBack(first);
      ports = portsOfName();
      options(lines.next().orElseThrow());
      expandReferences();
      data(false);
    }
    if (records.isEmpty()) {
      throw whole("file holds no network data after its header");
    }
    return result();
  }

  private TouchstoneException whole(String problem) {
    return new TouchstoneException(file, 0, 0, problem);
  }

  private int portsOfName() {
    Matcher matcher = EXTENSION.matcher(file);
    int count = matcher.matches() ? Integer.parseInt(matcher.group(1)) : 0;
    if (count < 1 || count > MOST_PORTS) {
      throw whole(
          "name of a version 1 file must tell its ports, .s1p to .s" + MOST_PORTS + "p; rename it");
    }
    return count;
  }

  private void version(TouchstoneLine line) {
    for (Version known : List.of(Version.V2_0, Version.V2_1)) {
      if (line.size() == 1 && line.words().get(0).equals(known.word())) {
        version = known;
        return;
      }
    }
    throw line.fault(0, "version is none of 2.0 and 2.1; save the file as one of them");
  }

  private void options(TouchstoneLine line) {
    if (!line.isOptions()) {
      throw line.fault(0, "expected the option line, such as '# MHz S RI R 50', before this");
    }
    if (!line.words().get(0).equals("#")) {
      throw line.fault(0, "expected a blank after '#'");
    }
    for (int i = 1; i < line.size(); i++) {
      String word = line.words().get(i);
      Unit newUnit = TouchstoneOptions.named(Unit.class, word);
      Parameter newParameter = TouchstoneOptions.named(Parameter.class, word);
      Format newFormat = TouchstoneOptions.named(Format.class, word);
      unit = newUnit != null ? newUnit : unit;
      parameter = newParameter != null ? newParameter : parameter;
      format = newFormat != null ? newFormat : format;
      if (word.equalsIgnoreCase("R")) {
        optionReferences = references(line, i + 1);
        i += optionReferences.length;
      } else if (newUnit == null && newParameter == null && newFormat == null) {
        throw line.fault(
            i, line.quoted(i) + " is no unit, parameter, format or R; see '# MHz S RI R 50'");
      }
    }
  }

  /** Numbers that follow R: one for all ports, or, in version 1.1, one for each. */
  private static double[] references(TouchstoneLine line, int from) {
    int end = from;
    while (end < line.size() && line.words().get(end).matches("[-+.\\d].*")) {
      end++;
    }
    if (end == from) {
      throw line.fault(from, "R needs a reference impedance in ohms");
    }
    double[] values = new double[end - from];
    for (int i = from; i < end; i++) {
      values[i - from] = positive(line, i);
    }
    return values;
  }

  private static double positive(TouchstoneLine line, int index) {
    double value = line.value(index);
    if (!(value > 0)) {
      throw line.fault(index, "reference impedance " + value + " ohm must be positive");
    }
    return value;
  }

  private void header() {
    options(lines.next().orElseThrow(() -> whole("file ends before its option line")));
    while (true) {
      TouchstoneLine line =
          lines.next().orElseThrow(() -> whole("file ends before [Network Data]; is it cut off?"));
      if (line.keyword().equals("network data")) {
        checkHeader(line);
        return;
      }
      keyword(line);
    }
  }

  private void keyword(TouchstoneLine line) {
    if (ports == 0 && !line.keyword().equals("number of ports")) {
      throw line.fault(0, "expected [Number of Ports] first");
    }
    switch (line.keyword()) {
      case "number of ports" -> ports = line.count(1, MOST_PORTS);
      case "two-port data order" -> {
        order = word(line, Order.class, "ORDER_");
        orderStated = true;
      }
      case "number of frequencies" -> frequencyCount = line.count(1, MOST_FREQUENCIES);
      case "number of noise frequencies" -> noiseCount = line.count(1, MOST_FREQUENCIES);
      case "reference" -> references = portReferences(line);
      case "matrix format" -> matrix = word(line, Matrix.class, "");
      case "mixed-mode order" ->
          throw line.fault(0, "mixed-mode data are not read; save the file single-ended");
      case "" -> throw line.fault(0, "data before [Network Data]");
      default -> throw line.fault(0, "unknown keyword [" + line.keyword() + "]");
    }
  }

  private static <E extends Enum<E>> E word(TouchstoneLine line, Class<E> type, String prefix) {
    E value = line.size() == 1 ? TouchstoneOptions.named(type, prefix + line.words().get(0)) : null;
    if (value == null) {
      String choices =
          Arrays.toString(type.getEnumConstants()).replace(prefix, "").replaceAll("[\\[\\]]", "");
      throw line.fault(0, "[" + line.keyword() + "] needs one of " + choices);
    }
    return value;
  }

  private double[] portReferences(TouchstoneLine start) {
    double[] values = new double[ports];
    TouchstoneLine line = start;
    for (int count = 0, at = 0; count < ports; count++, at++) {
      while (at == line.size()) {
        TouchstoneLine before = line;
        line = lines.next().orElse(start);
        if (line == start || !line.keyword().isEmpty()) {
          throw before.fault(
              before.size(), "[Reference] has " + count + " of " + ports + " impedances");
        }
        at = 0;
      }
      values[count] = positive(line, at);
      if (count == ports - 1 && at + 1 < line.size()) {
        throw line.fault(at + 1, "[Reference] has more than " + ports + " impedances");
      }
    }
    return values;
  }

  private void checkHeader(TouchstoneLine line) {
    if (ports == 0) {
      throw line.fault(0, "[Number of Ports] is missing before the data");
    }
    if (frequencyCount < 0) {
      throw line.fault(0, "[Number of Frequencies] is missing before the data");
    }
    if (ports == 2 && !orderStated) {
      throw line.fault(0, "[Two-Port Data Order] is missing before the data of a 2-port");
    }
    if (ports != 2 && orderStated) {
      throw line.fault(0, "[Two-Port Data Order] is for 2-ports, not for " + ports + " ports");
    }
    expandReferences();
  }

  private void expandReferences() {
    if (parameter.isHybrid() && (ports != 2 || matrix != Matrix.FULL)) {
      throw whole("hybrid parameters need 2 ports and a full matrix; use S, Y or Z");
    }
    if (references == null) {
      if (optionReferences.length != 1 && optionReferences.length != ports) {
        throw whole(
            optionReferences.length + " reference impedances after R for " + ports + " ports");
      }
      references = new double[ports];
      Arrays.setAll(references, i -> optionReferences[optionReferences.length == 1 ? 0 : i]);
    }
    if (version == Version.V1
        && parameter != Parameter.S
        && Arrays.stream(references).anyMatch(r -> r != references[0])) {
      throw whole("normalized parameters other than S need one reference; save as version 2");
    }
  }

  private void sections() {
    TouchstoneLine line = data(true);
    if (records.size() != frequencyCount) {
      throw line.fault(
          0, "file has %d frequencies, announced %d".formatted(records.size(), frequencyCount));
    }
    if (line.keyword().equals("noise data")) {
      line = noise();
    }
    if (noise.size() != noiseCount) {
      throw line.fault(
          0, "file has %d noise frequencies, announced %d".formatted(noise.size(), noiseCount));
    }
    if (!line.keyword().equals("end")) {
      throw line.fault(0, "expected [End] here, not [" + line.keyword() + "]");
    }
    if (lines.next().isPresent()) {
      throw line.fault(0, "data after [End]");
    }
  }

  /**
   * Reads matrices up to a keyword, or to the end of the file. A record is a frequency and pairs,
   * an odd count of numbers, and starts on a new line; its further lines hold pairs alone.
   */
  private TouchstoneLine data(boolean untilKeyword) {
    int pairs = matrix == Matrix.FULL ? ports * ports : ports * (ports + 1) / 2;
    double[] record = new double[1 + 2 * pairs];
    int filled = 0;
    TouchstoneLine start = null;
    while (true) {
      Optional<TouchstoneLine> more = lines.next();
      boolean closed = more.isEmpty() || !more.get().keyword().isEmpty();
      boolean fresh = closed || more.get().size() % 2 == 1;
      if (filled > 0 && fresh && !(more.isPresent() && more.get().isOptions())) {
        throw start.fault(
            0, "matrix has %d of %d numbers after its frequency".formatted(filled - 1, 2 * pairs));
      }
      if (closed) {
        return ended(more, untilKeyword);
      }
      TouchstoneLine line = more.get();
      if (line.isOptions()) {
        continue; // Version 1: option lines after the first are ignored.
      }
      if (filled == 0) {
        start = line;
        if (startsNoise(line)) {
          lines.pushBack(line);
          noise();
          return line;
        }
        ascending(line, records);
      }
      for (int i = 0; i < line.size(); i++) {
        if (filled == record.length) {
          throw line.fault(i, "line has more numbers than the matrix of " + ports + " ports");
        }
        record[filled++] = line.value(i);
      }
      if (filled == record.length) {
        records.add(record.clone());
        filled = 0;
      }
    }
  }

  private TouchstoneLine ended(Optional<TouchstoneLine> last, boolean untilKeyword) {
    if (untilKeyword) {
      return last.orElseThrow(() -> whole("file ends without [End]; is it cut off?"));
    }
    if (last.isPresent()) {
      throw last.get().fault(0, "keyword in a file without [Version]");
    }
    return null;
  }

  /** In version 1 a frequency that steps back opens the noise data of a 2-port. */
  private boolean startsNoise(TouchstoneLine line) {
    return version == Version.V1
        && ports == 2
        && line.size() == 5
        && !records.isEmpty()
        && line.value(0) <= records.get(records.size() - 1)[0];
  }

  private void ascending(TouchstoneLine line, List<double[]> before) {
    double frequency = line.value(0);
    if (Double.isInfinite(frequency * Math.pow(10, unit.power()))) {
      throw line.fault(0, "frequency " + line.words().get(0) + " is beyond what a number can hold");
    }
    double last = before.isEmpty() ? -1 : before.get(before.size() - 1)[0];
    if (line.size() % 2 == 0) {
      throw line.fault(
          0, "line of data has an even count of numbers; expected frequency and pairs");
    }
    if (!(frequency >= 0) || !(frequency > last)) {
      throw line.fault(
          0, "frequency " + line.words().get(0) + " is not above the one before; sort the data");
    }
  }

  private TouchstoneLine noise() {
    while (true) {
      Optional<TouchstoneLine> more = lines.next();
      if (more.isEmpty() || !more.get().keyword().isEmpty()) {
        return ended(more, version != Version.V1);
      }
      TouchstoneLine line = more.get();
      if (line.size() != 5) {
        throw line.fault(0, "noise data have 5 numbers to a line, not " + line.size());
      }
      if (ports != 2) {
        throw line.fault(0, "noise data are for 2-ports, not for " + ports + " ports");
      }
      ascending(line, noise);
      double[] row = new double[5];
      Arrays.setAll(row, line::value);
      noise.add(row);
    }
  }

  private Touchstone result() {
    TouchstoneOptions options =
        new TouchstoneOptions(version, unit, parameter, format, matrix, order);
    double[] frequencies = records.stream().mapToDouble(r -> r[0]).toArray();
    double[][] values = new double[frequencies.length][];
    for (int k = 0; k < values.length; k++) {
      values[k] = full(options, records.get(k));
    }
    return new Touchstone(options, references, frequencies, values, noise.toArray(new double[0][]));
  }

  private double[] full(TouchstoneOptions options, double[] record) {
    double[] values = new double[2 * ports * ports];
    int from = 1;
    for (int row = 0; row < ports; row++) {
      for (int column : TouchstoneWriter.columns(matrix, ports, row)) {
        int to = 2 * TouchstoneWriter.position(options, ports, row, column);
        System.arraycopy(record, from, values, to, 2);
        TouchstoneWriter.mirror(options, values, ports, row, column);
        from += 2;
      }
    }
    return values;
  }
}
