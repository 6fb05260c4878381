package org.spanwire;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;

/**
 * Wires, feeds and fittings over a ground: what a {@link Solver} solves. Immutable.
 *
 * <p>Coordinates are metres, z up, the ground surface at z = 0. Wires join where path points
 * coincide.
 */
public final class Antenna {

  private final List<Wire> wires;
  private final List<Feed> feeds;
  private final List<Fitting> fittings;
  private final Ground ground;

  private Antenna(Builder builder) {
    this.wires = List.copyOf(builder.wires);
    this.feeds = List.copyOf(builder.feeds);
    this.fittings = List.copyOf(builder.fittings);
    this.ground = builder.ground;
  }

  /** Starts an antenna in free space with no wires. */
  public static Builder builder() {
    return new Builder();
  }

  /** The wires in the order they were added. */
  public List<Wire> wires() {
    return wires;
  }

  /** The feeds in the order they were added. */
  public List<Feed> feeds() {
    return feeds;
  }

  /** The fittings in the order they were added. */
  public List<Fitting> fittings() {
    return fittings;
  }

  /** What lies below z = 0. */
  public Ground ground() {
    return ground;
  }

  /** The wire of a name, if there is one. */
  public Optional<Wire> wire(String name) {
    return wires.stream().filter(w -> w.name().equals(name)).findFirst();
  }

  /** The same antenna with all wires farther up; metres, negative for down. */
  public Antenna lifted(double metres) {
    if (metres == 0) {
      return this;
    }
    Builder builder = toBuilder();
    builder.wires.replaceAll(wire -> wire.lifted(metres));
    return builder.build();
  }

  /**
   * The same antenna with its only feed elsewhere on its wire.
   *
   * @throws IllegalStateException if there is not exactly one feed
   */
  public Antenna withFeedAt(Position place) {
    if (feeds.size() != 1) {
      throw new IllegalStateException("the antenna has " + feeds.size() + " feeds, needs one");
    }
    Builder builder = toBuilder();
    builder.feeds.set(0, feeds.get(0).withPlace(place));
    return builder.build();
  }

  /** A builder that starts from this antenna. */
  public Builder toBuilder() {
    Builder builder = new Builder();
    builder.wires.addAll(wires);
    builder.feeds.addAll(feeds);
    builder.fittings.addAll(fittings);
    builder.ground = ground;
    return builder;
  }

  /** Collects the parts of an antenna. Not thread-safe. */
  public static final class Builder {
    private final List<Wire> wires = new ArrayList<>();
    private final List<Feed> feeds = new ArrayList<>();
    private final List<Fitting> fittings = new ArrayList<>();
    private Ground ground = Ground.freeSpace();

    private Builder() {}

    /** Adds a wire. */
    public Builder wire(Wire wire) {
      wires.add(Objects.requireNonNull(wire, "wire"));
      return this;
    }

    /** Adds a wire through points. */
    public Builder wire(String name, Conductor conductor, Point... path) {
      return wire(Wire.of(name, conductor, path));
    }

    /** Adds a feed. */
    public Builder feed(Feed feed) {
      feeds.add(Objects.requireNonNull(feed, "feed"));
      return this;
    }

    /** Adds a feed of 1 V with a gap of two wire diameters. */
    public Builder feed(String name, String wire, Position at) {
      return feed(Feed.of(name, wire, at));
    }

    /** Adds a fitting. */
    public Builder fitting(Fitting fitting) {
      fittings.add(Objects.requireNonNull(fitting, "fitting"));
      return this;
    }

    /** Sets what lies below z = 0. */
    public Builder ground(Ground value) {
      ground = Objects.requireNonNull(value, "ground");
      return this;
    }

    /** The antenna. Its geometry is checked when it is solved. */
    public Antenna build() {
      return new Antenna(this);
    }
  }
}
