package coldround.fleet.edge;

import coldround.fleet.Results;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Work shared among the processors. Its results are taken in the order in which it was given, by
 * the thread that gives it, so that whoever takes them may write to the transaction of that thread.
 */
final class InOrder<T> implements AutoCloseable {

  // enough that no processor waits, and few enough that memory does not grow with the fleet
  private static final int IN_HAND = 2 + Runtime.getRuntime().availableProcessors();

  private final Consumer<T> take;
  private final Deque<FutureTask<List<T>>> given = new ArrayDeque<>();

  InOrder(Consumer<T> take) {
    this.take = take;
  }

  void give(Supplier<List<T>> work) {
    FutureTask<List<T>> task = new FutureTask<>(work::get);
    given.add(task);
    ForkJoinPool.commonPool().execute(task);
    if (given.size() > IN_HAND) {
      // rather than wait: does nothing where another thread has begun it
      task.run();
    }
    while (!given.isEmpty() && (given.size() > IN_HAND || given.peek().isDone())) {
      takeFirst();
    }
  }

  void finish() {
    while (!given.isEmpty()) {
      takeFirst();
    }
  }

  private void takeFirst() {
    FutureTask<List<T>> first = given.remove();
    first.run();
    Results.of(first).forEach(take);
  }

  /** Leaves undone what nobody will take any more. */
  @Override
  public void close() {
    given.forEach(task -> task.cancel(false));
  }
}
