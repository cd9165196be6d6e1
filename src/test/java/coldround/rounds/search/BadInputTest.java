package coldround.rounds.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.rounds.search.engine.RuinAndRecreate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What cannot be planned is named; the rest is planned. */
class BadInputTest {

  private static final Matrix LINE = Towns.line(0, 10, 20);
  private static final Stop SOUND = Stop.at("sound", 1, 10);
  private static final Vehicle DAY =
      Vehicle.of("day", 0, Shift.regular(480, 960), Rates.DISTANCE).withCapacity(5);

  private static Plan plan(List<Vehicle> vehicles, Stop... stops) {
    return plan(new Problem(vehicles, List.of(stops), LINE, LINE));
  }

  private static Plan plan(Problem problem) {
    Plan plan = new RuinAndRecreate().search(problem, SearchOptions.of(1, Limit.iterations(200)));
    assertEquals(List.of(), PlanChecker.check(problem, plan));
    return plan;
  }

  private static void assertNamed(Fault fault, Stop bad) {
    Plan plan = plan(List.of(DAY), bad, SOUND);
    assertEquals(List.of(new LeftOut(0, bad.mandatory(), fault)), plan.leftOut());
    assertEquals(List.of(1), plan.routes().get(0).stops());
  }

  @Test
  void windowsThatEndBeforeTheyStart() {
    assertNamed(Fault.WINDOW_NEVER_OPEN, Stop.at("bad", 2, 10).within(new Window(700, 600)));
  }

  @Test
  void noWindowAtAll() {
    assertNamed(Fault.WINDOW_NEVER_OPEN, Stop.at("bad", 2, 10).within());
  }

  @Test
  void windowsThatOpenWhenNobodyWorks() {
    assertNamed(Fault.WINDOW_OUTSIDE_SHIFTS, Stop.at("bad", 2, 10).within(new Window(0, 499)));
  }

  @Test
  void aWindowThatClosesOnTheFirstPossibleArrivalIsMet() {
    Plan plan = plan(List.of(DAY), Stop.at("just", 2, 10).within(new Window(0, 500)));
    assertTrue(plan.complete());
  }

  @Test
  void aStopLongerThanAnyDay() {
    assertNamed(Fault.LONGER_THAN_ANY_SHIFT, Stop.at("bad", 2, 441));
    assertTrue(plan(List.of(DAY), Stop.at("just", 2, 440)).complete());
  }

  @Test
  void aServiceTimeThatIsNoTime() {
    assertNamed(Fault.SERVICE_NOT_A_TIME, Stop.at("bad", 2, Double.NaN));
    assertNamed(Fault.SERVICE_NOT_A_TIME, Stop.at("bad", 2, -1));
    assertNamed(Fault.SERVICE_NOT_A_TIME, Stop.at("bad", 2, Double.POSITIVE_INFINITY));
  }

  @Test
  void aSkillNobodyHas() {
    assertNamed(Fault.SKILL_MISSING, Stop.at("bad", 2, 10).needing(Set.of("ammonia")));
  }

  @Test
  void aDemandAboveEveryCapacity() {
    assertNamed(Fault.DEMAND_TOO_LARGE, Stop.at("bad", 2, 10).withDemand(6).optional(9));
  }

  @Test
  void noVehicle() {
    Plan plan = plan(List.of(), SOUND);
    assertEquals(List.of(new LeftOut(0, true, Fault.NO_VEHICLE)), plan.leftOut());
  }

  @Test
  void noStop() {
    Plan plan = plan(List.of(DAY));
    assertTrue(plan.complete());
    assertEquals(List.of(), plan.routes());
  }

  @Test
  void aShiftThatEndsBeforeItBegins() {
    Vehicle never = Vehicle.of("never", 0, Shift.regular(960, 480), Rates.DISTANCE);
    Plan plan = plan(List.of(never, DAY), SOUND);
    assertEquals(List.of(new Unusable(0, Fault.SHIFT_WITHOUT_LENGTH)), plan.unusable());
    assertEquals(1, plan.routes().get(0).vehicle());
  }

  @Test
  void aPinnedStopWhoseVehicleCannotGoOut() {
    Vehicle never = Vehicle.of("never", 0, Shift.regular(960, 480), Rates.DISTANCE);
    Plan plan = plan(List.of(never, DAY), SOUND.pinned(0), Stop.at("other", 2, 10));
    assertEquals(1, plan.leftOut().size());
    assertEquals(0, plan.leftOut().get(0).stop());
  }

  @Test
  void aPlaceWithoutAnyWay() {
    double no = Double.POSITIVE_INFINITY;
    double[][] rows = {{0, 10, no}, {10, 0, no}, {no, no, 0}};
    Matrix gaps = Matrix.of(rows);
    Plan plan =
        plan(new Problem(List.of(DAY), List.of(Stop.at("island", 2, 10), SOUND), gaps, gaps));
    assertEquals(List.of(new LeftOut(0, true, Fault.NOT_REACHABLE)), plan.leftOut());
    assertEquals(List.of(1), plan.routes().get(0).stops());
  }

  @Test
  void waysThatAreMissingBetweenStopsAreNotDriven() {
    double no = Double.NaN;
    int size = 12;
    double[][] rows = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        rows[i][j] = i == 0 || j == 0 || (i + j) % 3 == 0 ? 5 + i + j : no;
      }
    }
    Matrix gaps = Matrix.of(rows);
    Plan plan =
        plan(new Problem(List.of(DAY, DAY, DAY, DAY, DAY), Towns.stopsAt(gaps), gaps, gaps));
    assertTrue(plan.distance() < 1e6);
  }

  @Test
  void moreMandatoryStopsThanTheDayHoldsAreServedAsFarAsPossible() {
    List<Stop> stops = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      stops.add(Stop.at("stop " + i, 1, 100));
    }
    Plan plan = plan(new Problem(List.of(DAY), stops, LINE, LINE));
    assertEquals(4, plan.routes().get(0).visits().size());
    assertTrue(plan.leftOut().stream().allMatch(left -> left.fault() == Fault.NO_ROOM));
  }

  @Test
  void aPlaceOutsideTheMatrixIsABrokenCall() {
    List<Stop> stops = List.of(Stop.at("stop", 3, 10));
    Exception e =
        assertThrows(
            IllegalArgumentException.class, () -> new Problem(List.of(DAY), stops, LINE, LINE));
    assertTrue(e.getMessage().contains("place 3"));
  }
}
