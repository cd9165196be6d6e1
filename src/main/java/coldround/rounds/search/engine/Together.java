package coldround.rounds.search.engine;

import coldround.rounds.search.Plan;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Route;
import coldround.rounds.search.Visit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Brings the stops of one place on one day into one round, where another round can take them at
 * little more cost. A last pass over a plan: the search itself weighs each round alone.
 */
public final class Together {

  private record Meeting(int place, Object day) {}

  private final Problem problem;
  private final List<?> days;
  private final double price;

  /**
   * @param days of the vehicles, by index
   * @param price what a second vehicle at the same place on the same day costs
   */
  public Together(Problem problem, List<?> days, double price) {
    this.problem = problem;
    this.days = days;
    this.price = price;
  }

  public Plan of(Plan plan) {
    List<List<Integer>> apart = apart(plan);
    if (apart.isEmpty()) {
      return plan;
    }
    Desk desk = new Desk(problem);
    Solution solution = desk.solution(plan);
    boolean changed = false;
    for (List<Integer> stops : apart) {
      changed |= gather(solution, stops);
    }
    return changed ? desk.plan(solution) : plan;
  }

  /** Stops of a place that several vehicles serve on the same day. */
  private List<List<Integer>> apart(Plan plan) {
    Map<Meeting, List<Integer>> stops = new LinkedHashMap<>();
    Map<Meeting, TreeSet<Integer>> vehicles = new LinkedHashMap<>();
    for (Route route : plan.routes()) {
      for (Visit visit : route.visits()) {
        int place = problem.stops().get(visit.stop()).place();
        Meeting meeting = new Meeting(place, days.get(route.vehicle()));
        stops.computeIfAbsent(meeting, key -> new ArrayList<>()).add(visit.stop());
        vehicles.computeIfAbsent(meeting, key -> new TreeSet<>()).add(route.vehicle());
      }
    }
    stops.keySet().removeIf(meeting -> vehicles.get(meeting).size() < 2);
    return List.copyOf(stops.values());
  }

  /** Tries each of the vehicles there as the one that takes all. */
  private boolean gather(Solution solution, List<Integer> stops) {
    TreeSet<Integer> there = new TreeSet<>();
    stops.forEach(stop -> there.add(solution.tourOf[stop]));
    there.remove(Solution.NOWHERE);
    int best = Solution.NOWHERE;
    double least = solution.cost + price * (there.size() - 1);
    for (int v : there) {
      double cost = take(solution, stops, v);
      solution.rollback();
      if (cost < least) {
        least = cost;
        best = v;
      }
    }
    if (best == Solution.NOWHERE) {
      return false;
    }
    take(solution, stops, best);
    return true;
  }

  /** The cost with all the stops in one tour; infinite where that cannot be. */
  private double take(Solution solution, List<Integer> stops, int v) {
    solution.begin();
    List<Integer> others = new ArrayList<>();
    for (int stop : stops) {
      if (solution.tourOf[stop] != v && solution.tourOf[stop] != Solution.NOWHERE) {
        if (problem.stops().get(stop).pinnedTo().isPresent()) {
          return Double.POSITIVE_INFINITY;
        }
        others.add(stop);
      }
    }
    TreeSet<Integer> from = new TreeSet<>();
    for (int stop : others) {
      from.add(solution.tourOf[stop]);
      solution.marked[stop] = true;
    }
    from.forEach(solution::removeMarked);
    Collections.sort(others);
    for (int stop : others) {
      Tour tour = solution.tours[v];
      double cost = tour.bestInsertion(stop, Double.POSITIVE_INFINITY, null);
      if (!(cost < Tour.IMPOSSIBLE) || solution.tourOf[stop] != Solution.NOWHERE) {
        return Double.POSITIVE_INFINITY;
      }
      solution.insert(stop, v, tour.insertAfter);
    }
    solution.dropPlaced();
    boolean all = others.stream().allMatch(stop -> solution.tourOf[stop] == v);
    return all ? solution.cost : Double.POSITIVE_INFINITY;
  }
}
