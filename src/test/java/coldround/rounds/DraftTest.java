package coldround.rounds;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Measure;
import coldround.rounds.search.Limit;
import coldround.rounds.search.SearchOptions;
import coldround.rounds.search.engine.RuinAndRecreate;
import coldround.table.RuleTables;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A small town, one good technician, and what can be wrong with each of its parts. */
class DraftTest {

  private static final ZoneId ZONE = ZoneId.of("America/New_York");
  private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
  private static final LocalDate FRIDAY = MONDAY.plusDays(4);
  private static final Instant SUNDAY = MONDAY.minusDays(1).atStartOfDay(ZONE).toInstant();
  private static final String OFFICE = "Mo-Fr 08:00-16:00";
  private static final RoundRules RULES = rules();
  private static final Prices PRICES = new Prices(90, 1.5, 0.4, 80, Measure.of("USD"));

  private final List<Worker> workers = new ArrayList<>();
  private final List<Premises> sites = new ArrayList<>();
  private final List<Job> jobs = new ArrayList<>();
  private final List<Call> calls = new ArrayList<>();
  private Travel travel = new Travel(RULES.roads());
  private final DrivesByHand drives = new DrivesByHand();
  private Instant now = SUNDAY;
  private Set<LocalDate> holidays = Set.of();

  private static RoundRules rules() {
    RuleTables tables = new RuleTables("scoring", null);
    RoundRules rules = RoundRules.load(tables);
    tables.check();
    return rules;
  }

  private void worker(String code, Double north, Double east, String hours, String... skills) {
    workers.add(
        new Worker(
            code, code, new Place(code, north, east), hours, ZONE, Set.of(skills), Set.of()));
  }

  private void site(String code, Double north, Double east, String hours) {
    sites.add(new Premises(code, code, "", new Place(code, north, east), ZONE, hours));
  }

  private Job job(String task, String site, int minutes, LocalDate due, double saves) {
    Job job =
        new Job(
            task,
            site,
            "u" + task,
            task,
            "drain-clearing",
            minutes,
            Set.of(),
            due.minusDays(7),
            due,
            due.plusDays(7),
            null,
            saves,
            List.of());
    jobs.add(job);
    return job;
  }

  private static Job by(Job job, LocalDate lawful, Set<String> skills) {
    return new Job(
        job.task(),
        job.site(),
        job.unit(),
        job.tag(),
        job.kind(),
        job.minutes(),
        skills,
        job.earliest(),
        job.due(),
        job.latest(),
        lawful,
        job.savesPerDay(),
        job.reasons());
  }

  private void town() {
    worker("T1", 38.20, -79.00, OFFICE, "electrical");
    site("A/NEAR", 38.22, -79.00, "Mo-Fr 07:00-15:00");
    site("A/FAR", 38.40, -79.10, "Mo,We 09:00-12:00; Fr 13:00-16:00");
  }

  private RoundPlan plan() {
    Order order = new Order(MONDAY, FRIDAY, now, workers, sites, jobs, calls, holidays);
    Draft draft = Draft.of(order, RULES, PRICES, travel);
    SearchOptions options = SearchOptions.of(1, Limit.iterations(1500));
    RoundPlan plan =
        draft.answer(draft.together(new RuinAndRecreate().search(draft.problem(), options)));
    assertEquals(List.of(), RoundPlanChecker.check(order, plan, drives::minutes));
    return plan;
  }

  private static List<String> codes(RoundPlan plan) {
    return plan.notes().stream().map(note -> note.code() + " " + note.subject()).toList();
  }

  private static Set<String> planned(RoundPlan plan) {
    return plan.rounds().stream()
        .flatMap(round -> round.stops().stream())
        .flatMap(stop -> stop.call().jobs().stream())
        .map(Job::task)
        .collect(Collectors.toSet());
  }

  @Test
  void dueTasksOfASiteAreOneCallAndSayWhy() {
    town();
    job("near1", "A/NEAR", 30, MONDAY, 5);
    job("near2", "A/NEAR", 40, MONDAY.plusDays(2), 5);
    job("far", "A/FAR", 60, MONDAY.minusDays(30), 20);
    RoundPlan plan = plan();
    assertEquals(Set.of("near1", "near2", "far"), planned(plan));
    assertEquals(2, plan.rounds().stream().mapToInt(round -> round.stops().size()).sum());
    plan.rounds().stream()
        .flatMap(round -> round.stops().stream())
        .forEach(stop -> assertTrue(stop.why().us().contains(" "), stop.why().us()));
    assertTrue(codes(plan).contains("travel-times-estimated travel"), codes(plan).toString());
    assertTrue(plan.cost().total() > 0);
  }

  @Test
  void anOverdueTaskIsDoneOnTheFirstDayItsSiteIsOpen() {
    town();
    job("far", "A/FAR", 60, MONDAY.minusDays(30), 20);
    assertEquals(MONDAY, plan().rounds().get(0).day());
  }

  @ParameterizedTest
  @CsvSource({"1, false", "500, true"})
  void whatWaitingCostsLessThanTheWayIsLeftOutWithTheReason(double saves, boolean done) {
    worker("T1", 38.20, -79.00, OFFICE);
    site("A/HILLS", 38.80, -79.60, "");
    job("far", "A/HILLS", 20, FRIDAY, saves);
    RoundPlan plan = plan();
    assertEquals(done, planned(plan).contains("far"));
    if (!done) {
      assertEquals("may-wait", plan.leftOut().get(0).why().code());
      assertTrue(plan.leftOut().get(0).why().us().contains("USD"));
    }
  }

  @Test
  void theLawIsKeptAtAnyPrice() {
    worker("T1", 38.20, -79.00, OFFICE);
    site("A/HILLS", 38.80, -79.60, "");
    Job job = job("far", "A/HILLS", 20, MONDAY.plusDays(1), 0);
    jobs.set(0, by(job, MONDAY.plusDays(1), Set.of()));
    RoundPlan plan = plan();
    assertFalse(plan.rounds().get(0).day().isAfter(MONDAY.plusDays(1)));
    assertEquals("lawful", plan.rounds().get(0).stops().get(0).why().code());
  }

  @Test
  void aSkillThatNobodyHasIsNamed() {
    town();
    Job job = job("gas", "A/NEAR", 20, MONDAY, 50);
    jobs.set(0, by(job, null, Set.of("ammonia")));
    RoundPlan plan = plan();
    assertEquals("skill-missing", plan.leftOut().get(0).why().code());
    assertTrue(plan.leftOut().get(0).why().us().contains("ammonia"));
  }

  /** Each row: what is wrong, how it is named, about what. The good site is planned in any case. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "site without coordinates | no-coordinates | site A/BAD",
        "site in the sea | no-coordinates | site A/BAD",
        "site in the ocean | misplaced | site A/BAD",
        "site with longitude and latitude swapped | misplaced | site A/BAD",
        "site never open | never-open | site A/BAD",
        "site with unreadable hours | hours-unreadable | site A/BAD",
        "site closed in these days | closed | site A/BAD",
        "technician without hours | no-hours | technician T9",
        "technician without coordinates | no-coordinates | technician T9",
        "technician with unreadable hours | hours-unreadable | technician T9",
        "technician off all week | no-working-day | technician T9",
        "task longer than the site is open | too-long | task bad",
        "task longer than any day | longer-than-any-shift | call cbad at A/BAD",
        "unknown site | no-site | site A/BAD"
      })
  void whatIsWrongIsNamedAndTheRestIsPlanned(String what, String code, String subject) {
    town();
    job("good", "A/NEAR", 30, MONDAY, 50);
    breakSomething(what);
    RoundPlan plan = plan();
    assertTrue(planned(plan).contains("good"), plan.toString());
    assertFalse(planned(plan).contains("bad"));
    assertTrue(codes(plan).contains(code + " " + subject), codes(plan).toString());
    plan.notes()
        .forEach(
            note ->
                assertFalse(
                    note.message().matches(".*(vehicle|stop|shift|window).*"), note.message()));
  }

  private void breakSomething(String what) {
    switch (what) {
      case "site without coordinates" -> bad(null, null, "", 30);
      case "site in the sea" -> bad(0.0, 0.0, "", 30);
      case "site in the ocean" -> bad(38.0, -40.0, "", 30);
      case "site with longitude and latitude swapped" -> bad(-79.0, 38.3, "", 30);
      case "site never open" -> bad(38.3, -79.0, "Mo-Su off", 30);
      case "site with unreadable hours" -> bad(38.3, -79.0, "Jan-Mar 08:00-12:00", 30);
      case "site closed in these days" -> bad(38.3, -79.0, "Sa 08:00-12:00", 30);
      case "technician without hours" -> worker("T9", 38.2, -79.0, "");
      case "technician without coordinates" -> worker("T9", null, null, OFFICE);
      case "technician with unreadable hours" -> worker("T9", 38.2, -79.0, "all day");
      case "technician off all week" -> worker("T9", 38.2, -79.0, "Sa 08:00-12:00");
      case "task longer than the site is open" -> bad(38.3, -79.0, "Mo-Fr 08:00-09:00", 61);
      case "task longer than any day" -> bad(38.3, -79.0, "", 700);
      case "unknown site" -> job("bad", "A/BAD", 30, MONDAY, 50);
      default -> throw new IllegalArgumentException(what);
    }
  }

  private void bad(Double north, Double east, String hours, int minutes) {
    site("A/BAD", north, east, hours);
    job("bad", "A/BAD", minutes, MONDAY, 50);
  }

  @Test
  void twoHundredTechniciansAndNoTask() {
    IntStream.range(0, 200).forEach(i -> worker("T" + i, 38.2, -79.0, OFFICE));
    RoundPlan plan = plan();
    assertTrue(plan.rounds().isEmpty());
    assertTrue(codes(plan).contains("no-task plan"), codes(plan).toString());
  }

  @Test
  void aTaskAndNoTechnician() {
    site("A/NEAR", 38.22, -79.00, "");
    job("near", "A/NEAR", 30, MONDAY, 50);
    RoundPlan plan = plan();
    assertTrue(codes(plan).contains("no-technician plan"), codes(plan).toString());
    assertEquals("no-vehicle", plan.leftOut().get(0).why().code());
    assertEquals(
        "no technician works in these days; it takes 30 minutes", plan.leftOut().get(0).why().us());
  }

  @Test
  void aPairMissingInTheMatrixIsEstimatedAndTold() {
    town();
    travel = new Travel(RULES.roads());
    travel.put("T1", "A/NEAR", 9, 6.0);
    drives.put("T1", "A/NEAR", 9);
    job("near", "A/NEAR", 30, MONDAY, 50);
    job("far", "A/FAR", 30, MONDAY, 50);
    RoundPlan plan = plan();
    assertTrue(codes(plan).contains("travel-times-incomplete travel"), codes(plan).toString());
  }

  @Test
  void moreWorkThanOneStopMayBeIsSplitWithUnitsKeptWhole() {
    town();
    IntStream.range(0, 10).forEach(i -> job("near" + i, "A/NEAR", 50, MONDAY, 30));
    RoundPlan plan = plan();
    assertEquals(10, planned(plan).size());
    plan.rounds().stream()
        .flatMap(round -> round.stops().stream())
        .forEach(stop -> assertTrue(stop.call().minutes() <= 240));
  }

  @Test
  void bothPartsOfADayAreWorkedAndTheTimeBetweenIsFree() {
    worker("T1", 38.20, -79.00, "Mo-Fr 07:00-11:00,14:00-18:00");
    site("A/NEAR", 38.22, -79.00, "");
    site("A/OTHER", 38.18, -79.02, "");
    job("near", "A/NEAR", 180, MONDAY, 300);
    job("other", "A/OTHER", 180, MONDAY, 300);
    RoundPlan plan = plan();
    assertEquals(Set.of("near", "other"), planned(plan));
    RoundPlan.Round round = plan.rounds().get(0);
    if (round.stops().size() == 2) {
      assertNotNull(round.rest());
      assertEquals(180, round.rest().minutes(), 0.1);
    }
  }

  @Test
  void aBookedCallStaysAndTheRestIsPlannedAroundIt() {
    town();
    job("near", "A/NEAR", 30, MONDAY, 50);
    Job booked = job("far", "A/FAR", 60, MONDAY, 50);
    jobs.remove(booked);
    Instant ten = MONDAY.plusDays(2).atTime(10, 0).atZone(ZONE).toInstant();
    Kept kept = new Kept("T1", ten, ten, "booked");
    calls.add(new Call("cfar", "A/FAR", List.of(booked), booked.earliest(), null, true, kept));
    RoundPlan plan = plan();
    RoundPlan.Stop stop =
        plan.rounds().stream()
            .flatMap(round -> round.stops().stream())
            .filter(each -> each.call().id().equals("cfar"))
            .findFirst()
            .orElseThrow();
    assertTrue(Math.abs(ten.getEpochSecond() - stop.begins().getEpochSecond()) <= 300);
    assertEquals("kept", stop.why().code());
    assertTrue(planned(plan).contains("near"));
  }

  @Test
  void whatIsBookedWithSomebodyWhoIsAwayIsGivenToAnotherAndTold() {
    town();
    worker("T2", 38.20, -79.02, OFFICE);
    Job booked = job("near", "A/NEAR", 60, MONDAY, 50);
    jobs.remove(booked);
    Instant ten = MONDAY.plusDays(2).atTime(10, 0).atZone(ZONE).toInstant();
    Kept kept = new Kept("T1", ten, ten, "booked");
    calls.add(new Call("cnear", "A/NEAR", List.of(booked), MONDAY, null, true, kept));
    Worker away = workers.get(0);
    workers.set(
        0,
        new Worker(
            "T1",
            "T1",
            away.home(),
            away.hours(),
            ZONE,
            away.skills(),
            Set.of(MONDAY.plusDays(2))));
    RoundPlan plan = plan();
    assertEquals("T2", plan.rounds().get(0).technician());
    assertTrue(codes(plan).contains("technician-away technician T1"), codes(plan).toString());
  }

  @Test
  void workOfASiteThatAsksForDifferentSkillsIsDoneByTheOneWhoCanDoAll() {
    worker("T1", 38.20, -79.00, OFFICE, "electrical", "refrigerant-handling");
    worker("T2", 38.20, -79.02, OFFICE);
    site("A/SHOP", 38.21, -79.01, "");
    site("A/EAST", 38.20, -78.80, "");
    Job gas = job("gas", "A/SHOP", 200, MONDAY, 300);
    jobs.set(0, by(gas, null, Set.of("refrigerant-handling")));
    job("plain", "A/SHOP", 120, MONDAY, 300);
    job("east", "A/EAST", 60, MONDAY, 300);
    RoundPlan plan = plan();
    assertEquals(Set.of("gas", "plain", "east"), planned(plan));
    plan.rounds().stream()
        .collect(Collectors.groupingBy(RoundPlan.Round::day))
        .forEach(
            (day, rounds) ->
                assertTrue(
                    rounds.stream().filter(DraftTest::visitsTheShop).count() <= 1,
                    rounds.toString()));
  }

  /** One day: nobody works on another. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "gas | ammonia | 60 | nobody who works that day has all of ammonia, gas",
        "gas | gas | 300 | has room that day for its 600 minutes beside what else is planned"
      })
  void whySeveralTechniciansComeToASiteIsTold(String one, String other, int minutes, String why) {
    worker("T1", 38.20, -79.00, "Mo 08:00-16:00", one);
    worker("T2", 38.20, -79.02, "Mo 08:00-16:00", other);
    site("A/SHOP", 38.21, -79.01, "");
    Job first = job("first", "A/SHOP", minutes, MONDAY, 900);
    jobs.set(0, by(first, null, Set.of(one)));
    Job second = job("second", "A/SHOP", minutes, MONDAY, 900);
    jobs.set(1, by(second, null, Set.of(other)));
    RoundPlan plan = plan();
    assertEquals(Set.of("first", "second"), planned(plan));
    Note note =
        plan.notes().stream()
            .filter(each -> each.code().equals("several-technicians"))
            .findFirst()
            .orElseThrow();
    assertEquals("site A/SHOP on " + MONDAY, note.subject());
    assertTrue(note.message().startsWith("is visited by T1 and T2: "), note.message());
    assertTrue(note.message().contains(why), note.message());
    assertTrue(note.message().contains("no other day of the plan can take"), note.message());
  }

  private static boolean visitsTheShop(RoundPlan.Round round) {
    return round.stops().stream().anyMatch(stop -> stop.call().site().equals("A/SHOP"));
  }

  @Test
  void aDayMayStartAtASiteAndEndElsewhere() {
    Place start = new Place("T1 start", 38.40, -79.10, "A/FAR");
    Place end = new Place("T1 end", 38.60, -79.00);
    workers.add(new Worker("T1", "T1", start, end, OFFICE, ZONE, Set.of(), Set.of()));
    site("A/NEAR", 38.22, -79.00, "");
    site("A/FAR", 38.40, -79.10, "");
    job("near", "A/NEAR", 30, MONDAY, 300);
    job("far", "A/FAR", 60, MONDAY, 300);
    RoundPlan.Round round = plan().rounds().get(0);
    assertEquals(start, round.home());
    assertEquals(end, round.end());
    // the great circle from NEAR to the end is 42.25 km (0.38 degrees of 111.195 km); no road is
    // shorter
    assertEquals("A/FAR", round.stops().get(0).call().site());
    assertEquals(0, round.stops().get(0).leg().minutes());
    assertTrue(round.back().km() >= 42.2, round.back().toString());
  }

  @Test
  void hoursThatSpeakOfPublicHolidaysAreKept() {
    holidays = Set.of(MONDAY, MONDAY.plusDays(1));
    worker("T1", 38.20, -79.00, "Mo-Fr 08:00-16:00; PH 08:00-12:00");
    site("A/NEAR", 38.22, -79.00, "Mo-Fr 07:00-15:00; PH off");
    site("A/OTHER", 38.21, -79.00, "Mo-Fr 07:00-15:00");
    job("near", "A/NEAR", 30, MONDAY, 500);
    job("other", "A/OTHER", 30, MONDAY, 500);
    RoundPlan plan = plan();
    Map<String, LocalDate> days = new java.util.HashMap<>();
    plan.rounds()
        .forEach(round -> round.stops().forEach(s -> days.put(s.call().site(), round.day())));
    assertEquals(Map.of("A/OTHER", MONDAY, "A/NEAR", MONDAY.plusDays(2)), days);
    plan.rounds().stream()
        .filter(round -> round.day().equals(MONDAY))
        .forEach(round -> assertEquals(240, round.working().minutes()));
  }

  /** Dates of 2026 and 2027 as the Office of Personnel Management publishes them, from memory. */
  @Test
  void thePublicHolidaysOfTheTable() {
    assertEquals(
        Set.of(
            LocalDate.of(2026, 11, 11),
            LocalDate.of(2026, 11, 26),
            LocalDate.of(2026, 12, 25),
            LocalDate.of(2027, 1, 1),
            LocalDate.of(2027, 1, 18),
            LocalDate.of(2027, 2, 15),
            LocalDate.of(2027, 5, 31)),
        RULES.holidays(LocalDate.of(2026, 11, 1), LocalDate.of(2027, 5, 31)));
  }

  @Test
  void whatHasBegunAndWhatSomebodyIsOnTheWayToStays() {
    town();
    job("near", "A/NEAR", 60, MONDAY, 300);
    job("far", "A/FAR", 60, MONDAY, 300);
    RoundPlan plan = plan();
    RoundPlan.Round round = plan.rounds().get(0);
    RoundPlan.Stop first = round.stops().get(0);
    Instant on = round.leaves().plusSeconds(60);
    assertEquals("under way", Revision.kept(plan, on, Set.of()).get(0).kept().why());
    List<Call> begun = Revision.kept(plan, first.begins().plusSeconds(60), Set.of());
    assertEquals("begun", begun.get(0).kept().why());
    assertEquals(first.call().id(), begun.get(0).id());
    assertEquals(List.of(), Revision.kept(plan, round.leaves().minusSeconds(60), Set.of()));
  }

  @Test
  void nothingIsPlannedBeforeNow() {
    town();
    now = MONDAY.plusDays(1).atTime(11, 30).atZone(ZONE).toInstant();
    job("near", "A/NEAR", 30, MONDAY, 200);
    RoundPlan plan = plan();
    assertFalse(plan.rounds().get(0).leaves().isBefore(now));
    assertEquals(MONDAY.plusDays(1), plan.rounds().get(0).day());
  }

  @Test
  void anEmergencyGoesIntoTheDayAndTheOthersKeepTheirOrder() {
    town();
    site("A/MID", 38.30, -79.05, "");
    job("near", "A/NEAR", 60, MONDAY, 300);
    job("far", "A/FAR", 60, MONDAY, 300);
    RoundPlan plan = plan();
    LocalDate day = plan.rounds().get(0).day();
    Job sudden = job("sudden", "A/MID", 45, day, 0);
    now = plan.rounds().get(0).stops().get(0).begins().plusSeconds(60);
    List<Call> all = new ArrayList<>(Revision.day(plan, day, now, Set.of()));
    all.add(new Call("csudden", "A/MID", List.of(sudden), day, day, true, null));
    Order order = new Order(day, day, now, workers, sites, List.of(), all);
    Draft draft = Draft.of(order, RULES, PRICES, travel);
    Revision.Outcome outcome = Revision.insert(plan, day, draft);
    assertNotNull(outcome.round());
    List<String> before =
        plan.rounds().get(0).stops().stream().map(stop -> stop.call().id()).toList();
    List<String> after =
        outcome.round().stops().stream()
            .map(stop -> stop.call().id())
            .filter(id -> !id.equals("csudden"))
            .toList();
    assertEquals(before, after);
    RoundPlan.Stop begun = outcome.round().stops().get(0);
    assertEquals(before.get(0), begun.call().id());
    assertEquals("begun", begun.call().kept().why());
    RoundPlan.Stop inserted =
        outcome.round().stops().stream()
            .filter(stop -> stop.call().id().equals("csudden"))
            .findFirst()
            .orElseThrow();
    assertFalse(inserted.begins().isBefore(now));
  }
}
