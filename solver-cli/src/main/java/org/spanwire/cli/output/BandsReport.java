package org.spanwire.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVPrinter;
import org.spanwire.design.Stage;
import org.spanwire.result.Warning;
import org.spanwire.study.BandFixes;
import org.spanwire.study.BandRating;
import org.spanwire.study.BandResponse;
import org.spanwire.study.BandSummary;
import org.spanwire.study.HeatAt;
import org.spanwire.study.Ledger;
import org.spanwire.study.Verdict;

/**
 * The outcome of {@code spanwire bands}.
 *
 * @param conditions what it holds for
 * @param feed name of the feed judged
 * @param bands the bands in the order of the plan
 * @param powerWatts power available from the transmitter
 * @param doubts named doubts about all of them
 * @param ratings what the parts bear, in the order of the bands; empty if not asked for
 * @param lineLengths which lengths of the feed line to avoid, if it was asked
 * @param fixes what would help the bands that need a tuner or more, if it was asked for
 */
public record BandsReport(
    Conditions conditions,
    String feed,
    List<BandResponse> bands,
    double powerWatts,
    List<Warning> doubts,
    List<BandRating> ratings,
    Optional<LineLengths> lineLengths,
    Optional<List<BandFixes>> fixes)
    implements Report {

  /** Takes copies. */
  public BandsReport {
    bands = List.copyOf(bands);
    doubts = List.copyOf(doubts);
    ratings = List.copyOf(ratings);
    fixes = fixes.map(List::copyOf);
  }

  /** Without ratings, and without what would help. */
  public BandsReport(
      Conditions conditions,
      String feed,
      List<BandResponse> bands,
      double powerWatts,
      List<Warning> doubts) {
    this(
        conditions, feed, bands, powerWatts, doubts, List.of(), Optional.empty(), Optional.empty());
  }

  /** The ratings, if asked for. */
  public Optional<RatingTables> ratingTables() {
    return ratings.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new RatingTables(ratings, powerWatts, conditions.design().ratings().keySet()));
  }

  /** The stages of the feed chain whose heat is known. */
  List<String> parts() {
    return bands.get(0).heat().stream()
        .map(HeatAt::part)
        .filter(part -> !part.equals(Ledger.CHOKE))
        .toList();
  }

  /** What it takes to use a band with a verdict. */
  public static String needs(Verdict verdict) {
    return switch (verdict) {
      case DIRECT -> "no tuner";
      case TUNABLE -> "tuner to 3:1";
      case WIDE_TUNER -> "tuner to 10:1";
      case UNUSABLE -> "unusable";
    };
  }

  /** The limits of the verdicts. */
  public static String verdictKey() {
    StringBuilder key = new StringBuilder("verdict by the worst SWR: ");
    for (Verdict verdict : Verdict.values()) {
      if (Double.isFinite(verdict.limit())) {
        key.append(verdict.label())
            .append(" <= ")
            .append(Numbers.significant(verdict.limit(), 3))
            .append(", ");
      } else {
        key.append(verdict.label()).append(" above");
      }
    }
    return key.toString();
  }

  /** What the bands come down to. */
  public BandSummary summary() {
    return new BandSummary(bands);
  }

  /** Parts of the design whose heat is not known, and why. */
  public List<String> unknownHeat() {
    List<String> unknown = new ArrayList<>();
    List<Stage> chain = conditions.design().feedChain();
    if (chain.stream().anyMatch(Stage.Choke.class::isInstance)
        && bands.get(0).heat(Ledger.CHOKE).isEmpty()) {
      unknown.add("choke: " + Json.NO_ROUTE);
    }
    if (conditions.hasIdealTransformer()) {
      unknown.add("transformer: taken as ideal");
    }
    return unknown;
  }

  @Override
  public List<Warning> warnings() {
    List<Warning> all = new ArrayList<>(doubts);
    bands.forEach(band -> all.addAll(band.warnings()));
    return all;
  }

  @Override
  public String text(Palette palette) {
    return new BandsText(this, palette).render();
  }

  @Override
  public void json(JsonGenerator json) throws IOException {
    new BandsJson(this, json).write();
  }

  @Override
  public void csv(CSVPrinter csv) throws IOException {
    new BandsCsv(this, csv).write();
  }
}
