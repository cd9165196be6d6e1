package coldround.rounds;

import coldround.rounds.ByHand.Breach;
import coldround.rounds.RoundPlan.Round;
import coldround.rounds.RoundPlan.Stop;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Rest;
import coldround.rounds.search.Vehicle;
import coldround.rounds.search.Window;
import coldround.rounds.search.engine.GivenOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Says which rule of a plan a move by hand would break, in the words of who moves it. */
final class RuleCheck {

  private final Draft draft;
  private final Stop stop;
  private final ByHand.Move move;

  RuleCheck(Draft draft, Stop stop, ByHand.Move move) {
    this.draft = draft;
    this.stop = stop;
    this.move = move;
  }

  /**
   * Rules that the stop breaks on that day with that technician, whatever the order.
   *
   * @param vehicle the technician's day, below 0 when there is none
   * @param index of the stop in the draft, null when its site cannot be planned
   */
  List<Breach> ofStop(int vehicle, Integer index) {
    List<Breach> breaches = new ArrayList<>();
    if (index == null) {
      breaches.add(no("site", String.join(" ", draft.complaints())));
      return breaches;
    }
    Call call = draft.call(index);
    if (call.kept() != null) {
      breaches.add(no("kept", "The stop is " + call.kept().why() + " and stays where it is."));
    }
    if (vehicle < 0) {
      breaches.add(
          no(
              "working-hours",
              move.technician() + " does not work on " + move.day() + ", or no longer that day."));
    } else {
      skills(call, draft.day(vehicle).worker(), breaches);
    }
    days(call, breaches);
    return breaches;
  }

  private static void skills(Call call, Worker worker, List<Breach> breaches) {
    Set<String> lacking = new TreeSet<>(call.skills());
    lacking.removeAll(worker.skills());
    if (!lacking.isEmpty()) {
      breaches.add(
          no("competences", worker.name() + " does not have " + Shifts.told(lacking) + "."));
    }
  }

  private void days(Call call, List<Breach> breaches) {
    if (call.last() != null && move.day().isAfter(call.last())) {
      breaches.add(late(call));
    } else if (move.day().isBefore(call.first())) {
      breaches.add(no("too-early", "It may not be done before " + call.first() + "."));
    } else if (!draft.opens(call, move.day())) {
      breaches.add(no("visiting-hours", closed(call) + " on " + move.day() + "."));
    }
  }

  private static Breach late(Call call) {
    return call.emergency()
        ? no("emergency", "It is an emergency of " + call.last() + ".")
        : no("law", "The law asks for it by " + call.last() + ".");
  }

  private static Breach no(String code, String message) {
    return new Breach(code, message, true);
  }

  private String closed(Call call) {
    Premises site = draft.premises(call);
    return "%s is not open for %d minutes (%s)".formatted(named(site), call.minutes(), hours(site));
  }

  private static String named(Premises site) {
    return site.name().isEmpty() ? site.code() : site.name();
  }

  private static String hours(Premises site) {
    return site.hours().isBlank() ? "at any time" : site.hours();
  }

  /** What an order breaks, null when it holds: told at the first stop that cannot be kept. */
  Breach ofOrder(GivenOrder judge, int vehicle, List<Integer> order) {
    if (judge.holds(vehicle, order)) {
      return null;
    }
    Worker worker = draft.day(vehicle).worker();
    for (int count = 1; count <= order.size(); count++) {
      List<Integer> first = order.subList(0, count);
      if (!judge.holds(vehicle, first)) {
        return cause(vehicle, first, worker);
      }
    }
    throw new IllegalStateException("an order holds in part but not in full");
  }

  private Breach cause(int vehicle, List<Integer> order, Worker worker) {
    int last = order.get(order.size() - 1);
    Call call = draft.call(last);
    Premises site = draft.premises(call);
    if (new GivenOrder(anyTime(last)).holds(vehicle, order)) {
      String what =
          call.kept() != null
              ? "The time for which " + named(site) + " is " + call.kept().why()
              : "The visiting hours of " + named(site) + " (" + hours(site) + ")";
      String message = what + " could not be kept: it would be stop " + order.size() + ".";
      return no(call.kept() != null ? "kept" : "visiting-hours", message);
    }
    String who = worker.name() + " on " + draft.day(vehicle).day();
    return new GivenOrder(withoutBreak(vehicle)).holds(vehicle, order)
        ? no("break", "There would be no room for the break of " + who + ".")
        : no(
            "working-hours",
            "The day of "
                + who
                + " would end after the working hours ("
                + worker.hours()
                + ") and the overtime that may be asked for.");
  }

  private Problem anyTime(int stop) {
    Problem problem = draft.problem();
    List<coldround.rounds.search.Stop> stops = new ArrayList<>(problem.stops());
    stops.set(stop, stops.get(stop).within(Window.ALWAYS));
    return new Problem(
        problem.vehicles(), stops, problem.distance(), problem.minutes(), problem.assignment());
  }

  private Problem withoutBreak(int vehicle) {
    Problem problem = draft.problem();
    List<Vehicle> vehicles = new ArrayList<>(problem.vehicles());
    vehicles.set(vehicle, vehicles.get(vehicle).withRest(Rest.NONE));
    return new Problem(
        vehicles, problem.stops(), problem.distance(), problem.minutes(), problem.assignment());
  }

  /**
   * One technician a site and day is wished, not asked for.
   *
   * @param others rounds that the move does not change
   */
  List<Breach> ofSite(List<Round> others) {
    List<Breach> breaches = new ArrayList<>();
    for (Round round : others) {
      boolean there =
          round.stops().stream().anyMatch(each -> each.premises().code().equals(site()));
      if (round.day().equals(move.day()) && there) {
        String message =
            "%s would be visited by %s as well on %s."
                .formatted(named(stop.premises()), round.name(), round.day());
        breaches.add(new Breach("several-technicians", message, false));
      }
    }
    return breaches;
  }

  private String site() {
    return stop.premises().code();
  }
}
