package coldround.rounds.search.engine;

import coldround.rounds.search.Plan;
import coldround.rounds.search.PlanSearch;
import coldround.rounds.search.Problem;
import coldround.rounds.search.SearchListener;
import coldround.rounds.search.SearchOptions;
import java.util.Optional;

/**
 * Plans rounds by ruin and recreate with string removals under simulated annealing (Christiaens and
 * Vanden Berghe, "Slack Induction by String Removals for Vehicle Routing Problems", Transportation
 * Science 54, 2020), extended to stops that may be left out, different vehicles, several windows,
 * breaks and labour by the minute. The same seed, workers and number of iterations give the same
 * plan.
 */
public final class RuinAndRecreate implements PlanSearch {

  @Override
  public Plan search(
      Problem problem, Optional<Plan> start, SearchOptions options, SearchListener listener) {
    Budget budget = new Budget(options.limit(), listener);
    Desk desk = new Desk(problem);
    Snapshot from = start.map(desk::snapshot).orElse(null);
    Team team = new Team(desk.model(), options, budget, best -> listener.better(desk.plan(best)));
    return desk.plan(team.run(from));
  }
}
