package coldround.rounds;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Measure;
import coldround.rounds.ByHand.Breach;
import coldround.rounds.ByHand.Move;
import coldround.rounds.ByHand.Outcome;
import coldround.rounds.search.engine.GivenOrder;
import coldround.table.RuleTables;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stops that somebody moves: two technicians, four sites on a road to the north. */
class ByHandTest {

  private static final ZoneId ZONE = ZoneId.of("America/New_York");
  private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
  private static final LocalDate TUESDAY = MONDAY.plusDays(1);
  private static final RoundRules RULES = rules();
  private static final Prices PRICES = new Prices(90, 1.5, 0.4, 80, Measure.of("USD"));

  private final List<Worker> workers = new ArrayList<>();
  private final List<Premises> sites = new ArrayList<>();
  private final List<Job> jobs = new ArrayList<>();
  private final Travel travel = new Travel(RULES.roads());
  private Instant now = MONDAY.atStartOfDay(ZONE).toInstant();

  private static RoundRules rules() {
    RuleTables tables = new RuleTables("scoring", null);
    RoundRules rules = RoundRules.load(tables);
    tables.check();
    return rules;
  }

  @BeforeEach
  void twoTechniciansAndFourSites() {
    worker("T1", 38.20, "Mo-Fr 07:00-16:00", "electrical");
    worker("T2", 38.21, "Mo,Tu 07:00-16:00");
    site("A/ONE", 38.25, "Mo-Fr 07:00-15:00");
    site("A/TWO", 38.30, "");
    site("A/THREE", 38.35, "Mo-Fr 07:00-12:00");
    site("A/LATE", 38.40, "Mo 13:00-16:00; Tu-Fr 07:00-16:00");
    job("one", "A/ONE", 40, Set.of());
    job("two", "A/TWO", 40, Set.of());
    job("three", "A/THREE", 40, Set.of("electrical"));
    job("late", "A/LATE", 40, Set.of("electrical"));
  }

  private void worker(String code, double north, String hours, String... skills) {
    Place home = new Place(code, north, -79.0);
    workers.add(new Worker(code, code, home, hours, ZONE, Set.of(skills), Set.of()));
  }

  private void site(String code, double north, String hours) {
    sites.add(new Premises(code, code, "", new Place(code, north, -79.0), ZONE, hours));
  }

  private void job(String task, String site, int minutes, Set<String> skills) {
    LocalDate due = MONDAY.minusDays(10);
    jobs.add(
        new Job(
            task,
            site,
            "u" + task,
            task,
            "drain-clearing",
            minutes,
            skills,
            due.minusDays(7),
            due,
            due.plusDays(60),
            null,
            500,
            List.of()));
  }

  private Order order(List<Job> asked, List<Call> calls) {
    return new Order(MONDAY, TUESDAY, now, workers, sites, asked, calls);
  }

  /** Rounds as somebody wrote them down: "T1 0" is the Monday of T1, then tasks in order. */
  private RoundPlan plan(String... rounds) {
    Draft draft = Draft.of(order(jobs, List.of()), RULES, PRICES, travel);
    Map<Integer, List<Integer>> orders = new HashMap<>();
    for (String round : rounds) {
      String[] parts = round.split("[ :]+");
      LocalDate day = MONDAY.plusDays(Integer.parseInt(parts[1]));
      List<Integer> stops = new ArrayList<>();
      for (int i = 2; i < parts.length; i++) {
        stops.add(stop(draft, parts[i]));
      }
      orders.put(vehicle(draft, parts[0], day), stops);
    }
    RoundPlan plan = draft.answer(new GivenOrder(draft.problem()).plan(orders));
    assertEquals(List.of(), plan.leftOut());
    check(plan);
    return plan;
  }

  private RoundPlan plan() {
    return plan("T1 0: one two three late");
  }

  private static int stop(Draft draft, String task) {
    for (int s = 0; s < draft.problem().stops().size(); s++) {
      if (draft.call(s).jobs().get(0).task().equals(task)) {
        return s;
      }
    }
    throw new IllegalArgumentException(task);
  }

  private static int vehicle(Draft draft, String technician, LocalDate day) {
    for (int v = 0; v < draft.problem().vehicles().size(); v++) {
      if (draft.problem().vehicles().get(v).name().equals(technician + " " + day)) {
        return v;
      }
    }
    throw new IllegalArgumentException(technician);
  }

  private Outcome move(RoundPlan plan, Move move, String... booked) {
    List<Call> calls = ByHand.calls(plan, move, now, Set.of(booked));
    return ByHand.move(plan, move, Draft.of(order(List.of(), calls), RULES, PRICES, travel));
  }

  /** What is moved must still be a plan that the checker of plans finds nothing wrong with. */
  private void check(RoundPlan moved) {
    assertEquals(
        List.of(),
        RoundPlanChecker.check(order(jobs, List.of()), moved, new DrivesByHand()::minutes));
  }

  private static List<String> stops(RoundPlan plan, String technician, LocalDate day) {
    return plan.rounds().stream()
        .filter(round -> round.technician().equals(technician) && round.day().equals(day))
        .flatMap(round -> round.stops().stream())
        .map(stop -> stop.call().site())
        .toList();
  }

  private static List<String> codes(Outcome outcome) {
    return outcome.breaches().stream().map(Breach::code).toList();
  }

  private static String call(RoundPlan plan, String task) {
    return plan.rounds().stream()
        .flatMap(round -> round.stops().stream())
        .map(RoundPlan.Stop::call)
        .filter(call -> call.jobs().get(0).task().equals(task))
        .findFirst()
        .orElseThrow()
        .id();
  }

  @Test
  void aStopGoesToAnotherDayAndTheBillIsTheDifference() {
    RoundPlan plan = plan();
    String two = call(plan, "two");
    Outcome outcome = move(plan, new Move(two, "T2", TUESDAY, 1));
    assertEquals(List.of(), codes(outcome));
    assertEquals(List.of("A/TWO"), stops(outcome.plan(), "T2", TUESDAY));
    assertEquals(plan.cost().total() + outcome.more().total(), outcome.plan().cost().total(), 1e-6);
    // a day of waiting for work that costs 500 a day
    assertEquals(500, outcome.more().deferring(), 1e-6);
    assertTrue(outcome.moreKm() > 0, "a way of its own");
    check(outcome.plan());
    Outcome back =
        move(outcome.plan(), new Move(two, ByHand.round(plan, two).technician(), MONDAY, 0));
    assertEquals(plan.cost().total(), back.plan().cost().total(), 1e-6);
    assertEquals(-outcome.more().total(), back.more().total(), 1e-6);
  }

  @Test
  void theOrderOfADayIsTurnedAroundAndCostsTheWay() {
    RoundPlan plan = plan();
    String one = call(plan, "one");
    Outcome last = move(plan, new Move(one, "T1", MONDAY, 4));
    assertEquals(List.of(), codes(last));
    assertEquals(List.of("A/TWO", "A/THREE", "A/LATE", "A/ONE"), stops(last.plan(), "T1", MONDAY));
    check(last.plan());
    Outcome best = move(last.plan(), new Move(one, "T1", MONDAY, ByHand.CHEAPEST));
    double least = Double.POSITIVE_INFINITY;
    for (int at = 1; at <= 4; at++) {
      Outcome there = move(last.plan(), new Move(one, "T1", MONDAY, at));
      least = there.possible() ? Math.min(least, there.more().total()) : least;
    }
    assertEquals(least, best.more().total(), 1e-9);
  }

  // two calls of one site: whichever comes first costs the same
  @Test
  void whatCostsTheSameElsewhereStaysWhereItIs() {
    job("again", "A/ONE", 30, Set.of("electrical"));
    for (String order : List.of("one again two three late", "again one two three late")) {
      RoundPlan plan = plan("T1 0: " + order);
      Outcome outcome = move(plan, new Move(call(plan, "one"), "T1", MONDAY, ByHand.CHEAPEST));
      assertEquals(plan.rounds().get(0).stops(), outcome.plan().rounds().get(0).stops());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "three, T2, 0, 1, competences, T2 does not have electrical",
    "one, T1, 2, 1, working-hours, T1 does not work",
    "three, T1, 0, 4, visiting-hours, A/THREE (Mo-Fr 07:00-12:00)",
    "late, T1, 0, 1, visiting-hours, it would be stop 4",
    "one, T3, 0, 1, working-hours, T3 does not work"
  })
  void aRuleForbids(String task, String technician, int day, int at, String code, String said) {
    RoundPlan plan = plan();
    Outcome outcome = move(plan, new Move(call(plan, task), technician, MONDAY.plusDays(day), at));
    assertFalse(outcome.possible());
    assertEquals(code, codes(outcome).get(0));
    assertTrue(outcome.breaches().toString().contains(said), outcome.breaches().toString());
    assertEquals(plan, outcome.plan());
    assertEquals(0, outcome.more().total());
  }

  @Test
  void nobodyIsSentOnADayOffNorToASiteThatIsClosed() {
    Worker two = workers.get(1);
    workers.set(
        1, new Worker("T2", "T2", two.home(), two.hours(), ZONE, Set.of(), Set.of(TUESDAY)));
    site("A/MONDAYS", 38.27, "Mo 07:00-16:00");
    job("mondays", "A/MONDAYS", 30, Set.of());
    RoundPlan plan = plan("T1 0: one mondays two three late");
    Outcome off = move(plan, new Move(call(plan, "one"), "T2", TUESDAY, 0));
    assertEquals(List.of("working-hours"), codes(off));
    Outcome closed = move(plan, new Move(call(plan, "mondays"), "T1", TUESDAY, 0));
    assertEquals(List.of("visiting-hours"), codes(closed));
    assertTrue(closed.breaches().get(0).message().contains("A/MONDAYS is not open"));
  }

  @Test
  void aDayThatWouldGetTooLongIsRefused() {
    for (int i = 0; i < 3; i++) {
      site("A/LONG" + i, 38.26 + i * 0.01, "");
      job("long" + i, "A/LONG" + i, 230, Set.of());
    }
    RoundPlan plan = plan("T1 0: one two three late", "T1 1: long0 long1", "T2 1: long2");
    Outcome two = move(plan, new Move(call(plan, "long0"), "T2", TUESDAY, 0));
    assertEquals(List.of(), codes(two));
    check(two.plan());
    Outcome three = move(two.plan(), new Move(call(plan, "long1"), "T2", TUESDAY, 0));
    assertEquals(List.of("working-hours"), codes(three));
    String said = three.breaches().get(0).message();
    assertTrue(said.contains("Mo,Tu 07:00-16:00") && said.contains("No other place"), said);
  }

  @Test
  void whatIsBookedOrBegunStays() {
    RoundPlan plan = plan();
    String one = call(plan, "one");
    Move away = new Move(one, "T2", TUESDAY, 0);
    assertEquals(List.of("kept"), codes(move(plan, away, "one")));
    now = ByHand.round(plan, one).stops().get(0).begins().plus(10, ChronoUnit.MINUTES);
    Outcome begun = move(plan, away);
    assertTrue(begun.breaches().get(0).message().contains("begun"), begun.breaches().toString());
    Outcome before = move(plan, new Move(call(plan, "late"), "T1", MONDAY, 1));
    assertEquals(List.of("kept"), codes(before), "nothing comes before what has begun");
  }

  @Test
  void aBookedTimeIsNotPushedBack() {
    RoundPlan plan = plan();
    Move before = new Move(call(plan, "two"), "T1", MONDAY, 1);
    assertEquals(List.of(), codes(move(plan, before)));
    now = plan.rounds().get(0).leaves().minus(5, ChronoUnit.MINUTES);
    assertEquals(List.of("kept"), codes(move(plan, before, "one")));
  }

  @Test
  void twoTechniciansAtOneSiteAreToldAndMayBe() {
    job("again", "A/ONE", 30, Set.of("electrical"));
    RoundPlan plan = plan("T1 0: again two three late", "T2 1: one");
    Outcome outcome = move(plan, new Move(call(plan, "one"), "T2", MONDAY, 0));
    assertTrue(outcome.possible());
    assertEquals(List.of("several-technicians"), codes(outcome));
    assertEquals(
        1, outcome.plan().rounds().stream().filter(r -> r.technician().equals("T2")).count());
    check(outcome.plan());
  }

  // what has to be done by Monday: a law asks for it, or it is an emergency
  @ParameterizedTest
  @CsvSource({"drain-clearing, law", "emergency, emergency"})
  void whatHasADayIsNotMovedBehindIt(String kind, String code) {
    Job two = jobs.get(1);
    jobs.set(
        1,
        new Job(
            two.task(),
            two.site(),
            two.unit(),
            two.tag(),
            kind,
            40,
            Set.of(),
            two.earliest(),
            two.due(),
            two.latest(),
            MONDAY,
            0,
            List.of()));
    RoundPlan plan = plan();
    Outcome outcome = move(plan, new Move(call(plan, "two"), "T2", TUESDAY, 0));
    assertEquals(List.of(code), codes(outcome));
    assertTrue(outcome.breaches().get(0).message().contains("2026-11-30"));
  }
}
