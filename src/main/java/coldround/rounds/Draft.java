package coldround.rounds;

import coldround.quantity.Measure;
import coldround.rounds.search.Plan;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Stop;
import coldround.rounds.search.Vehicle;
import coldround.rounds.search.Window;
import coldround.rounds.search.engine.Together;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * An order made ready for the search: a vehicle is a technician's day, a stop is a call. What
 * cannot be planned is named and the rest goes on.
 */
public final class Draft {

  private final Order order;
  private final RoundRules rules;
  private final List<Note> notes = new ArrayList<>();
  private final List<RoundPlan.Missed> missed = new ArrayList<>();
  private final List<Call> calls;
  private final List<Shifts.Day> days;
  private final SiteBook sites;
  private final Network network;
  private final Clockwork clockwork;
  private final Value value;
  private final Told told;
  private final Prices prices;
  private final Problem problem;
  private Together together;

  private Draft(Order order, RoundRules rules, Prices prices, Travel travel) {
    this.order = order;
    this.rules = rules;
    this.prices = prices;
    sites = new SiteBook(order, travel, rules.km(Figure.FAR_MOST));
    network = new Network(travel, rules.minutes(Figure.SET_UP));
    clockwork = new Clockwork(order.from().minusDays(1).atStartOfDay().toInstant(ZoneOffset.UTC));
    LocalDate nextChance = order.to().plusDays(rules.days(Figure.NEXT_CHANCE));
    value = new Value(rules, prices, order.from(), nextChance, this::way);
    told = new Told(rules, prices, value);
    calls = new TakenCalls(order, rules, sites, told, notes, missed).of(nextChance);
    Crew crew =
        new Crew(order, network, travel, new Shifts(rules, prices, clockwork, notes), notes);
    List<Vehicle> vehicles = crew.vehicles();
    days = crew.days();
    List<Stop> stops = new ArrayList<>();
    calls.forEach(call -> network.add(sites.get(call.site()).place()));
    network.measure();
    calls.forEach(call -> stops.add(stop(call)));
    if (!calls.isEmpty()) {
      network.tell(notes);
    }
    problem =
        new Problem(
            vehicles,
            stops,
            network.distance(),
            network.minutes(),
            (stop, vehicle) -> value.waitingUntil(calls.get(stop), days.get(vehicle).day()));
  }

  public static Draft of(Order order, RoundRules rules, Prices prices, Travel travel) {
    return new Draft(order, rules, prices, travel);
  }

  /** What the search is given. */
  public Problem problem() {
    return problem;
  }

  /** A plan of the search as people read it. */
  public RoundPlan answer(Plan plan) {
    return new Answer(this, plan).write();
  }

  /** The plan with one technician a site and day, where that costs little. */
  public Plan together(Plan plan) {
    return gathering().of(plan);
  }

  /** Made when first asked for: it takes the problem in once more. */
  Together gathering() {
    if (together == null) {
      List<LocalDate> dates = days.stream().map(Shifts.Day::day).toList();
      together = new Together(problem, dates, rules.amount(Figure.APART));
    }
    return together;
  }

  /** What could not be planned as it is, each as a sentence. */
  public List<String> complaints() {
    return notes.stream().map(note -> note.subject() + ": " + note.message()).toList();
  }

  /** There and back for the nearest of those who can do it. */
  private double way(Call call) {
    Place site = sites.get(call.site()).place();
    return order.workers().stream()
        .filter(worker -> worker.skills().containsAll(call.skills()))
        .filter(worker -> network.has(worker.home()) && network.has(worker.end()))
        .mapToDouble(worker -> cost(worker.home(), site) + cost(site, worker.end()))
        .filter(Double::isFinite)
        .min()
        .orElse(prices.trip());
  }

  private double cost(Place from, Place to) {
    Leg leg = network.leg(from, to);
    return leg.minutes() * prices.labourPerMinute() + leg.km() * prices.perKm();
  }

  private Stop stop(Call call) {
    int place = network.add(sites.get(call.site()).place());
    double price =
        call.mandatory() || call.kept() != null ? Double.POSITIVE_INFINITY : value.leavingOut(call);
    return new Stop(
        call.id(),
        place,
        call.minutes(),
        call.kept() == null ? windows(call) : keptWindow(call.kept()),
        call.skills(),
        0,
        price,
        call.kept() == null ? OptionalInt.empty() : pin(call));
  }

  /** The search lets work begin in a window; it must also end while the site is open. */
  private List<Window> windows(Call call) {
    List<Window> windows = new ArrayList<>();
    for (LocalDate day : order.days()) {
      boolean allowed =
          !day.isBefore(call.first()) && (call.last() == null || !day.isAfter(call.last()));
      for (Span open : allowed ? sites.open(call.site(), day) : List.<Span>of()) {
        double opens = clockwork.minute(open.from());
        double closes = clockwork.minute(open.to()) - call.minutes();
        if (opens <= closes) {
          windows.add(new Window(opens, closes));
        }
      }
    }
    return windows;
  }

  /** True if the site of the call is open long enough on that day. */
  boolean opens(Call call, LocalDate day) {
    return sites.open(call.site(), day).stream().anyMatch(open -> open.minutes() >= call.minutes());
  }

  private List<Window> keptWindow(Kept kept) {
    double begins = clockwork.minute(kept.begins());
    double within = rules.minutes(Figure.KEEP_WITHIN);
    return List.of(new Window(begins - within, begins + within));
  }

  private OptionalInt pin(Call call) {
    Kept kept = call.kept();
    for (int v = 0; v < days.size(); v++) {
      if (days.get(v).worker().code().equals(kept.technician()) && Crew.holds(days.get(v), kept)) {
        return OptionalInt.of(v);
      }
    }
    String message =
        "does not work when the work at "
            + (premises(call).name().isEmpty() ? call.site() : premises(call).name())
            + " is to begin, which is "
            + kept.why()
            + " for "
            + kept.begins().truncatedTo(ChronoUnit.MINUTES)
            + ": somebody else is planned if anybody can. Mend the days off, or book anew.";
    notes.add(new Note("technician-away", "technician " + kept.technician(), message));
    return OptionalInt.empty();
  }

  Order order() {
    return order;
  }

  Call call(int stop) {
    return calls.get(stop);
  }

  Shifts.Day day(int vehicle) {
    return days.get(vehicle);
  }

  Premises premises(Call call) {
    return sites.get(call.site());
  }

  Network network() {
    return network;
  }

  Clockwork clockwork() {
    return clockwork;
  }

  Told told() {
    return told;
  }

  Value value() {
    return value;
  }

  Measure currency() {
    return prices.currency();
  }

  /** What one visit instead of two is worth. */
  double apart() {
    return rules.amount(Figure.APART);
  }

  List<Note> notes() {
    return notes;
  }

  List<RoundPlan.Missed> missed() {
    return missed;
  }
}
