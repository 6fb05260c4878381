package org.spanwire.design;

import java.util.List;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.unit.Dimension;

/** Reads what exposure of people is judged by. */
final class ExposureReader {

  private final Evaluator evaluator;

  ExposureReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  ExposureRules rules(Item item) {
    Fields fields = item.fields("limits", "mode", "transmitting", "floors");
    ExposureRules strict = ExposureRules.STRICT;
    List<ExposureLimit> limits =
        fields
            .optional("limits")
            .map(list -> list.items("a list such as [icnirp-2020-public]"))
            .map(names -> names.stream().map(ExposureReader::limit).toList())
            .orElse(strict.limits());
    OperatingMode mode = fields.optional("mode").map(ExposureReader::mode).orElse(strict.mode());
    double transmitting =
        fields
            .optional("transmitting")
            .map(share -> evaluator.positive(share, Dimension.NUMBER))
            .orElse(strict.transmitting());
    List<Double> floors =
        fields
            .optional("floors")
            .map(list -> list.items("a list of heights such as [0 m, 3 m]"))
            .map(
                heights ->
                    heights.stream().map(h -> evaluator.notNegative(h, Dimension.LENGTH)).toList())
            .orElse(strict.floors());
    return item.checked(() -> new ExposureRules(limits, mode, transmitting, floors));
  }

  private static ExposureLimit limit(Item item) {
    return ExposureLimit.find(item.text())
        .orElseThrow(
            () ->
                item.unknown(
                    "limit", ExposureLimit.all().stream().map(ExposureLimit::name).toList()));
  }

  private static OperatingMode mode(Item item) {
    return OperatingMode.find(item.text())
        .orElseThrow(() -> item.unknown("mode", OperatingMode.words()));
  }
}
