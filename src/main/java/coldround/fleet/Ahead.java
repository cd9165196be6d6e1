package coldround.fleet;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/**
 * Reads one piece ahead of whoever takes the pieces, where a processor has time for that; else when
 * the piece is asked for. Pieces are read one after the other, so that their source need not know
 * of threads.
 */
public final class Ahead<T> implements AutoCloseable {

  private final Supplier<List<T>> source;
  private FutureTask<List<T>> next;

  /**
   * @param source gives the next piece; an empty one at the end
   */
  public Ahead(Supplier<List<T>> source) {
    this.source = source;
    begin();
  }

  private void begin() {
    next = new FutureTask<>(source::get);
    ForkJoinPool.commonPool().execute(next);
  }

  /** The next piece; an empty one at the end. Throws what the source threw. */
  public List<T> take() {
    // does nothing where another thread has begun it
    next.run();
    List<T> piece = Results.of(next);
    if (!piece.isEmpty()) {
      begin();
    }
    return piece;
  }

  /** Nobody reads the source when this has returned. */
  @Override
  public void close() {
    next.run();
    try {
      next.get();
    } catch (ExecutionException | CancellationException e) {
      // told to whoever took it; what nobody took matters to nobody
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
