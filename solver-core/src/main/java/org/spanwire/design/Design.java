package org.spanwire.design;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.spanwire.Antenna;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.GeometryException;
import org.spanwire.medium.MechanicalProperties;

/**
 * One antenna and its installation, as one design file holds it, with every expression evaluated.
 * Immutable. Made by {@link DesignReader}.
 */
public final class Design {

  private final Document document;
  private final Map<String, String> overrides;
  private final String title;
  private final Map<String, Parameter> parameters;
  private final Antenna antenna;
  private final Map<String, Hang> hangs;
  private final Map<String, MechanicalProperties> mechanical;
  private final List<Stage> feedChain;
  private final Optional<FeedLine> feedLine;
  private final double referenceOhm;
  private final OptionalDouble power;
  private final Optional<CutRules> cutRules;
  private final List<KitItem> kit;
  private final Map<String, Weather> weather;
  private final Map<String, PartRating> ratings;
  private final Optional<ExposureRules> exposureRules;
  private final Optional<BandPlan> bandPlan;
  private final List<Double> frequencies;
  private final List<Requirement> requirements;

  Design(Document document, Map<String, String> overrides) {
    this.document = document;
    this.overrides = Map.copyOf(overrides);
    Fields fields = fields(document);
    this.title = Words.oneLine(fields.required("title", "Hut kit").text());
    Evaluator evaluator = new Evaluator(fields.optional("parameters"), overrides);
    this.parameters = Collections.unmodifiableMap(evaluator.parameters());
    AntennaReader reader = new AntennaReader(evaluator);
    this.antenna = reader.read(fields);
    this.hangs = Collections.unmodifiableMap(reader.hangs());
    this.mechanical = Collections.unmodifiableMap(reader.mechanical());
    InstallationReader installation = new InstallationReader(evaluator);
    this.feedChain = fields.optional("feed-chain").map(installation::feedChain).orElse(List.of());
    this.feedLine =
        fields
            .optional(FeedLine.NAME)
            .map(item -> new FeedLineReader(evaluator, reader).read(item, antenna, feedChain));
    this.referenceOhm = fields.optional("reference").map(installation::reference).orElse(50.0);
    this.power = fields.optional("power").map(installation::power).orElse(OptionalDouble.empty());
    this.cutRules = fields.optional("cut").map(installation::cut);
    this.kit = fields.optional("kit").map(new KitReader(evaluator)::read).orElse(List.of());
    this.weather = fields.optional("weather").map(installation::weather).orElse(Weather.ASSUMED);
    this.ratings =
        fields
            .optional("ratings")
            .map(item -> new RatingReader(evaluator).ratings(item, fittings()))
            .orElse(Map.of());
    this.exposureRules =
        fields.optional("exposure").map(item -> new ExposureReader(evaluator).rules(item));
    this.bandPlan = fields.optional("bands").map(installation::bands);
    this.frequencies =
        fields.optional("frequencies").map(installation::frequencies).orElse(List.of());
    this.requirements =
        fields
            .optional("requirements")
            .map(
                item ->
                    new RequirementReader(
                            evaluator,
                            bands(),
                            feedLine.isPresent(),
                            parameters.values().stream().anyMatch(p -> p.spread().isPresent()))
                        .read(item))
            .orElse(List.of());
  }

  private static Fields fields(Document document) {
    Fields fields =
        document
            .root()
            .fields(
                "format",
                "title",
                "parameters",
                "conductors",
                "wires",
                "feeds",
                "fittings",
                "ground",
                "feed-chain",
                FeedLine.NAME,
                "reference",
                "power",
                "cut",
                "kit",
                "weather",
                "ratings",
                "exposure",
                "bands",
                "frequencies",
                "requirements");
    Item format = fields.required("format", DesignReader.FORMAT);
    if (!format.text().equals(DesignReader.FORMAT)) {
      throw format.fault(
          "format "
              + Words.quote(format.text())
              + " is not known here; expected "
              + DesignReader.FORMAT);
    }
    return fields;
  }

  /** The design's title. */
  public String title() {
    return title;
  }

  /** The file it was read from, as it was named to the reader. */
  public String source() {
    return document.name();
  }

  /** The parameters by name, in the order of the file. */
  public Map<String, Parameter> parameters() {
    return parameters;
  }

  /**
   * The wires, feeds, fittings and ground at the parameters' nominal values. A wire that hangs has
   * the path that it hangs in.
   */
  public Antenna antenna() {
    return antenna;
  }

  /** The wires that hang, by name, in the order of the file; may be empty. */
  public Map<String, Hang> hangs() {
    return hangs;
  }

  /** What conductors weigh and bear, by name, as far as it is stated or follows from densities. */
  public Map<String, MechanicalProperties> mechanical() {
    return mechanical;
  }

  /** What the kit list holds besides the parts of the model, or says about them; may be empty. */
  public List<KitItem> kit() {
    return kit;
  }

  /** How the wire is made up, if stated. */
  public Optional<CutRules> cutRules() {
    return cutRules;
  }

  /**
   * The weather that hanging wires are looked at in, by name; {@link Weather#ASSUMED} if unstated.
   */
  public Map<String, Weather> weather() {
    return weather;
  }

  private Set<String> fittings() {
    return antenna.fittings().stream()
        .map(Fitting::name)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /**
   * What the parts bear: by {@link PartRating#TRANSFORMER} and the like, and by the names of
   * fittings; may be empty.
   */
  public Map<String, PartRating> ratings() {
    return ratings;
  }

  /** What exposure of people is judged by, if stated. */
  public Optional<ExposureRules> exposureRules() {
    return exposureRules;
  }

  /** The stages from the feedpoint towards the transmitter; empty if there are none. */
  public List<Stage> feedChain() {
    return feedChain;
  }

  /** The route of the chain's line, if it is part of the antenna. */
  public Optional<FeedLine> feedLine() {
    return feedLine;
  }

  /**
   * Reference impedance in ohms for SWR at the transmitter; 50 ohm unless the file says otherwise.
   */
  public double referenceOhm() {
    return referenceOhm;
  }

  /**
   * Reference impedance in ohms for SWR at the feedpoint: the transmitter's, times the impedance
   * ratios of the transformers on the way.
   */
  public double feedpointReferenceOhm() {
    double reference = referenceOhm;
    for (Stage stage : feedChain) {
      if (stage instanceof Stage.Transformer transformer) {
        reference *= transformer.ratio();
      }
    }
    return reference;
  }

  /** Power in watts available from the transmitter, if stated. */
  public OptionalDouble powerWatts() {
    return power;
  }

  /** The band plan cut down to the bands in use, if the design names one. */
  public Optional<BandPlan> bandPlan() {
    return bandPlan;
  }

  /** The bands in use; empty if the design names none. */
  public List<Band> bands() {
    return bandPlan.map(BandPlan::bands).orElse(List.of());
  }

  /** Single frequencies of interest in hertz, in the order of the file; may be empty. */
  public List<Double> frequencies() {
    return frequencies;
  }

  /** The limits this design must keep, in the order of the file; may be empty. */
  public List<Requirement> requirements() {
    return requirements;
  }

  /**
   * The same design with another nominal value of a parameter. Its spread and limits stay.
   *
   * @param parameter name of a parameter of this design
   * @param quantity a number with a unit or an expression over the other parameters: "9m"
   * @throws DesignException if there is no such parameter, or the design is faulty with that value
   */
  public Design with(String parameter, String quantity) {
    return with(Map.of(parameter, quantity));
  }

  /**
   * The same design with other nominal values of several parameters, set all at once. Their spreads
   * and limits stay.
   *
   * @param quantities a number with a unit or an expression over the other parameters, by name of a
   *     parameter of this design
   * @throws DesignException if there is no such parameter, or the design is faulty with those
   *     values
   */
  public Design with(Map<String, String> quantities) {
    for (String parameter : quantities.keySet()) {
      if (!parameters.containsKey(parameter)) {
        throw TextFile.whole(
            source(),
            "unknown parameter "
                + Words.quote(parameter)
                + "; "
                + Words.remedy(parameter, parameters.keySet()));
      }
    }
    Map<String, String> changed = new LinkedHashMap<>(overrides);
    changed.putAll(quantities);
    return new Design(document, changed);
  }

  /** Places a fault of the geometry at the wire, feed or fitting in the file. */
  public DesignException locate(GeometryException fault) {
    Map<GeometryException.Subject, String> sections =
        Map.of(
            GeometryException.Subject.WIRE, "wire",
            GeometryException.Subject.FEED, "feed",
            GeometryException.Subject.FITTING, "fitting");
    Fields fields = fields(document);
    String kind = sections.get(fault.subject());
    Optional<Item> part =
        fault.subjectName().startsWith(FeedLine.NAME)
            ? fields.optional(FeedLine.NAME)
            : Optional.ofNullable(kind)
                .flatMap(k -> fields.optional(k + "s"))
                .map(section -> section.names(kind).key(fault.subjectName()));
    boolean sagged =
        fault.subject() == GeometryException.Subject.WIRE
            && hangs.containsKey(fault.subjectName())
            && hangs.get(fault.subjectName()).shape().isPresent();
    return part.orElseGet(() -> fields.required("wires", ""))
        .fault(fault.getMessage() + (sagged ? "; its path is the one that it hangs in" : ""));
  }
}
