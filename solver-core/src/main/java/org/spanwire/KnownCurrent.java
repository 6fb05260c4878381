package org.spanwire;

import java.util.List;
import java.util.function.Function;
import org.spanwire.geometry.Point;
import org.spanwire.internal.field.GainPattern;
import org.spanwire.result.Direction;
import org.spanwire.result.GainSample;
import org.spanwire.result.Lobe;
import org.spanwire.result.MainLobe;
import org.spanwire.result.NearField;
import org.spanwire.result.PeakGain;
import org.spanwire.result.RadiatedField;

/** What a current radiates, whether it was solved for or prescribed. */
abstract class KnownCurrent implements FieldSource {

  /** Its fields. */
  abstract CurrentFields fields();

  /** Power in watts that gain is relative to. */
  abstract double gainPower();

  private GainPattern pattern() {
    return fields().pattern(gainPower());
  }

  @Override
  public NearField nearField(Point point) {
    return fields().nearField(point);
  }

  @Override
  public Function<Point, NearField> nearFieldMap(double relativeTolerance) {
    return fields().nearFieldMap(relativeTolerance);
  }

  @Override
  public RadiatedField farField(Direction direction) {
    return fields().farField().at(direction);
  }

  @Override
  public double gainDbi(Direction direction) {
    return pattern().gainDbi(direction);
  }

  @Override
  public GainSample gainAtElevation(double elevationDegrees) {
    return pattern().atElevation(elevationDegrees);
  }

  @Override
  public PeakGain peakGain() {
    return pattern().peak();
  }

  @Override
  public MainLobe mainLobe() {
    return fields().mainLobe(gainPower());
  }

  @Override
  public List<Lobe> lobes() {
    return fields().lobes(gainPower());
  }

  @Override
  public double directivityDbi() {
    return fields().directivityDbi();
  }

  @Override
  public double directivityErrorDb() {
    return fields().directivityErrorDb();
  }
}
