package coldround.rounds.search.engine;

/** One thread's search: its own solution, random numbers and best plan. */
final class Worker {

  /**
   * Price of a mandatory stop left out for a while, which lets a search in tight rounds pass
   * through incomplete plans: it moves by these factors after each stride so that about a third
   * are.
   */
  private static final double DEARER = 1.02;

  private static final double CHEAPER = 0.99;

  /** Highest such price, as a multiple of the lowest. */
  private static final double MOST_DEAR = 10;

  /** Steps between two looks at the clock. */
  private static final int STRIDE = 64;

  final Solution solution;
  final Snapshot best;
  final Chance chance;
  long iterations;
  private final boolean mayDrop;
  private double missingPrice;
  private final Budget budget;
  private final Ruin ruin;
  private final Recreate recreate;
  private final FleetReduction reduction;

  /**
   * A worker with its own random numbers.
   *
   * @param mayDrop whether it may leave out a mandatory stop for a while
   */
  Worker(Model model, Orders orders, Budget budget, long seed, boolean mayDrop) {
    this.budget = budget;
    this.mayDrop = mayDrop;
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
    best.take(solution);
  }

  /** Continues from a snapshot, which becomes the best known too. */
  void load(Snapshot snapshot) {
    solution.load(snapshot);
    best.take(solution);
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
      reprice(cooling.typical(), temperature);
    }
    solution.recount();
  }

  /** Keeps the price of a missing stop above what leaving out a typical stop saves. */
  private void reprice(double typical, double temperature) {
    double changed = missingPrice * (solution.missing > best.missing ? DEARER : CHEAPER);
    double least = typical + temperature;
    missingPrice = Math.min(MOST_DEAR * least, Math.max(least, changed));
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
        best.take(solution);
      }
    } else {
      solution.rollback();
    }
  }

  private boolean accepts(int missing, double cost, double temperature) {
    if (!mayDrop && solution.missing != missing) {
      return solution.missing < missing;
    }
    double dearer = solution.cost - cost + missingPrice * (solution.missing - missing);
    return dearer < -temperature * Math.log(chance.unit());
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
