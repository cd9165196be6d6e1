package coldround.rounds.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.rounds.search.engine.RuinAndRecreate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RuinAndRecreateTest {

  private static final SearchOptions SHORT = SearchOptions.of(1, Limit.iterations(1000));

  private static Vehicle day(double hours) {
    return Vehicle.of("day", 0, Shift.regular(0, hours * 60), Rates.DISTANCE);
  }

  private static Plan plan(Problem problem) {
    Plan plan = new RuinAndRecreate().search(problem, SHORT);
    assertEquals(List.of(), PlanChecker.check(problem, plan));
    return plan;
  }

  @Test
  void stopsOnALineAreServedInOrderAndBack() {
    Matrix line = Towns.line(0, 10, 20, 30, -5);
    Plan plan = plan(new Problem(List.of(day(8)), Towns.stopsAt(line), line, line));
    assertTrue(plan.complete());
    assertEquals(70, plan.distance(), 1e-9);
  }

  @Test
  void theSameSeedAndIterationsGiveTheSamePlan() {
    Problem problem = Towns.mixed(40, 6, 11);
    SearchOptions options = SearchOptions.of(5, Limit.iterations(3000));
    Plan first = new RuinAndRecreate().search(problem, options);
    Plan second = new RuinAndRecreate().search(problem, options);
    assertEquals(first, second);
  }

  @Test
  void theSameSeedGivesTheSamePlanWhereWorkersShareTheToursOut() {
    Random random = new Random(4);
    Matrix square = Towns.square(701, 100, random);
    Problem problem =
        new Problem(
            java.util.Collections.nCopies(60, day(6)), Towns.stopsAt(square), square, square);
    SearchOptions options = SearchOptions.of(5, Limit.iterations(1000));
    Plan first = new RuinAndRecreate().search(problem, options);
    assertEquals(List.of(), PlanChecker.check(problem, first));
    assertEquals(first, new RuinAndRecreate().search(problem, options));
  }

  @Test
  void aStopIsLeftOutWhenItsPriceIsBelowTheWay() {
    Matrix line = Towns.line(0, 10, 100);
    List<Stop> stops =
        List.of(Stop.at("near", 1, 10).optional(21), Stop.at("far", 2, 10).optional(179));
    Plan plan = plan(new Problem(List.of(day(8)), stops, line, line));
    assertEquals(List.of(new LeftOut(1, false, Fault.DEARER_THAN_LEAVING_OUT)), plan.leftOut());
    assertEquals(20 + 179, plan.cost().total(), 1e-9);
  }

  @Test
  void aStopGoesInWhenItsPriceIsAboveTheWay() {
    Matrix line = Towns.line(0, 10, 100);
    List<Stop> stops =
        List.of(Stop.at("near", 1, 10).optional(21), Stop.at("far", 2, 10).optional(181));
    assertEquals(200, plan(new Problem(List.of(day(8)), stops, line, line)).cost().total(), 1e-9);
  }

  @Test
  void twoFarStopsGoInTogetherThoughNeitherPaysAlone() {
    Matrix line = Towns.line(0, 100, 101);
    List<Stop> stops =
        List.of(Stop.at("one", 1, 10).optional(150), Stop.at("other", 2, 10).optional(150));
    assertEquals(202, plan(new Problem(List.of(day(8)), stops, line, line)).cost().total(), 1e-9);
  }

  @Test
  void aStopIsGivenToTheDayThatCostsLess() {
    Matrix line = Towns.line(0, 10);
    Problem problem =
        new Problem(
            List.of(day(8), day(8)),
            Towns.stopsAt(line),
            line,
            line,
            (stop, vehicle) -> vehicle == 0 ? 5 : 0);
    assertEquals(1, plan(problem).routes().get(0).vehicle());
  }

  @Test
  void fewestVehiclesBeatsTheShorterWayOnTwo() {
    Matrix line = Towns.line(0, 10, -10);
    List<Stop> stops =
        List.of(
            Stop.at("east", 1, 10).within(new Window(0, 60)),
            Stop.at("west", 2, 10).within(new Window(0, 120)));
    Rates dear = new Rates(0, 1, 0, 0);
    Vehicle east = Vehicle.of("east", 1, Shift.regular(0, 480), dear).endingAt(1);
    Vehicle west = Vehicle.of("west", 2, Shift.regular(0, 480), dear).endingAt(2);
    Problem problem = new Problem(List.of(east, west), stops, line, line);
    assertEquals(2, plan(problem).routes().size());
    SearchOptions few = new SearchOptions(1, Limit.iterations(1000), 2, Goal.FEWEST_VEHICLES);
    assertEquals(1, new RuinAndRecreate().search(problem, few).routes().size());
  }

  @Test
  void theListenerHearsOfEveryBetterPlanAndTheLastOneIsTheAnswer() {
    List<Plan> heard = new ArrayList<>();
    Problem problem = Towns.mixed(30, 5, 2);
    Plan plan = new RuinAndRecreate().search(problem, Optional.empty(), SHORT, heard::add);
    assertEquals(plan, heard.get(heard.size() - 1));
  }

  @Test
  void aCancelledSearchAnswersWithItsFirstPlan() {
    SearchListener impatient =
        new SearchListener() {
          @Override
          public void better(Plan best) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    Problem problem = Towns.mixed(30, 5, 2);
    SearchOptions endless = SearchOptions.of(1, Limit.seconds(3600));
    Plan plan = new RuinAndRecreate().search(problem, Optional.empty(), endless, impatient);
    assertEquals(List.of(), PlanChecker.check(problem, plan));
    assertFalse(plan.routes().isEmpty());
  }

  @Test
  void theTimeAllowedIsKept() {
    long begin = System.nanoTime();
    new RuinAndRecreate().search(Towns.mixed(30, 5, 2), SearchOptions.of(1, Limit.seconds(0.5)));
    double seconds = (System.nanoTime() - begin) * 1e-9;
    // a busy machine may let threads wait, hence the width
    assertTrue(seconds > 0.4 && seconds < 5, "took " + seconds);
  }

  @Test
  void aBreakIsTakenOnArrivalAndNotPaid() {
    Matrix line = Towns.line(0, 100, 200);
    Vehicle vehicle =
        Vehicle.of("day", 0, Shift.regular(0, 600), new Rates(0, 0, 1, 0))
            .withRest(new Rest(30, 90, 150));
    Plan plan = plan(new Problem(List.of(vehicle), Towns.stopsAt(line), line, line));
    Route route = plan.routes().get(0);
    assertTrue(route.restBegins().isPresent());
    assertEquals(420, plan.cost().labour(), 1e-9);
    assertEquals(450, route.returns() - route.departs(), 1e-9);
  }

  @Test
  void overtimeIsPaidOnTopOfLabourAfterTheRegularEnd() {
    Matrix line = Towns.line(0, 100);
    Vehicle vehicle = Vehicle.of("day", 0, new Shift(0, 180, 240), new Rates(7, 2, 1, 0.5));
    CostSplit cost = plan(new Problem(List.of(vehicle), Towns.stopsAt(line), line, line)).cost();
    assertEquals(new CostSplit(7, 400, 210, 15, 0, 0), cost);
  }

  @Test
  void theRoundLeavesAsLateAsTheEarliestReturnAllows() {
    Matrix line = Towns.line(0, 30);
    List<Stop> stops = List.of(Stop.at("late", 1, 10).within(new Window(200, 220)));
    Vehicle vehicle = Vehicle.of("day", 0, Shift.regular(0, 480), new Rates(0, 0, 1, 0));
    Route route = plan(new Problem(List.of(vehicle), stops, line, line)).routes().get(0);
    assertEquals(170, route.departs(), 1e-9);
    assertEquals(240, route.returns(), 1e-9);
    assertEquals(0, route.waitingMinutes(), 1e-9);
  }
}
