package coldround.rounds.search.engine;

/**
 * Temperature of the annealing over its share of the budget: it falls exponentially, and after the
 * first fall it is raised again, less high, for each further cycle.
 *
 * @param from share of the budget at which the annealing begins
 * @param hot temperature at the begin
 * @param cold temperature at the end of each cycle
 * @param cycles number of falls
 */
record Cooling(double from, double hot, double cold, int cycles) {

  /** Start of the later cycles between cold (0) and hot (1), on the logarithmic scale. */
  private static final double REHEATED = 0.6;

  double at(double used) {
    double position = Math.min(1, (used - from) / (1 - from)) * cycles;
    int cycle = Math.min(cycles - 1, (int) position);
    double fallen = position - cycle;
    double height = (cycle == 0 ? 1 : REHEATED) * (1 - fallen);
    return cold * Math.pow(hot / cold, height);
  }

  /** Number of the cycle that a share of the budget falls into. */
  int cycleOf(double used) {
    return Math.min(cycles - 1, (int) ((used - from) / (1 - from) * cycles));
  }
}
