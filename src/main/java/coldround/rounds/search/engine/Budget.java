package coldround.rounds.search.engine;

import coldround.rounds.search.Limit;
import coldround.rounds.search.SearchListener;

/** How much of a search is over, by time or by iterations. */
final class Budget {

  private final Limit limit;
  private final SearchListener listener;
  private final long startNanos = System.nanoTime();

  Budget(Limit limit, SearchListener listener) {
    this.limit = limit;
    this.listener = listener;
  }

  /** Share used up, 1 or more when over; time is not asked for when only iterations count. */
  double used(long iterations) {
    double byCount =
        limit.iterations() == Long.MAX_VALUE
            ? 0
            : limit.iterations() == 0 ? 1 : (double) iterations / limit.iterations();
    return limit.countsOnly() ? byCount : Math.max(byCount, seconds() / limit.seconds());
  }

  double seconds() {
    return (System.nanoTime() - startNanos) * 1e-9;
  }

  boolean cancelled() {
    return listener.cancelled();
  }
}
