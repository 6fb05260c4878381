package org.spanwire.practice;

import java.util.Objects;
import java.util.OptionalDouble;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.spanwire.design.Weather;
import org.spanwire.geometry.Span;
import org.spanwire.geometry.SpanLoad;
import org.spanwire.geometry.SpanShape;
import org.spanwire.medium.MechanicalProperties;
import org.spanwire.unit.PhysicalConstants;

/**
 * A wire strung between two supports, and what becomes of it in weather: its unstretched length
 * stays as it was strung, but for thermal expansion. Immutable.
 *
 * <p>An estimate for comparing designs. Whether supports, ropes and anchors hold is for somebody
 * competent to judge by local codes.
 */
public final class SpanMechanics {

  private final MechanicalProperties wire;
  private final double diameter;
  private final SpanShape strung;

  /**
   * A wire as strung in still air.
   *
   * @param shape the shape that a wire without stretch would take; its pull is kept
   * @param wire what the wire weighs and bears
   * @param diameter outer diameter in metres, coat included
   */
  public SpanMechanics(SpanShape shape, MechanicalProperties wire, double diameter) {
    this.wire = Objects.requireNonNull(wire, "wire");
    this.diameter = diameter;
    Span span = shape.span();
    this.strung =
        wire.stiffness().isEmpty()
            ? shape
            : new Span(span.first(), span.last(), span.load(), wire.stiffness().getAsDouble())
                .ofTension(shape.largestSupportTension());
  }

  /** The wire as strung: still air, no ice. */
  public SpanShape strung() {
    return strung;
  }

  /**
   * The same wire in weather.
   *
   * @throws IllegalArgumentException if the temperature changes and the wire's expansion is not
   *     known, or if a wire of unknown stiffness would become too short for its span
   */
  public SpanShape in(Weather weather) {
    Span span = strung.span();
    Vector3D along =
        new Vector3D(span.last().x() - span.first().x(), span.last().y() - span.first().y(), 0)
            .normalize();
    Vector3D across = Vector3D.PLUS_K.crossProduct(along);
    Vector3D force =
        span.load()
            .perMetre()
            .add(weather.windForce(diameter), across)
            .add(-weather.iceMass(diameter) * PhysicalConstants.STANDARD_GRAVITY, Vector3D.PLUS_K);
    return new Span(
            span.first(), span.last(), new SpanLoad(force, span.load().points()), span.stiffness())
        .ofLength(strung.unstretchedLength() * (1 + strain(weather.temperatureChange())));
  }

  private double strain(double kelvins) {
    if (kelvins == 0) {
      return 0;
    }
    return kelvins
        * wire.expansion()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "the wire's expansion is not known, so its length at another temperature is"
                            + " not either; give expansion: 17 ppm/K or the like"));
  }

  /** Breaking strength over the largest tension of a shape; empty if the strength is not known. */
  public OptionalDouble breakingMargin(SpanShape shape) {
    return wire.breakingStrength().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(wire.breakingStrength().getAsDouble() / shape.largestTension());
  }
}
