package org.spanwire.validation.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Runs the honesty study, keeps it as a file, and writes it as Markdown. */
public final class HonestyReport {

  static final long SEED = 20_261_125L;

  private static final int STRUCTURES = 320;
  private static final int MOST_LISTED = 30;

  private final HonestyStudy study;

  HonestyReport(HonestyStudy study) {
    this.study = study;
  }

  /**
   * Runs the study at length, writes {@value HonestyRecord#FILE} and prints the tables; exits with
   * 1 if a target is missed.
   *
   * @param arguments the directory to write to, and the number of structures; the working directory
   *     and 320 without
   */
  public static void main(String[] arguments) throws IOException {
    Path directory = Path.of(arguments.length > 0 ? arguments[0] : ".");
    int structures = arguments.length > 1 ? Integer.parseInt(arguments[1]) : STRUCTURES;
    HonestyStudy study = HonestyStudy.run(SEED, structures);
    new HonestyRecord(LocalDate.now(ZoneOffset.UTC), study).write(directory);
    HonestyReport report = new HonestyReport(study);
    System.out.print(report.markdown());
    System.exit(report.keepsTargets() ? 0 : 1);
  }

  private List<HonestyCase> judged(double tolerance) {
    return study.cases().stream().filter(c -> c.tolerance() == tolerance && c.isJudged()).toList();
  }

  static double shareHonest(List<HonestyCase> cases) {
    return cases.stream().filter(HonestyCase::isHonest).count() / (double) cases.size();
  }

  static double medianRatio(List<HonestyCase> cases) {
    double[] sorted = cases.stream().mapToDouble(HonestyCase::ratio).sorted().toArray();
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
  }

  boolean keepsTargets() {
    return Arrays.stream(HonestyStudy.TOLERANCES)
        .mapToObj(this::judged)
        .allMatch(cases -> shareHonest(cases) >= 0.95 && medianRatio(cases) <= 20);
  }

  String markdown() {
    StringBuilder out = new StringBuilder("");
    out.append(
        String.format(
            Locale.ROOT,
            "%d random structures, seed %d; %d more were refused by the geometry check. Each feed's"
                + " impedance is compared with that of the tightest run.%n%n"
                + "| tolerance | ground | feeds judged | within the stated error | median stated/true"
                + " | smallest stated/true | not judged |%n|---:|---|---:|---:|---:|---:|---:|%n",
            study.structures(),
            study.seed(),
            study.refused()));
    for (double tolerance : HonestyStudy.TOLERANCES) {
      out.append(row(tolerance, "all", c -> true));
      for (RandomStructure.Below below : RandomStructure.Below.values()) {
        out.append(row(tolerance, below.label(), c -> c.structure().below() == below));
      }
    }
    out.append(
        "\nTargets: at least 95 % within, median at most 20. A feed is not judged where the tightest"
            + " run states more than 0.3 of the error that it should judge.\n");
    appendMisses(out);
    out.append("\nTolerance out of reach: ").append(study.outOfReach().size()).append("\n\n");
    study.outOfReach().forEach(line -> out.append("- ").append(line).append('\n'));
    return out.toString();
  }

  private String row(
      double tolerance, String label, java.util.function.Predicate<HonestyCase> which) {
    List<HonestyCase> cases = judged(tolerance).stream().filter(which).toList();
    if (cases.isEmpty()) {
      return "";
    }
    long all =
        study.cases().stream().filter(c -> c.tolerance() == tolerance && which.test(c)).count();
    return String.format(
        Locale.ROOT,
        "| %.0e | %s | %d | %.1f %% | %.1f | %.2f | %d |%n",
        tolerance,
        label,
        cases.size(),
        100 * shareHonest(cases),
        medianRatio(cases),
        cases.stream().mapToDouble(HonestyCase::ratio).min().orElseThrow(),
        all - cases.size());
  }

  private void appendMisses(StringBuilder out) {
    List<HonestyCase> misses =
        study.cases().stream()
            .filter(c -> c.isJudged() && !c.isHonest())
            .sorted(Comparator.comparingDouble(HonestyCase::ratio))
            .toList();
    out.append("\n")
        .append(misses.size())
        .append(" feeds outside their stated error, worst first:\n\n");
    out.append(
        "| structure | feed | ground | wires | tolerance | unknowns | Z, ohm | true, ohm | stated, ohm |\n");
    out.append("|---:|---|---|---:|---:|---:|---|---:|---:|\n");
    for (HonestyCase c : misses.subList(0, Math.min(MOST_LISTED, misses.size()))) {
      out.append(
          String.format(
              Locale.ROOT,
              "| %d | %s | %s | %d | %.0e | %d | %.4g %+.4gj | %.2g | %.2g |%n",
              c.structure().number(),
              c.feed(),
              c.structure().below().label(),
              c.structure().antenna().wires().size(),
              c.tolerance(),
              c.unknowns(),
              c.impedance().getReal(),
              c.impedance().getImaginary(),
              c.trueOhm(),
              c.statedOhm()));
    }
  }
}
