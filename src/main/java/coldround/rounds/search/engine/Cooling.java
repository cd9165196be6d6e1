package coldround.rounds.search.engine;

/**
 * Temperature of the annealing over its share of the budget: it falls exponentially.
 *
 * @param from share of the budget at which the annealing begins
 * @param typical average cost of a stop
 * @param hot temperature at the begin
 * @param cold temperature at the end
 */
record Cooling(double from, double typical, double hot, double cold) {

  double at(double used) {
    double fallen = Math.min(1, (used - from) / (1 - from));
    return hot * Math.pow(cold / hot, fallen);
  }
}
