package coldround.rounds.search.engine;

/** One thread's search: its own solution, random numbers and best plan. */
final class Worker {

  /** Steps between two looks at the clock. */
  private static final int STRIDE = 64;

  final Solution solution;
  final Snapshot best;
  final Chance chance;
  long iterations;
  private final Budget budget;
  private final Ruin ruin;
  private final Recreate recreate;
  private final FleetReduction reduction;

  Worker(Model model, Orders orders, Budget budget, long seed) {
    this.budget = budget;
    chance = new Chance(seed);
    solution = new Solution(model);
    best = new Snapshot(model);
    ruin = new Ruin(solution, chance);
    recreate = new Recreate(solution, orders, chance);
    reduction = new FleetReduction(solution, ruin, recreate, chance, best);
  }

  /** Serves what it can, from the solution as it is. */
  void construct() {
    solution.begin();
    recreate.runAll();
    solution.store(best);
  }

  /** Continues from a snapshot, which becomes the best known too. */
  void load(Snapshot snapshot) {
    solution.load(snapshot);
    solution.store(best);
  }

  /** Anneals until a share of the budget is used up. */
  void anneal(Cooling cooling, double until) {
    double used = budget.used(iterations);
    while (used < until && !budget.cancelled()) {
      double temperature = cooling.at(used);
      for (int i = 0; i < STRIDE; i++) {
        step(temperature);
      }
      iterations += STRIDE;
      used = budget.used(iterations);
    }
    solution.recount();
  }

  private void step(double temperature) {
    double cost = solution.cost;
    int missing = solution.missing;
    solution.begin();
    ruin.run();
    recreate.run(ruin.seed);
    if (accepts(missing, cost, temperature)) {
      if (solution.missing < best.missing
          || solution.missing == best.missing && solution.cost < best.cost - Model.EPS) {
        solution.store(best);
      }
    } else {
      solution.rollback();
    }
  }

  private boolean accepts(int missing, double cost, double temperature) {
    if (solution.missing != missing) {
      return solution.missing < missing;
    }
    return solution.cost < cost - temperature * Math.log(chance.unit());
  }

  /**
   * Prepares {@link #reduce} from the best plan known.
   *
   * @param vehicles whether to empty tours once all mandatory stops are served
   */
  void startReducing(boolean vehicles, int leastVehicles) {
    reduction.start(vehicles, leastVehicles);
  }

  /** Serves more mandatory stops, or empties tours, until a share of the budget is used up. */
  void reduce(double until) {
    while (!reduction.finished() && budget.used(iterations) < until && !budget.cancelled()) {
      for (int i = 0; i < STRIDE && !reduction.finished(); i++) {
        reduction.step();
      }
      iterations += STRIDE;
    }
  }
}
