package coldround.rounds.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.rounds.search.engine.RuinAndRecreate;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** On problems small enough to try every plan, the search finds the cheapest one. */
class SearchAgainstBruteForceTest {

  private static final SearchOptions SHORT = SearchOptions.of(3, Limit.iterations(30_000));

  /** The seed is fixed because a search that is no proof may miss one problem in many. */
  @Property(tries = 60, seed = "948820")
  void noPlanIsCheaperThanTheOneFound(@ForAll @IntRange(min = 0, max = 1_000_000) int seed) {
    Problem problem = Towns.mixed(5, 2, seed);
    double least = BruteForce.leastCost(problem);
    Plan plan = new RuinAndRecreate().search(problem, SHORT);
    assertEquals(List.of(), PlanChecker.check(problem, plan));
    assertEquals(Double.isFinite(least), plan.complete(), "seed " + seed);
    if (plan.complete()) {
      assertEquals(least, plan.cost().total(), 1e-5, "seed " + seed);
    }
  }

  @Property(tries = 40)
  void everyPlanStandsTheIndependentCheck(
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed,
      @ForAll @IntRange(min = 0, max = 40) int stops,
      @ForAll @IntRange(min = 0, max = 6) int vehicles) {
    Problem problem = Towns.mixed(stops, Math.max(vehicles, stops == 0 ? 0 : 1), seed);
    Plan plan = new RuinAndRecreate().search(problem, SearchOptions.of(1, Limit.iterations(300)));
    assertEquals(List.of(), PlanChecker.check(problem, plan));
  }

  @Property(tries = 20)
  void moreIterationsNeverEndWithAWorsePlanThanTheStart(
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed) {
    Problem problem = Towns.mixed(20, 4, seed);
    Plan start = new RuinAndRecreate().search(problem, SearchOptions.of(1, Limit.iterations(64)));
    Plan end =
        new RuinAndRecreate()
            .search(
                problem,
                java.util.Optional.of(start),
                SearchOptions.of(2, Limit.iterations(640)),
                SearchListener.SILENT);
    if (start.complete()) {
      assertTrue(end.complete());
      assertTrue(end.cost().total() <= start.cost().total() + 1e-6);
    }
  }
}
