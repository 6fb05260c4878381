package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * A fixed pool of threads that keeps the order of its tasks: the results do not depend on the
 * number of threads.
 */
final class Workers implements AutoCloseable {

  private final ExecutorService pool;

  /** Starts a number of threads, at least 1. */
  Workers(int threads) {
    pool =
        Executors.newFixedThreadPool(
            threads,
            task -> {
              Thread thread = new Thread(task, "spanwire-worker");
              thread.setDaemon(true);
              return thread;
            });
  }

  /**
   * Runs all tasks.
   *
   * @return their results in the order of the tasks
   * @throws RuntimeException what the first failing task in that order threw
   */
  <T> List<T> run(List<Callable<T>> tasks) {
    List<Future<T>> futures = new ArrayList<>();
    for (Callable<T> task : tasks) {
      futures.add(pool.submit(task));
    }
    List<T> results = new ArrayList<>();
    try {
      for (Future<T> future : futures) {
        results.add(future.get());
      }
      return results;
    } catch (ExecutionException e) {
      pool.shutdownNow();
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      if (e.getCause() instanceof Error cause) {
        throw cause;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      pool.shutdownNow();
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while solving", e);
    }
  }

  @Override
  public void close() {
    pool.shutdown();
  }
}
