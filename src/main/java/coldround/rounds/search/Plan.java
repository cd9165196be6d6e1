package coldround.rounds.search;

import java.util.List;

/**
 * A planned set of rounds.
 *
 * @param routes the rounds that go out, by index of the vehicle
 * @param leftOut the stops that are in none of them
 * @param unusable the vehicles that could not be used
 * @param cost what the plan costs; a mandatory stop left out adds nothing here
 */
public record Plan(
    List<Route> routes, List<LeftOut> leftOut, List<Unusable> unusable, CostSplit cost) {

  public Plan {
    routes = List.copyOf(routes);
    leftOut = List.copyOf(leftOut);
    unusable = List.copyOf(unusable);
  }

  /** True if every mandatory stop is served. */
  public boolean complete() {
    return leftOut.stream().noneMatch(LeftOut::mandatory);
  }

  public double distance() {
    return routes.stream().mapToDouble(Route::distance).sum();
  }
}
