package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.result.Warning;
import org.spanwire.study.SolvedFrequency;

/**
 * The outcome of {@code spanwire solve}.
 *
 * @param conditions what it holds for
 * @param solutions the frequencies in the order asked for
 * @param azimuthsAsked whether gain samples have the azimuths asked for, rather than those of the
 *     largest gain
 * @param powerWatts power available from the transmitter
 * @param doubts named doubts about all of them
 */
public record SolveReport(
    Conditions conditions,
    List<SolvedFrequency> solutions,
    boolean azimuthsAsked,
    double powerWatts,
    List<Warning> doubts)
    implements Report {

  /** Takes copies. */
  public SolveReport {
    solutions = List.copyOf(solutions);
    doubts = List.copyOf(doubts);
  }

  @Override
  public List<Warning> warnings() {
    List<Warning> all = new ArrayList<>(doubts);
    solutions.forEach(solution -> all.addAll(solution.warnings()));
    return all;
  }

  @Override
  public String text(Palette palette) {
    return new SolveText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    new SolveJson(this, json).write();
  }

  @Override
  public void csv(CSVPrinter csv) throws IOException {
    new SolveCsv(this, csv).write();
  }
}
