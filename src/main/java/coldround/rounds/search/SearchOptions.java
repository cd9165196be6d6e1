package coldround.rounds.search;

/**
 * How to search.
 *
 * @param seed start of the random choices
 * @param limit when to end
 * @param workers threads that search at the same time; part of what makes a result repeatable
 * @param goal what to minimise
 */
public record SearchOptions(long seed, Limit limit, int workers, Goal goal) {

  public SearchOptions {
    if (workers < 1) {
      throw new IllegalArgumentException("at least one worker is needed, not " + workers);
    }
  }

  /** Lowest cost with two workers. */
  public static SearchOptions of(long seed, Limit limit) {
    return new SearchOptions(seed, limit, 2, Goal.LOWEST_COST);
  }
}
