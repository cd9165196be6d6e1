package coldround.http;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/**
 * One question for all who wait for it, so that many who ask the same at once do not each send it.
 * What is answered is never older than the call: a question that was on its way when somebody came
 * is not for them, they wait for the next one.
 */
class SharedQuestion<T> {

  private final Supplier<T> question;
  private final Lock oneAtATime = new ReentrantLock();
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
      return mine.join();
    } catch (CompletionException e) {
      throw e.getCause() instanceof RuntimeException fault ? fault : e;
    }
  }

  private void ask(CompletableFuture<T> mine) {
    oneAtATime.lock();
    try {
      synchronized (this) {
        next = null;
      }
      mine.complete(question.get());
    } catch (RuntimeException | Error e) {
      mine.completeExceptionally(e);
    } finally {
      oneAtATime.unlock();
    }
  }
}
