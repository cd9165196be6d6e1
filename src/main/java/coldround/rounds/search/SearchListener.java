package coldround.rounds.search;

/** Follows a search. */
@FunctionalInterface
public interface SearchListener {

  /** A listener that lets the search run to its limit. */
  SearchListener SILENT = best -> {};

  /** Told of the first plan and of each better one, by the thread that called the search. */
  void better(Plan best);

  /** Asked often, by any thread; true ends the search with the best plan so far. */
  default boolean cancelled() {
    return false;
  }
}
