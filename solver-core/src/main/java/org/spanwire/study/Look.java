package org.spanwire.study;

import java.util.List;

/** What an installation shows at frequencies in hertz, in ranges of frequency by their index. */
interface Look {

  /** Beyond it a reflection coefficient that is off by a model's error says nothing. */
  double LARGEST_SWR = 1000;

  /** SWR; {@link #LARGEST_SWR} stands for all that is larger. */
  double swr(int range, double frequencyHz, Plane plane);

  /** Heat of the chokes at the top of the feed line in watts. */
  double chokeWatts(int range, double frequencyHz);

  /** A gain or other ratio in decibels, by its number among those asked for. */
  double decibels(int range, double frequencyHz, int number);

  /** SWR at one of several planes. */
  static double swr(List<PlaneMismatch> planes, Plane plane) {
    return Math.min(
        LARGEST_SWR,
        planes.stream()
            .filter(each -> each.plane() == plane)
            .findFirst()
            .orElseThrow()
            .mismatch()
            .swr());
  }
}
