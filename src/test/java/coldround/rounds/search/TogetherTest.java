package coldround.rounds.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.rounds.search.engine.RuinAndRecreate;
import coldround.rounds.search.engine.Together;
import coldround.rounds.search.engine.Together.Apart;
import coldround.rounds.search.engine.Together.Cause;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Two technicians at one place, ten away from both, on one day; a third on the day after. */
class TogetherTest {

  private static final Matrix LINE = Towns.line(0, 10);
  private static final List<String> DAYS = List.of("Monday", "Monday", "Tuesday");

  private static Vehicle day(double minutes) {
    return Vehicle.of("day", 0, Shift.regular(0, minutes), Rates.DISTANCE);
  }

  private static List<Vehicle> three() {
    return List.of(day(480), day(480), day(480));
  }

  /** One stop on each of the two rounds of Monday. */
  private static Plan apart() {
    return new Plan(List.of(route(0, 0), route(1, 1)), List.of(), List.of(), CostSplit.ZERO);
  }

  private static Route route(int vehicle, int stop) {
    List<Visit> visits = List.of(new Visit(stop, 0, 0, 0));
    return new Route(vehicle, 0, 0, visits, OptionalDouble.empty(), 0, 0, 0, CostSplit.ZERO);
  }

  private static Problem problem(List<Vehicle> vehicles, List<Stop> stops, AssignmentPrice price) {
    return new Problem(vehicles, stops, LINE, LINE, price);
  }

  private static List<Stop> two(double minutes) {
    return List.of(Stop.at("one", 1, minutes), Stop.at("other", 1, minutes));
  }

  private static Apart only(Problem problem, double worth) {
    Together together = new Together(problem, DAYS, worth);
    Plan plan = together.of(apart());
    List<Apart> found = together.apart(plan);
    assertEquals(1, found.size(), found.toString());
    assertEquals(List.of(0, 1), found.get(0).stops());
    assertEquals(List.of(0, 1), found.get(0).vehicles());
    return found.get(0);
  }

  /** The other on the first round, or the first on the other, costs 50, and saves a way of 20. */
  private static Problem dear(double tuesday) {
    return problem(three(), two(10), (stop, v) -> v == 2 ? tuesday : stop == v ? 0 : 50);
  }

  @Test
  void whatCostsLessThanASecondVisitIsBroughtIntoOneRound() {
    Together together = new Together(dear(500), DAYS, 31);
    Plan plan = together.of(apart());
    assertEquals(List.of(), together.apart(plan));
    assertEquals(List.of(), PlanChecker.check(dear(500), plan));
    assertEquals(70, plan.cost().total(), 1e-9);
  }

  @Test
  void whatCostsMoreThanASecondVisitStaysAndSaysHowMuch() {
    Apart apart = only(dear(500), 29);
    assertEquals(Cause.PRICE, apart.cause());
    assertEquals(30, apart.extra(), 1e-9);
    assertEquals(500, apart.otherDay(), 1e-9);
  }

  @Test
  void aPartGoesToAnotherDayWhereThatCostsLess() {
    Together together = new Together(dear(25), DAYS, 29);
    Plan plan = together.of(apart());
    assertEquals(List.of(), together.apart(plan));
    assertEquals(Set.of(2), Set.copyOf(vehicles(plan).get("Tuesday")));
    assertEquals(65, plan.cost().total(), 1e-9);
  }

  @Test
  void aPlanThatWasNotGatheredIsSaidToBeLeftSo() {
    Apart apart = new Together(dear(500), DAYS, 31).apart(apart()).get(0);
    assertEquals(Cause.LEFT_SO, apart.cause());
    assertEquals(30, apart.extra(), 1e-9);
  }

  @Test
  void aRoundThatHasNoRoomForAll() {
    Apart apart = only(problem(three(), two(300), (s, v) -> v == 2 ? 900 : 0), 60);
    assertEquals(Cause.ROOM, apart.cause());
    assertEquals(Double.POSITIVE_INFINITY, apart.extra());
    assertEquals(900, apart.otherDay(), 1e-9);
  }

  @Test
  void nobodyHasTheSkillsForAll() {
    List<Vehicle> vehicles =
        List.of(
            day(480).withSkills(Set.of("ammonia")),
            day(480).withSkills(Set.of("electrical")),
            day(480));
    List<Stop> stops =
        List.of(
            Stop.at("one", 1, 10).needing(Set.of("ammonia")),
            Stop.at("other", 1, 10).needing(Set.of("electrical")));
    Apart apart = only(problem(vehicles, stops, AssignmentPrice.NONE), 60);
    assertEquals(Cause.SKILLS, apart.cause());
    assertEquals(Double.POSITIVE_INFINITY, apart.otherDay());
  }

  @Test
  void somebodyElseOfThatDayTakesAllIfOnlySheCan() {
    List<Vehicle> vehicles =
        List.of(
            day(480).withSkills(Set.of("ammonia")),
            day(480).withSkills(Set.of("electrical")),
            day(480).withSkills(Set.of("ammonia", "electrical")));
    List<Stop> stops =
        List.of(
            Stop.at("one", 1, 10).needing(Set.of("ammonia")),
            Stop.at("other", 1, 10).needing(Set.of("electrical")));
    Problem problem = problem(vehicles, stops, AssignmentPrice.NONE);
    Together together = new Together(problem, List.of("Monday", "Monday", "Monday"), 60);
    Plan plan = together.of(apart());
    assertEquals(List.of(2), plan.routes().stream().map(Route::vehicle).toList());
  }

  @ParameterizedTest
  @CsvSource({"true, true", "true, false"})
  void whatIsBoundStays(boolean first, boolean second) {
    List<Stop> stops =
        List.of(
            first ? Stop.at("one", 1, 10).pinned(0) : Stop.at("one", 1, 10),
            second
                ? Stop.at("other", 1, 10).pinned(1)
                : Stop.at("other", 1, 10).needing(Set.of("ammonia")));
    List<Vehicle> vehicles = List.of(day(480), day(480).withSkills(Set.of("ammonia")), day(480));
    assertEquals(Cause.BOUND, only(problem(vehicles, stops, AssignmentPrice.NONE), 60).cause());
  }

  /** Counted here once more, over problems with everything mixed, two stops a place. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void aGatheredPlanHoldsIsNoDearerAndEachMeetingThatIsLeftIsTold(long seed) {
    Problem problem = inPairs(Towns.mixed(24, 6, seed));
    List<Integer> days = List.of(0, 0, 0, 1, 1, 1);
    Plan searched =
        new RuinAndRecreate().search(problem, SearchOptions.of(seed, Limit.iterations(300)));
    double worth = 25;
    Together together = new Together(problem, days, worth);
    Plan plan = together.of(searched);
    assertEquals(List.of(), PlanChecker.check(problem, plan));
    double before = searched.cost().total() + worth * extra(problem, searched, days);
    double after = plan.cost().total() + worth * extra(problem, plan, days);
    assertTrue(after <= before + 1e-6, after + " after, " + before + " before");
    int told = together.apart(plan).stream().mapToInt(each -> each.vehicles().size() - 1).sum();
    assertEquals(extra(problem, plan, days), told);
    for (Apart apart : together.apart(plan)) {
      assertTrue(apart.cause() != Cause.LEFT_SO, apart.toString());
      assertTrue(apart.otherDay() > worth - 1e-6, apart.toString());
    }
  }

  private static Problem inPairs(Problem problem) {
    List<Stop> stops = new ArrayList<>();
    for (Stop s : problem.stops()) {
      int place = 2 + (s.place() - 2) / 2;
      stops.add(
          new Stop(
              s.name(),
              place,
              s.serviceMinutes(),
              s.windows(),
              s.skills(),
              s.demand(),
              s.priceLeftOut(),
              s.pinnedTo()));
    }
    return new Problem(
        problem.vehicles(), stops, problem.distance(), problem.minutes(), problem.assignment());
  }

  /** Vehicles at a place on a day beyond the first one, summed up. */
  private static int extra(Problem problem, Plan plan, List<?> days) {
    Map<String, TreeSet<Integer>> there = new HashMap<>();
    for (Route route : plan.routes()) {
      for (int stop : route.stops()) {
        String key = problem.stops().get(stop).place() + " " + days.get(route.vehicle());
        there.computeIfAbsent(key, each -> new TreeSet<>()).add(route.vehicle());
      }
    }
    return there.values().stream().mapToInt(each -> each.size() - 1).sum();
  }

  private static Map<String, List<Integer>> vehicles(Plan plan) {
    Map<String, List<Integer>> vehicles = new HashMap<>();
    plan.routes()
        .forEach(
            route ->
                vehicles
                    .computeIfAbsent(DAYS.get(route.vehicle()), day -> new ArrayList<>())
                    .add(route.vehicle()));
    return vehicles;
  }
}
