package coldround.rounds.search;

/** What a search minimises once all mandatory stops are served. */
public enum Goal {
  /** The cost of the plan. */
  LOWEST_COST,
  /** The number of vehicles that go out, then the cost. */
  FEWEST_VEHICLES
}
