package coldround.rounds;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Measure;
import coldround.rounds.search.Limit;
import coldround.rounds.search.SearchOptions;
import coldround.rounds.search.engine.RuinAndRecreate;
import coldround.table.RuleTables;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** That the checker of plans refuses what it is there for: a full day is planned, then spoiled. */
class RoundPlanCheckerTest {

  private static final ZoneId ZONE = ZoneId.of("America/New_York");
  private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
  private static final Prices PRICES = new Prices(90, 1.5, 0.4, 80, Measure.of("USD"));

  private final DrivesByHand drives = new DrivesByHand();

  private static RoundRules rules(Path own) {
    RuleTables tables = new RuleTables("scoring", own);
    RoundRules rules = RoundRules.load(tables);
    tables.check();
    return rules;
  }

  /** Seven hours of work at three sites, for one technician on one day. */
  private static Order fullDay(String hours) {
    Place home = new Place("T1", 38.20, -79.00);
    Worker worker = new Worker("T1", "T1", home, hours, ZONE, Set.of(), Set.of());
    List<Premises> sites =
        IntStream.range(0, 3)
            .mapToObj(i -> new Place("A/" + i, 38.21 + i * 0.01, -79.00))
            .map(at -> new Premises(at.code(), at.code(), "", at, ZONE, ""))
            .toList();
    List<Job> jobs = sites.stream().map(site -> job(site.code())).toList();
    Instant now = MONDAY.minusDays(1).atStartOfDay(ZONE).toInstant();
    return new Order(MONDAY, MONDAY, now, List.of(worker), sites, jobs, List.of());
  }

  private static Job job(String site) {
    return new Job(
        "at " + site,
        site,
        "u1",
        "one",
        "drain-clearing",
        140,
        Set.of(),
        MONDAY,
        MONDAY,
        MONDAY,
        null,
        900,
        List.of());
  }

  private static RoundPlan plan(Order order, RoundRules rules) {
    Draft draft = Draft.of(order, rules, PRICES, new Travel(rules.roads()));
    SearchOptions options = SearchOptions.of(1, Limit.iterations(500));
    RoundPlan plan = draft.answer(new RuinAndRecreate().search(draft.problem(), options));
    assertEquals(List.of(), plan.leftOut());
    return plan;
  }

  private List<String> check(Order order, RoundPlan plan) {
    return RoundPlanChecker.check(order, plan, drives::minutes);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"Mo 08:00-17:00 | 30", "Mo 07:00-12:00,13:15-17:30 | 75", "Mo 08:00-15:45 | 30"})
  void aFullDayHasItsBreak(String hours, double minutes) {
    Order order = fullDay(hours);
    RoundPlan plan = plan(order, rules(null));
    assertEquals(minutes, plan.rounds().get(0).rest().minutes(), 0.1);
    assertEquals(List.of(), check(order, plan));
  }

  /** The planner itself plans on without a break, by a table that asks for none. */
  @Test
  void aPlanWithoutABreakIsRefused(@TempDir Path own) throws IOException {
    String table = Files.readString(Path.of("scoring", "round-costs.csv"));
    String without = table.replaceFirst("\nbreak-from,6,h", "\nbreak-from,24,h");
    assertTrue(!without.equals(table));
    Files.writeString(own.resolve("round-costs.csv"), without);
    Order order = fullDay("Mo 08:00-17:00");
    RoundPlan plan = plan(order, rules(own));
    assertEquals(null, plan.rounds().get(0).rest());
    assertEquals(List.of(MONDAY + "-T1 has no break"), check(order, plan));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "none | has no break",
        "shorter | break is",
        "before its window | has its break at the wrong time",
        "after its window | has its break at the wrong time",
        "at work | drives or works in its break",
        "on the road | drives or works in its break",
        "not counted as time | minutes of driving, setting up, work and waiting"
      })
  void aBreakThatIsNoneIsRefused(String what, String complaint) {
    Order order = fullDay("Mo 08:00-17:00");
    RoundPlan plan = plan(order, rules(null));
    RoundPlan.Round round = plan.rounds().get(0);
    List<String> wrong = check(order, with(plan, spoiled(round, what)));
    assertTrue(wrong.stream().anyMatch(each -> each.contains(complaint)), wrong.toString());
  }

  private static Span spoiled(RoundPlan.Round round, String what) {
    Span rest = round.rest();
    RoundPlan.Stop last = round.stops().get(round.stops().size() - 1);
    return switch (what) {
      case "none" -> null;
      case "shorter" -> new Span(rest.from(), rest.to().minusSeconds(300));
      case "before its window" -> from(round.leaves(), 1800);
      case "after its window" -> from(last.leaves(), 1800);
      case "at work" -> from(rest.to(), 1800);
      case "on the road" -> from(before(round, rest).leaves().plusSeconds(1), 1800);
      case "not counted as time" -> from(rest.from(), 3600);
      default -> throw new IllegalArgumentException(what);
    };
  }

  private static Span from(Instant begin, long seconds) {
    return new Span(begin, begin.plusSeconds(seconds));
  }

  /** The stop that was left last before the break. */
  private static RoundPlan.Stop before(RoundPlan.Round round, Span rest) {
    return round.stops().stream()
        .filter(stop -> !stop.leaves().isAfter(rest.from()))
        .reduce((one, next) -> next)
        .orElseThrow();
  }

  private static RoundPlan with(RoundPlan plan, Span rest) {
    RoundPlan.Round round = plan.rounds().get(0);
    RoundPlan.Round other =
        new RoundPlan.Round(
            round.technician(),
            round.name(),
            round.day(),
            round.zone(),
            round.home(),
            round.end(),
            round.working(),
            round.leaves(),
            round.returns(),
            rest,
            round.stops(),
            round.back(),
            round.km(),
            round.drivingMinutes(),
            round.waitingMinutes(),
            round.cost());
    return new RoundPlan(
        plan.from(), plan.to(), List.of(other), List.of(), plan.notes(), plan.cost(), "USD");
  }
}
