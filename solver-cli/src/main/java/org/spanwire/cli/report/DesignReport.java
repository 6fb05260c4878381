package org.spanwire.cli.report;

import java.util.List;
import java.util.Optional;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.cli.output.CutReport;
import org.spanwire.cli.output.ExposureReport;
import org.spanwire.design.Design;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.study.BandCurves;
import org.spanwire.study.BandPortrait;
import org.spanwire.study.Installation;
import org.spanwire.study.InstallationResponse;
import org.spanwire.study.Plane;
import org.spanwire.study.WorstSwrMap;

/**
 * The outcome of {@code spanwire report}.
 *
 * @param bands the design judged over its bands, with what that holds for
 * @param installation the design as it is put up
 * @param curves curves over every band, with the spreads
 * @param response all frequencies from the lowest to the highest band, if there are several
 * @param portraits every band at its best match
 * @param map worst SWR against two parameters, if there are such
 * @param exposure how far people must keep away
 * @param cut lengths to cut, and trim
 * @param input what identifies the input
 */
public record DesignReport(
    BandsReport bands,
    Installation installation,
    List<BandCurves> curves,
    Optional<InstallationResponse> response,
    List<BandPortrait> portraits,
    Optional<WorstSwrMap> map,
    ExposureReport exposure,
    CutReport cut,
    Input input) {

  /**
   * What identifies the input.
   *
   * @param sha256 of the design file, hexadecimal
   * @param settings parameters given other values than the file's, NAME=VALUE
   */
  public record Input(String sha256, List<String> settings) {
    /** Takes a copy. */
    public Input {
      settings = List.copyOf(settings);
    }
  }

  /** Takes copies. */
  public DesignReport {
    curves = List.copyOf(curves);
    portraits = List.copyOf(portraits);
  }

  /** Worst SWR in a band, the design as it stands and with every spread at its ends. */
  double worst(int band) {
    return Math.max(
        curves.get(band).worstSwrInBand(),
        bands.bands().get(band).at(Plane.TRANSMITTER).worst().swr());
  }

  /** The largest horizontal distance in metres between two places of the wires. */
  double across() {
    List<Point> points =
        design().antenna().wires().stream().map(Wire::path).flatMap(List::stream).toList();
    double most = 0;
    for (Point one : points) {
      for (Point other : points) {
        most = Math.max(most, Math.hypot(one.x() - other.x(), one.y() - other.y()));
      }
    }
    return most;
  }

  Design design() {
    return bands.conditions().design();
  }

  /** The page of a kind, complete. */
  public String html(PageKind kind) {
    Page page = new Page(kind.title(), design().title(), bands.conditions().version());
    page.bands(bands.bands().stream().map(band -> band.band()).toList());
    page.sections(kind.sections(this));
    return page.html();
  }
}
