package coldround.rounds.search.engine;

import coldround.rounds.search.Problem;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** Which vehicles meet at a place on a day, and what it costs to bring their stops into one. */
final class Meetings {

  /** Stops of one place on one day, and the vehicles that serve them. */
  record Meeting(int place, Object day, List<Integer> stops, List<Integer> vehicles) {}

  /** Stops that one vehicle takes over, and the cost of all afterwards; infinite if it cannot. */
  record Move(List<Integer> stops, int vehicle, double cost) {}

  private record Key(int place, Object day) {}

  private static final Move NONE = new Move(List.of(), Solution.NOWHERE, Double.POSITIVE_INFINITY);

  final Solution solution;
  private final Problem problem;
  private final List<?> days;
  private final Map<Integer, List<Integer>> stopsAt;
  private final Map<Object, List<Integer>> vehiclesOn = new LinkedHashMap<>();

  Meetings(Solution solution, List<?> days) {
    this.solution = solution;
    this.problem = solution.model.problem;
    this.days = days;
    stopsAt = new LinkedHashMap<>();
    for (int s = 0; s < solution.model.stops; s++) {
      stopsAt.computeIfAbsent(placeOf(s), place -> new ArrayList<>()).add(s);
    }
    for (int v = 0; v < days.size(); v++) {
      if (solution.open[v]) {
        vehiclesOn.computeIfAbsent(days.get(v), day -> new ArrayList<>()).add(v);
      }
    }
  }

  private int placeOf(int stop) {
    return problem.stops().get(stop).place();
  }

  /** Those of more than one vehicle. */
  List<Meeting> several() {
    Map<Key, List<Integer>> stops = new LinkedHashMap<>();
    for (int s = 0; s < solution.model.stops; s++) {
      if (solution.tourOf[s] != Solution.NOWHERE) {
        Key key = new Key(placeOf(s), days.get(solution.tourOf[s]));
        stops.computeIfAbsent(key, each -> new ArrayList<>()).add(s);
      }
    }
    return stops.entrySet().stream()
        .map(each -> meeting(each.getKey().place, each.getKey().day, each.getValue()))
        .filter(meeting -> meeting.vehicles.size() > 1)
        .toList();
  }

  private Meeting meeting(int place, Object day, List<Integer> stops) {
    TreeSet<Integer> vehicles = new TreeSet<>();
    stops.forEach(stop -> vehicles.add(solution.tourOf[stop]));
    return new Meeting(place, day, stops, List.copyOf(vehicles));
  }

  /** The same place and day as they are now. */
  Meeting again(Meeting meeting) {
    return meeting(meeting.place, meeting.day, there(meeting.place, meeting.day));
  }

  private List<Integer> there(int place, Object day) {
    return stopsAt.get(place).stream()
        .filter(stop -> solution.tourOf[stop] != Solution.NOWHERE)
        .filter(stop -> days.get(solution.tourOf[stop]).equals(day))
        .toList();
  }

  /** Whether its stops are bound to several vehicles, or to one that may not serve the others. */
  boolean bound(Meeting meeting) {
    TreeSet<Integer> pins = pins(meeting.stops);
    return pins.size() > 1 || !pins.isEmpty() && able(meeting).isEmpty();
  }

  /** Whether a vehicle of its day has the skills for all its stops. */
  boolean skilled(Meeting meeting) {
    return vehiclesOn.get(meeting.day).stream()
        .map(v -> problem.vehicles().get(v).skills())
        .anyMatch(
            skills ->
                meeting.stops.stream()
                    .allMatch(stop -> skills.containsAll(problem.stops().get(stop).skills())));
  }

  private TreeSet<Integer> pins(Collection<Integer> stops) {
    TreeSet<Integer> pins = new TreeSet<>();
    stops.forEach(stop -> problem.stops().get(stop).pinnedTo().ifPresent(pins::add));
    return pins;
  }

  /** The vehicles of its day that may serve all its stops. */
  List<Integer> able(Meeting meeting) {
    return vehiclesOn.get(meeting.day).stream()
        .filter(v -> meeting.stops.stream().allMatch(stop -> may(stop, v)))
        .toList();
  }

  private boolean may(int stop, int v) {
    double[] assignment = solution.model.fleet.assignment[v];
    return assignment == null || assignment[stop] < Double.POSITIVE_INFINITY;
  }

  /** All its stops in one round of the day, as cheaply as can be. */
  Move inOne(Meeting meeting) {
    return able(meeting).stream()
        .map(v -> new Move(meeting.stops, v, tried(meeting.stops, v)))
        .min(Comparator.comparingDouble(Move::cost))
        .orElse(NONE);
  }

  /**
   * The stops of one of its vehicles in a round of another day on which nobody else is there.
   *
   * @param most what it may cost more
   */
  Move onAnotherDay(Meeting meeting, double most) {
    List<Integer> alone = alone(meeting);
    Move best = NONE;
    for (int from : meeting.vehicles) {
      List<Integer> part =
          meeting.stops.stream().filter(stop -> solution.tourOf[stop] == from).toList();
      if (pins(part).isEmpty()) {
        best = cheapest(part, saved(part, from), alone, most, best);
      }
    }
    return best;
  }

  /** Most rounds cannot take even the first stop as cheaply: that is quickly seen. */
  private Move cheapest(
      List<Integer> part, double saved, List<Integer> vehicles, double most, Move known) {
    Move best = known;
    for (int v : vehicles) {
      double limit = Math.min(most, best.cost - solution.cost) + saved;
      if (solution.tours[v].bestInsertion(part.get(0), limit, null) < Tour.IMPOSSIBLE) {
        double cost = tried(part, v);
        best = cost < best.cost ? new Move(part, v, cost) : best;
      }
    }
    return best;
  }

  /** Vehicles of other days that would be the only ones there. */
  private List<Integer> alone(Meeting meeting) {
    Map<Object, TreeSet<Integer>> visitors = new LinkedHashMap<>();
    for (int stop : stopsAt.get(meeting.place)) {
      int v = solution.tourOf[stop];
      if (v != Solution.NOWHERE) {
        visitors.computeIfAbsent(days.get(v), day -> new TreeSet<>()).add(v);
      }
    }
    return IntStream.range(0, days.size())
        .filter(v -> solution.open[v] && !days.get(v).equals(meeting.day))
        .filter(
            v -> {
              TreeSet<Integer> others = visitors.getOrDefault(days.get(v), new TreeSet<>());
              return others.isEmpty() || others.size() == 1 && others.contains(v);
            })
        .boxed()
        .toList();
  }

  /** What the round costs less without them, what leaving them out costs not counted. */
  private double saved(List<Integer> stops, int from) {
    solution.begin();
    double before = solution.tours[from].cost();
    stops.forEach(stop -> solution.marked[stop] = true);
    solution.removeMarked(from);
    double after = solution.tours[from].cost();
    solution.rollback();
    return before - after;
  }

  private double tried(List<Integer> stops, int v) {
    double cost = take(stops, v);
    solution.rollback();
    return cost;
  }

  void make(Move move) {
    take(move.stops, move.vehicle);
  }

  /** The cost with all the stops in one tour; infinite where that cannot be. */
  private double take(List<Integer> stops, int v) {
    solution.begin();
    int missing = solution.missing;
    List<Integer> others = stops.stream().filter(stop -> solution.tourOf[stop] != v).toList();
    TreeSet<Integer> from = new TreeSet<>();
    for (int stop : others) {
      from.add(solution.tourOf[stop]);
      solution.marked[stop] = true;
    }
    from.forEach(solution::removeMarked);
    for (int stop : others) {
      Tour tour = solution.tours[v];
      double cost = tour.bestInsertion(stop, Double.POSITIVE_INFINITY, null);
      if (!(cost < Tour.IMPOSSIBLE) || solution.tourOf[stop] != Solution.NOWHERE) {
        return Double.POSITIVE_INFINITY;
      }
      solution.insert(stop, v, tour.insertAfter);
    }
    solution.dropPlaced();
    return solution.missing <= missing ? solution.cost : Double.POSITIVE_INFINITY;
  }
}
