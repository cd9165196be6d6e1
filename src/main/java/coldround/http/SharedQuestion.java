package coldround.http;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * One question for all who wait for it, so that many who ask the same at once do not each send it.
 * What is answered is never older than the call: a question that was on its way when somebody came
 * is not for them, they wait for the next one. One that gets no answer holds nobody up for long.
 */
class SharedQuestion<T> {

  private static final int PATIENCE_S = 1;

  private final Supplier<T> question;
  private final Semaphore oneAtATime = new Semaphore(1);
  private CompletableFuture<T> next;

  SharedQuestion(Supplier<T> question) {
    this.question = question;
  }

  /** Throws what the question throws, to all who waited for it. */
  T answer() {
    CompletableFuture<T> mine;
    boolean first;
    synchronized (this) {
      first = next == null;
      if (first) {
        next = new CompletableFuture<>();
      }
      mine = next;
    }
    if (first) {
      ask(mine);
    }
    try {
      // as long as the first waits for the turn, and once more for the answer
      return mine.get(2 * PATIENCE_S, TimeUnit.SECONDS);
    } catch (ExecutionException e) {
      throw fault(e.getCause());
    } catch (TimeoutException e) {
      return question.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return question.get();
    }
  }

  private void ask(CompletableFuture<T> mine) {
    boolean turn = waitForTurn();
    synchronized (this) {
      next = null;
    }
    try {
      mine.complete(question.get());
    } catch (RuntimeException | Error e) {
      mine.completeExceptionally(e);
    } finally {
      if (turn) {
        oneAtATime.release();
      }
    }
  }

  /** Asks out of turn where it takes too long. */
  private boolean waitForTurn() {
    try {
      return oneAtATime.tryAcquire(PATIENCE_S, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private static RuntimeException fault(Throwable cause) {
    if (cause instanceof Error error) {
      throw error;
    }
    return (RuntimeException) cause;
  }
}
