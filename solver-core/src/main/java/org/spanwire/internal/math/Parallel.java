package org.spanwire.internal.math;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Runs independent tasks side by side. */
public final class Parallel {

  private Parallel() {}

  /**
   * Runs all tasks.
   *
   * @param threads number of threads; one keeps to the calling thread
   * @return the results in the order of the tasks
   * @throws CancellationException if the calling thread is interrupted
   * @throws RuntimeException what the first failing task in that order threw
   */
  public static <T> List<T> run(int threads, List<Callable<T>> tasks) {
    List<T> results = new ArrayList<>();
    if (threads == 1 || tasks.size() == 1) {
      for (Callable<T> task : tasks) {
        results.add(call(task));
      }
      return results;
    }
    ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, tasks.size()));
    try {
      for (Future<T> future : pool.invokeAll(tasks)) {
        results.add(call(future::get));
      }
      return results;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      CancellationException cancelled = new CancellationException("interrupted while solving");
      cancelled.initCause(e);
      throw cancelled;
    } finally {
      pool.shutdownNow();
    }
  }

  private static <T> T call(Callable<T> task) {
    try {
      return task.call();
    } catch (ExecutionException e) {
      throw unchecked(e.getCause());
    } catch (Exception e) {
      throw unchecked(e);
    }
  }

  private static RuntimeException unchecked(Throwable cause) {
    if (cause instanceof Error error) {
      throw error;
    }
    return cause instanceof RuntimeException known ? known : new IllegalStateException(cause);
  }
}
