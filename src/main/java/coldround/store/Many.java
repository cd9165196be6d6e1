package coldround.store;

import java.util.Collection;
import java.util.stream.Stream;

/** What all processors work on together where there is enough of it. */
public final class Many {

  // a guess: for a handful it takes longer to wake another thread
  private static final int ENOUGH = 100;

  private Many() {}

  /** In the order of the collection. */
  public static <T> Stream<T> of(Collection<T> all) {
    return all.size() < ENOUGH ? all.stream() : all.parallelStream();
  }
}
