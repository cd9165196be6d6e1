package coldround.rounds.search;

import java.util.Optional;

/** Searches for a plan of low cost. All that the rest of the program knows of the engine. */
public interface PlanSearch {

  /**
   * Plans the rounds.
   *
   * @param start a plan of the same problem to improve, if there is one
   */
  Plan search(
      Problem problem, Optional<Plan> start, SearchOptions options, SearchListener listener);

  /** Plans the rounds from nothing. */
  default Plan search(Problem problem, SearchOptions options) {
    return search(problem, Optional.empty(), options, SearchListener.SILENT);
  }
}
