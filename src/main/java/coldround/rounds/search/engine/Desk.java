package coldround.rounds.search.engine;

import coldround.rounds.search.Plan;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Route;

/** Translates between the plans of callers and the solutions of the search. */
final class Desk {

  private final Model model;
  private final PlanWriter writer;
  private final Solution scratch;

  Desk(Problem problem) {
    Feasibility feasibility = new Feasibility(problem);
    model = new Model(problem, feasibility);
    writer = new PlanWriter(model, feasibility);
    scratch = new Solution(model);
  }

  Model model() {
    return model;
  }

  Plan plan(Snapshot snapshot) {
    scratch.load(snapshot);
    return writer.write(scratch);
  }

  Plan plan(Solution solution) {
    return writer.write(solution);
  }

  /** The part of a plan that still holds in this problem: rounds that no longer do are emptied. */
  Snapshot snapshot(Plan plan) {
    Snapshot snapshot = new Snapshot(model);
    snapshot.take(solution(plan));
    return snapshot;
  }

  Solution solution(Plan plan) {
    Solution solution = new Solution(model);
    for (Route route : plan.routes()) {
      int[] stops =
          route.stops().stream()
              .mapToInt(Integer::intValue)
              .filter(s -> model.servable[s])
              .toArray();
      solution.set(route.vehicle(), stops);
    }
    solution.dropPlaced();
    solution.recount();
    return solution;
  }
}
