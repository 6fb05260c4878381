package org.spanwire.validation.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The kept run of the honesty study, and its first structures solved anew: the figures of the long
 * run hold for the solver as it is if the short one agrees.
 */
public final class HonestyCheck {

  private static final int STRUCTURES = 40;

  /** Impedances may move by this share of the stated error before the kept run is out of date. */
  private static final double IMPEDANCE_SHARE = 0.1;

  private static final double STATED_SHARE = 0.1;

  private final HonestyRecord kept;
  private final List<HonestyCase> before;
  private final List<HonestyCase> anew;

  private HonestyCheck(HonestyRecord kept, List<HonestyCase> before, List<HonestyCase> anew) {
    this.kept = kept;
    this.before = before;
    this.anew = anew;
  }

  /** Solves the first structures of the kept run anew, against its references. */
  public static HonestyCheck run() {
    HonestyRecord kept = HonestyRecord.kept();
    List<Integer> first =
        kept.study().cases().stream()
            .map(c -> c.structure().number())
            .distinct()
            .limit(STRUCTURES)
            .toList();
    List<HonestyCase> before =
        kept.study().cases().stream().filter(c -> first.contains(c.structure().number())).toList();
    List<HonestyCase> anew =
        before.stream().parallel().map(HonestyCase::solvedAgain).flatMap(Optional::stream).toList();
    return new HonestyCheck(kept, before, anew);
  }

  /** One line for each target missed and each feed that no longer is what was kept. */
  public List<String> faults() {
    List<String> faults = new ArrayList<>();
    if (!new HonestyReport(kept.study()).keepsTargets()) {
      faults.add("the kept run of the stated error misses a target");
    }
    if (anew.size() < before.size()) {
      faults.add((before.size() - anew.size()) + " feeds no longer reach their tolerance");
    }
    for (HonestyCase now : anew) {
      HonestyCase then = now.among(before);
      boolean moved =
          now.impedance().subtract(then.impedance()).abs() > IMPEDANCE_SHARE * then.statedOhm();
      boolean restated =
          Math.abs(now.statedOhm() - then.statedOhm()) > STATED_SHARE * then.statedOhm();
      if (moved || restated) {
        faults.add(
            String.format(
                Locale.ROOT,
                "structure %d, feed %s at %.0e: impedance or stated error differ from the kept run;"
                    + " run the study anew",
                now.structure().number(),
                now.feed(),
                now.tolerance()));
      }
    }
    return faults;
  }

  /** Section of the report, with its heading. */
  public String markdown() {
    StringBuilder out = new StringBuilder("## Is the stated error true?\n\n");
    out.append("Run of ").append(kept.date()).append(". ");
    out.append(new HonestyReport(kept.study()).markdown());
    out.append(
        String.format(
            Locale.ROOT,
            "%nThe first %d of these structures solved anew by this build: %d feeds judged, %.1f %%"
                + " within the stated error, median stated/true %.1f; in the kept run %.1f %% and"
                + " %.1f.%n",
            STRUCTURES,
            judged(anew).size(),
            100 * HonestyReport.shareHonest(judged(anew)),
            HonestyReport.medianRatio(judged(anew)),
            100 * HonestyReport.shareHonest(judged(before)),
            HonestyReport.medianRatio(judged(before))));
    faults().forEach(fault -> out.append("\n- **").append(fault).append("**\n"));
    return out.toString();
  }

  private static List<HonestyCase> judged(List<HonestyCase> cases) {
    return cases.stream().filter(HonestyCase::isJudged).toList();
  }
}
