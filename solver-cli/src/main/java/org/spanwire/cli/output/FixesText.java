package org.spanwire.cli.output;

import java.util.List;
import org.spanwire.study.BandFixes;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** What single changes would help, for reading. */
final class FixesText {

  private FixesText() {}

  static void write(StringBuilder out, Palette palette, List<BandFixes> bands) {
    out.append(palette.heading("What single change would give a band the next better verdict"))
        .append('\n');
    if (bands.isEmpty()) {
      out.append("  nothing to do: no band needs a tuner\n\n");
      return;
    }
    Table table =
        new Table()
            .word("band")
            .word("verdict")
            .word("wanted")
            .word("change")
            .number("from")
            .number("to")
            .number("by")
            .number("worst SWR", "then")
            .word("spoils");
    for (BandFixes band : bands) {
      if (band.fixes().isEmpty()) {
        table.row(
            band.band(),
            band.now().label(),
            band.wanted().label(),
            "none found",
            "",
            "",
            "",
            "",
            "");
      }
      for (BandFixes.Fix fix : band.fixes()) {
        table.row(
            band.band(),
            band.now().label(),
            band.wanted().label(),
            fix.name(),
            value(fix, fix.from()),
            value(fix, fix.to()),
            by(fix),
            Numbers.swr(fix.worst()),
            fix.spoilt().isEmpty() ? "-" : String.join(", ", fix.spoilt()));
      }
    }
    out.append(table.render())
        .append(
            "parameters within their limits and 15 %; spoils: bands with a worse verdict then\n\n");
  }

  private static boolean isShare(BandFixes.Fix fix) {
    return fix.part() == BandFixes.Part.PARAMETER
        && fix.from().dimension().equals(Dimension.NUMBER)
        && Math.abs(fix.from().value()) < 1;
  }

  private static String value(BandFixes.Fix fix, Quantity quantity) {
    return switch (fix.part()) {
      case PARAMETER ->
          isShare(fix)
              ? Numbers.fixed(100 * quantity.value(), 2) + " %"
              : new Quantity(
                      Double.parseDouble(Numbers.significant(quantity.value(), digits(fix))),
                      quantity.dimension())
                  .toString();
      case RATIO -> Numbers.significant(quantity.value(), 4) + ":1";
      case CHOKE -> Numbers.significant(quantity.value(), 4) + " times";
    };
  }

  /** As many as show the change. */
  private static int digits(BandFixes.Fix fix) {
    double to = Math.abs(fix.to().value());
    double change = Math.abs(fix.to().value() - fix.from().value());
    return Math.max(4, Math.min(9, 1 + (int) Math.ceil(Math.log10(to / change))));
  }

  private static String by(BandFixes.Fix fix) {
    double change = fix.to().value() - fix.from().value();
    String sign = change > 0 ? "+" : "";
    if (fix.part() != BandFixes.Part.PARAMETER) {
      return "";
    }
    if (fix.from().dimension().equals(Dimension.LENGTH)) {
      return sign + Numbers.fixed(100 * change, 0) + " cm";
    }
    return isShare(fix)
        ? sign + Numbers.fixed(100 * change, 2) + " points"
        : sign + Numbers.significant(change, 3);
  }
}
