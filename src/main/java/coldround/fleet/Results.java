package coldround.fleet;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/** Of work that another thread may do. */
public final class Results {

  private Results() {}

  /** What it gave, once it is done. Throws what it threw. */
  public static <T> T of(FutureTask<T> work) {
    try {
      return work.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while others work", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      throw new IllegalStateException(e.getCause());
    }
  }
}
