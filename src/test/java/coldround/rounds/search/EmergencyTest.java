package coldround.rounds.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.rounds.search.engine.Emergency;
import coldround.rounds.search.engine.RuinAndRecreate;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

class EmergencyTest {

  private static final SearchOptions SHORT = SearchOptions.of(1, Limit.iterations(2000));

  private static Vehicle day(double minutes) {
    return Vehicle.of("day", 0, Shift.regular(0, minutes), Rates.DISTANCE);
  }

  private static Problem with(Problem problem, Stop added) {
    List<Stop> stops = new ArrayList<>(problem.stops());
    stops.add(added);
    return new Problem(problem.vehicles(), stops, problem.distance(), problem.minutes());
  }

  private static Insertion insert(Problem before, Stop added) {
    Plan plan = new RuinAndRecreate().search(before, SHORT);
    Problem after = with(before, added);
    Insertion insertion = new Emergency(after, plan).insert(before.stops().size());
    assertEquals(List.of(), PlanChecker.check(after, insertion.plan()));
    return insertion;
  }

  @Test
  void noOtherStopChangesItsVehicleOrOrder() {
    Matrix square = Towns.square(31, 60, new Random(8));
    List<Stop> stops = Towns.stopsAt(square).subList(0, 29);
    Problem before = new Problem(List.of(day(300), day(300), day(300)), stops, square, square);
    Plan plan = new RuinAndRecreate().search(before, SHORT);
    Problem after = with(before, Stop.at("emergency", 30, 20));
    Insertion insertion = new Emergency(after, plan).insert(29);
    int vehicle = insertion.vehicle().getAsInt();
    for (Route route : insertion.plan().routes()) {
      List<Integer> order = new ArrayList<>(route.stops());
      assertEquals(route.vehicle() == vehicle, order.remove((Integer) 29));
      Optional<Route> old =
          plan.routes().stream().filter(r -> r.vehicle() == route.vehicle()).findFirst();
      assertEquals(old.map(Route::stops).orElse(List.of()), order);
    }
    assertEquals(List.of(), insertion.moved());
  }

  @Test
  void oneStopMovesToAnotherRoundWhereTheEmergencyCannotWait() {
    Matrix line = Towns.line(0, 50, 51);
    List<Stop> stops = List.of(Stop.at("usual", 1, 60).within(new Window(50, 60)));
    Vehicle dear = Vehicle.of("dear", 0, Shift.regular(0, 170), new Rates(9, 1, 0, 0));
    Problem before = new Problem(List.of(day(170), dear), stops, line, line);
    Insertion insertion =
        insert(before, Stop.at("emergency", 2, 60).within(new Window(51, 51)).pinned(0));
    assertEquals(List.of(0), insertion.moved());
    assertEquals(List.of(0), insertion.plan().routes().get(1).stops());
    assertEquals(OptionalInt.of(0), insertion.vehicle());
  }

  @Test
  void anOptionalStopGivesWayIfNothingElseHelps() {
    Matrix line = Towns.line(0, 50, 50);
    List<Stop> stops = List.of(Stop.at("usual", 1, 60).optional(500));
    Problem before = new Problem(List.of(day(170)), stops, line, line);
    Insertion insertion = insert(before, Stop.at("emergency", 2, 60));
    assertEquals(List.of(0), insertion.moved());
    assertEquals(List.of(1), insertion.plan().routes().get(0).stops());
  }

  @Test
  void aPinnedOrMandatoryStopDoesNotGiveWay() {
    Matrix line = Towns.line(0, 50, 50);
    for (Stop usual :
        List.of(Stop.at("begun", 1, 60).optional(500).pinned(0), Stop.at("must", 1, 60))) {
      Problem before = new Problem(List.of(day(170)), List.of(usual), line, line);
      Insertion insertion = insert(before, Stop.at("emergency", 2, 60));
      assertEquals(OptionalInt.empty(), insertion.vehicle());
      assertEquals(List.of(0), insertion.plan().routes().get(0).stops());
      assertEquals(Fault.NO_ROOM, insertion.plan().leftOut().get(0).fault());
    }
  }

  @Test
  void anEmergencyInALargePlanIsPlacedWithinASecond() {
    Matrix square = Towns.square(1002, 100, new Random(3));
    List<Stop> stops = Towns.stopsAt(square).subList(0, 1000);
    Problem before =
        new Problem(java.util.Collections.nCopies(125, day(420)), stops, square, square);
    Plan plan = new RuinAndRecreate().search(before, SearchOptions.of(1, Limit.iterations(0)));
    assertTrue(plan.complete());
    Problem after = with(before, Stop.at("emergency", 1001, 30));
    new Emergency(after, plan).insert(1000);
    // processor time of this thread, so that a busy machine does not count
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long begin = threads.getCurrentThreadCpuTime();
    Insertion insertion = new Emergency(after, plan).insert(1000);
    double seconds = (threads.getCurrentThreadCpuTime() - begin) * 1e-9;
    assertTrue(insertion.vehicle().isPresent());
    assertTrue(seconds < 1, "took " + seconds);
  }
}
