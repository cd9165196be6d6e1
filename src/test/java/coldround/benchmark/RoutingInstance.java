package coldround.benchmark;

import coldround.rounds.search.Goal;
import coldround.rounds.search.Plan;
import coldround.rounds.search.Problem;
import java.util.List;

/**
 * A public routing benchmark as a problem of the planner.
 *
 * @param name its name in the literature
 * @param kind what is asked
 * @param problem the problem
 * @param numbers number of each stop in the file
 * @param values score or prize of each stop; empty where all stops must be served
 */
record RoutingInstance(
    String name, Kind kind, Problem problem, List<Integer> numbers, List<Double> values) {

  /** What a benchmark asks for. */
  enum Kind {
    /** Serve all within time windows. */
    TIME_WINDOWS,
    /** Serve all within capacity, distance rounded to integers. */
    CAPACITY,
    /** Collect the highest score within the length allowed. */
    ORIENTEERING,
    /** Collect prizes, each unit of distance costing one. */
    PROFIT
  }

  /** Most customers of the Solomon sets, whose best known values here are for distance alone. */
  private static final int SOLOMON_SIZE = 100;

  RoutingInstance {
    numbers = List.copyOf(numbers);
    values = List.copyOf(values);
  }

  /**
   * The goal of the published values: Gehring and Homberger, whose files differ from Solomon's only
   * in size, count vehicles first.
   */
  Goal publishedGoal() {
    return kind == Kind.TIME_WINDOWS && numbers.size() > SOLOMON_SIZE
        ? Goal.FEWEST_VEHICLES
        : Goal.LOWEST_COST;
  }

  /** Sum of the scores or prizes of the stops served. */
  double collected(Plan plan) {
    return plan.routes().stream()
        .flatMap(route -> route.stops().stream())
        .mapToDouble(values::get)
        .sum();
  }

  /** The figure that the literature compares: to be high for optional stops, low otherwise. */
  double objective(Plan plan) {
    return switch (kind) {
      case ORIENTEERING -> collected(plan);
      case PROFIT -> collected(plan) - plan.distance();
      default -> plan.distance();
    };
  }

  boolean higherIsBetter() {
    return kind == Kind.ORIENTEERING || kind == Kind.PROFIT;
  }
}
