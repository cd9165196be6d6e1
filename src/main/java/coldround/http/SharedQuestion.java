package coldround.http;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * One question for all who wait for it, so that many who ask the same at once do not each send it.
 * What is answered is never older than the call: a question that was on its way when somebody came
 * is not for them, they wait for the next one. Nobody has to hold a thread for it.
 */
class SharedQuestion<T> {

  private static final int PATIENCE_S = 2;

  private final Supplier<T> question;
  private final Executor asker;
  private CompletableFuture<T> next;
  private boolean asking;

  /**
   * @param asker runs the question, one at a time
   */
  SharedQuestion(Supplier<T> question, Executor asker) {
    this.question = question;
    this.asker = asker;
  }

  /**
   * Fails with what the question throws, for all who waited for it, with a {@link TimeoutException}
   * where it is not answered in time (at once for those who come later, as long as it hangs), and
   * with a {@link RejectedExecutionException} where nobody is there to ask.
   */
  CompletionStage<T> answer() {
    CompletableFuture<T> mine;
    boolean first;
    synchronized (this) {
      if (next == null) {
        next = new CompletableFuture<T>().orTimeout(PATIENCE_S, TimeUnit.SECONDS);
      }
      mine = next;
      first = !asking;
      asking = true;
    }
    if (first) {
      begin();
    }
    return mine;
  }

  private void begin() {
    try {
      asker.execute(this::ask);
    } catch (RejectedExecutionException e) {
      CompletableFuture<T> one;
      synchronized (this) {
        one = next;
        next = null;
        asking = false;
      }
      one.completeExceptionally(e);
    }
  }

  private void ask() {
    for (CompletableFuture<T> one = take(); one != null; one = take()) {
      try {
        one.complete(question.get());
      } catch (RuntimeException | Error e) {
        one.completeExceptionally(e);
      }
    }
  }

  /** Whoever comes from here on waits for the one behind it. */
  private synchronized CompletableFuture<T> take() {
    CompletableFuture<T> one = next;
    next = null;
    asking = one != null;
    return one;
  }
}
