package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.circuit.bench.BackToBack;
import org.spanwire.circuit.bench.BatchStatistics;
import org.spanwire.circuit.bench.BenchReadings;
import org.spanwire.circuit.bench.Imbalance;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.circuit.bench.MeasuredUnit;
import org.spanwire.circuit.bench.UnitReading;
import org.spanwire.result.Warning;

/**
 * The outcome of {@code spanwire balun bench}.
 *
 * @param version version of the program
 * @param limits what units are held to
 * @param range what they must serve, if they are judged
 * @param units the units in the order of the inputs
 * @param chokes choking impedances in the order of the inputs
 * @param heatRuns heat runs in the order of the inputs
 * @param batch statistics over several units
 * @param golden name of the unit that the batch is compared with
 */
public record BenchReport(
    String version,
    Limits limits,
    Optional<Limits.Range> range,
    List<Unit> units,
    List<Choke> chokes,
    List<HeatRun> heatRuns,
    Optional<BatchStatistics> batch,
    Optional<String> golden)
    implements Report {

  private static final Warning BLIND_SPOT =
      new Warning("pair-hides-imbalance", BackToBack.BLIND_SPOT);

  /**
   * A unit.
   *
   * @param source file it was read from
   * @param measured its readings
   * @param usable where all limits are kept; empty where a way of measuring does not show them all
   * @param judgement over the range it must serve
   */
  public record Unit(
      String source,
      MeasuredUnit measured,
      Optional<List<Limits.Range>> usable,
      Optional<Limits.Judgement> judgement) {

    String title() {
      return measured.name().equals(source) ? source : measured.name() + " (" + source + ")";
    }

    boolean failed() {
      return judgement.isPresent() && !judgement.get().passed();
    }
  }

  /**
   * Choking impedance against frequency.
   *
   * @param source file it was read from
   * @param readings rising in frequency
   */
  public record Choke(String source, List<BenchReadings.ChokeAt> readings) {}

  /**
   * A heat run.
   *
   * @param source file it was read from
   * @param heat the run
   */
  public record HeatRun(String source, BenchReadings.Heat heat) {}

  /** Takes copies. */
  public BenchReport {
    units = List.copyOf(units);
    chokes = List.copyOf(chokes);
    heatRuns = List.copyOf(heatRuns);
  }

  /** Whether no unit failed. */
  public boolean passed() {
    return units.stream().noneMatch(Unit::failed);
  }

  @Override
  public List<Warning> warnings() {
    return units.stream().anyMatch(unit -> unit.measured().method().hidesImbalance())
        ? List.of(BLIND_SPOT)
        : List.of();
  }

  @Override
  public String text(Palette palette) {
    return new BenchText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    new BenchJson(this, json).write();
  }

  /** One row per reading. An infinite value is {@code inf}; what a reading cannot show is empty. */
  @Override
  public void csv(CSVPrinter csv) throws IOException {
    csv.printRecord(
        "source",
        "measured_as",
        "frequency_hz",
        "loss_db",
        "return_loss_db",
        "amplitude_imbalance_db",
        "phase_imbalance_deg",
        "rejection_db",
        "conversion_db",
        "choke_resistance_ohm",
        "choke_reactance_ohm",
        "choke_uncertainty_ohm",
        "outcome",
        "warnings");
    for (Unit unit : units) {
      for (UnitReading reading : unit.measured().readings()) {
        csvRow(csv, unit, reading);
      }
    }
    for (Choke choke : chokes) {
      for (BenchReadings.ChokeAt at : choke.readings()) {
        csv.printRecord(
            choke.source(),
            "choke",
            at.frequencyHz(),
            "",
            "",
            "",
            "",
            "",
            "",
            SolveCsv.cell(at.reading().impedance().getReal()),
            SolveCsv.cell(at.reading().impedance().getImaginary()),
            SolveCsv.cell(at.reading().uncertaintyOhm()),
            "",
            "");
      }
    }
  }

  private static void csvRow(CSVPrinter csv, Unit unit, UnitReading reading) throws IOException {
    Optional<Imbalance> imbalance = reading.imbalance();
    csv.printRecord(
        unit.title(),
        unit.measured().method().label(),
        reading.frequencyHz(),
        SolveCsv.cell(reading.lossDb()),
        SolveCsv.cell(reading.returnLossDb()),
        imbalance.map(i -> SolveCsv.cell(i.amplitudeDb())).orElse(""),
        imbalance.map(i -> SolveCsv.cell(i.phaseDegrees())).orElse(""),
        imbalance.map(i -> SolveCsv.cell(i.rejectionDb())).orElse(""),
        SolveCsv.cell(reading.conversionDb()),
        "",
        "",
        "",
        unit.judgement().map(j -> j.passed() ? "passed" : "failed").orElse(""),
        unit.measured().method().hidesImbalance() ? BLIND_SPOT.name() : "");
  }
}
