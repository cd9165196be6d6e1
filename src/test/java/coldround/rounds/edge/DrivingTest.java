package coldround.rounds.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.DemoLists;
import coldround.DemoServed;
import coldround.fleet.FleetWiping;
import coldround.rounds.Call;
import coldround.rounds.Draft;
import coldround.rounds.Figure;
import coldround.rounds.OpeningHours;
import coldround.rounds.Order;
import coldround.rounds.Place;
import coldround.rounds.Premises;
import coldround.rounds.RoundPlan;
import coldround.rounds.RoundPlanChecker;
import coldround.rounds.RoundRules;
import coldround.rounds.Span;
import coldround.rounds.Worker;
import coldround.rounds.search.Limit;
import coldround.rounds.search.Plan;
import coldround.rounds.search.SearchOptions;
import coldround.rounds.search.engine.RuinAndRecreate;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * A week of the demo fleet, checked by an independent reader of the lists, against what a
 * dispatcher does without a planner: each technician in turn goes to the nearest of the ten calls
 * that have been due longest.
 */
@QuarkusTest
@TestProfile(DemoServed.class)
class DrivingTest {

  private static final int LOOKED_AT = 10;
  private static final int WEEKS = 6;
  private static final LocalDate MONDAY =
      LocalDate.now().with(TemporalAdjusters.next(DayOfWeek.MONDAY));

  @Inject FleetOrder orders;
  @Inject RoundRules rules;
  @Inject FleetWiping wiping;

  private final Map<String, double[]> matrix = new HashMap<>();

  private void readMatrix() throws IOException {
    for (String line : Files.readAllLines(Path.of("demo-data", "travel-times.csv"))) {
      String[] cells = line.split(",");
      if (!cells[0].equals("from")) {
        matrix.put(
            cells[0] + ">" + cells[1],
            new double[] {Double.parseDouble(cells[2]), Double.parseDouble(cells[3])});
      }
    }
  }

  private double way(Place from, Place to, int column) {
    return from.code().equals(to.code()) ? 0 : matrix.get(from.code() + ">" + to.code())[column];
  }

  @Test
  void aPlannedWeekHoldsAndDrivesAFifthLessThanTheNearestOfTheLongestDue() throws IOException {
    DemoLists.afresh(wiping);
    readMatrix();
    Instant now = MONDAY.minusDays(1).atStartOfDay().toInstant(ZoneOffset.UTC);
    RoundRequest asked =
        new RoundRequest(MONDAY, MONDAY.plusDays(4), List.of(), List.of(), 10, 1, Map.of());
    Order order = orders.gather(asked, now, List.of());
    Draft draft = Draft.of(order, rules, orders.prices(), orders.travel());
    SearchOptions options = SearchOptions.of(1, Limit.iterations(20_000));
    Plan searched = new RuinAndRecreate().search(draft.problem(), options);
    RoundPlan plan = draft.answer(draft.together(searched));
    List<String> wrong = RoundPlanChecker.check(order, plan, (from, to) -> way(from, to, 0));
    assertEquals(List.of(), wrong);
    List<Call> calls =
        plan.rounds().stream()
            .flatMap(round -> round.stops().stream())
            .map(RoundPlan.Stop::call)
            .toList();
    Baseline baseline = new Baseline(order, calls);
    baseline.run();
    System.out.printf(
        "left out: %d of %d calls%n", plan.leftOut().size(), plan.leftOut().size() + calls.size());
    System.out.printf(
        "demo fleet, %d calls: planned %.0f km in %d rounds, nearest of the longest due %.0f km in"
            + " %d rounds: %.0f %% less%n",
        calls.size(),
        plan.km(),
        plan.rounds().size(),
        baseline.km,
        baseline.rounds,
        100 * (1 - plan.km() / baseline.km));
    assertEquals(List.of(), baseline.open, "the dispatcher must have done the same calls");
    assertTrue(plan.km() <= 0.8 * baseline.km, plan.km() + " against " + baseline.km);
  }

  /** A dispatcher without a planner. Breaks are left out, which favours him. */
  private final class Baseline {
    private final Order order;
    private final List<Call> open;
    private final Map<String, Premises> sites = new TreeMap<>();
    private double km;
    private int rounds;

    Baseline(Order order, List<Call> calls) {
      this.order = order;
      open = new ArrayList<>(calls);
      open.sort(Comparator.comparing(Call::due).thenComparing(Call::id));
      order.premises().forEach(site -> sites.put(site.code(), site));
    }

    void run() {
      for (int day = 0; day < 7 * WEEKS && !open.isEmpty(); day++) {
        day(MONDAY.plusDays(day));
      }
    }

    private void day(LocalDate day) {
      List<Van> vans = new ArrayList<>();
      for (Worker worker : order.workers()) {
        List<Span> hours = OpeningHours.parse(worker.hours()).on(day, worker.zone());
        hours.stream().findFirst().ifPresent(span -> vans.add(new Van(worker, span)));
      }
      boolean moved = true;
      while (moved) {
        moved = false;
        for (Van van : vans) {
          moved |= step(van, day);
        }
      }
      for (Van van : vans) {
        if (van.out) {
          km += way(van.place, van.worker.home(), 1);
          rounds++;
        }
      }
    }

    private boolean step(Van van, LocalDate day) {
      List<Call> looked = open.stream().filter(call -> able(van, call)).limit(LOOKED_AT).toList();
      Optional<Call> nearest =
          looked.stream()
              .filter(call -> begin(van, call, day) != null)
              .min(Comparator.comparingDouble(call -> way(van.place, place(call), 0)));
      nearest.ifPresent(call -> serve(van, call, day));
      return nearest.isPresent();
    }

    private boolean able(Van van, Call call) {
      Set<String> skills = call.skills();
      return van.worker.skills().containsAll(skills);
    }

    private Place place(Call call) {
      return sites.get(call.site()).place();
    }

    private Instant begin(Van van, Call call, LocalDate day) {
      Premises site = sites.get(call.site());
      double setUp = van.place.code().equals(site.code()) ? 0 : rules.minutes(Figure.SET_UP);
      Instant there = later(van.time, way(van.place, site.place(), 0) + setUp);
      OpeningHours hours =
          site.hours().isBlank() ? OpeningHours.always() : OpeningHours.parse(site.hours());
      for (Span span : hours.on(day, site.zone())) {
        Instant begin = there.isBefore(span.from()) ? span.from() : there;
        Instant done = later(begin, call.minutes());
        Instant home = later(done, way(site.place(), van.worker.home(), 0));
        if (!done.isAfter(span.to())
            && !home.isAfter(later(van.hours.to(), rules.minutes(Figure.OVERTIME_MOST)))) {
          return begin;
        }
      }
      return null;
    }

    private void serve(Van van, Call call, LocalDate day) {
      van.time = later(begin(van, call, day), call.minutes());
      km += way(van.place, place(call), 1);
      van.place = place(call);
      van.out = true;
      open.remove(call);
    }
  }

  private static Instant later(Instant instant, double minutes) {
    return instant.plusMillis(Math.round(minutes * 60_000));
  }

  /** One technician on one day. */
  private static final class Van {
    private final Worker worker;
    private final Span hours;
    private Place place;
    private Instant time;
    private boolean out;

    Van(Worker worker, Span hours) {
      this.worker = worker;
      this.hours = hours;
      place = worker.home();
      time = hours.from();
    }
  }
}
