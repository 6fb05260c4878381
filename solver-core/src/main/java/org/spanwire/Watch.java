package org.spanwire;

/**
 * Watches a solver at work, and may call it off. All studies solve through a {@link Solver}, so one
 * watch serves them too. Methods are called from the threads that solve, several at once; they must
 * be safe for that and quick.
 *
 * <p>Work that is called off ends within one step of one solution with {@link
 * java.util.concurrent.CancellationException}. An interrupt of the thread that waits for a study
 * calls it off as well.
 */
public interface Watch {

  /** Sees nothing and calls nothing off. */
  Watch NONE = new Watch() {};

  /** Whether to stop. Asked before every step of every solution. */
  default boolean cancelled() {
    return false;
  }

  /**
   * Told that a solution is done.
   *
   * @param frequencyHz its frequency in hertz
   * @param unknowns number of unknowns solved for
   */
  default void solved(double frequencyHz, int unknowns) {}
}
