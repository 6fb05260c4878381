package org.spanwire.study;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * A fixed pool of threads that keeps the order of its tasks: the results do not depend on the
 * number of threads.
 */
final class Workers implements AutoCloseable {

  private final ExecutorService pool;

  /** Starts a number of threads, at least 1. */
  Workers(int threads) {
    if (threads < 1) {
      throw new IllegalArgumentException("threads " + threads + " must be at least 1");
    }
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
   * @throws CancellationException if the calling thread is interrupted
   */
  <T> List<T> run(List<Callable<T>> tasks) {
    List<Future<T>> futures = new ArrayList<>();
    for (Callable<T> task : tasks) {
      futures.add(pool.submit(task));
    }
    List<T> results = new ArrayList<>();
    for (Future<T> future : futures) {
      results.add(await(future));
    }
    return results;
  }

  /**
   * Runs tasks and hands on their results, in the order of the tasks and on the calling thread.
   *
   * @param waiting largest number of tasks that are begun or done but not handed on
   * @throws RuntimeException what the first failing task in that order, or the sink, threw
   */
  <T> void stream(Stream<Callable<T>> tasks, int waiting, Consumer<T> sink) {
    Deque<Future<T>> futures = new ArrayDeque<>();
    Iterator<Callable<T>> next = tasks.iterator();
    try {
      while (next.hasNext() || !futures.isEmpty()) {
        while (next.hasNext() && futures.size() < waiting) {
          futures.add(pool.submit(next.next()));
        }
        sink.accept(await(futures.remove()));
      }
    } finally {
      futures.forEach(future -> future.cancel(true));
    }
  }

  private <T> T await(Future<T> future) {
    try {
      return future.get();
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
      CancellationException cancelled = new CancellationException("interrupted while solving");
      cancelled.initCause(e);
      throw cancelled;
    }
  }

  @Override
  public void close() {
    pool.shutdown();
  }
}
