package coldround.rounds;

import coldround.rounds.RoundPlan.Round;
import coldround.rounds.RoundPlan.Stop;
import coldround.rounds.search.Plan;
import coldround.rounds.search.engine.GivenOrder;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/** Moves one stop of a plan because somebody wants it elsewhere: what that costs and breaks. */
public final class ByHand {

  /** Money below which two orders cost the same. */
  private static final double HAIR = 1e-9;

  /** The place in the order where it costs least. */
  public static final int CHEAPEST = 0;

  /**
   * What is wanted.
   *
   * @param call id of the stop within its plan
   * @param technician who is to take it
   * @param position in the order of that day, from 1; {@link #CHEAPEST} for the best of all
   */
  public record Move(String call, String technician, LocalDate day, int position) {}

  /**
   * A rule that would not be kept.
   *
   * @param forbids false for one that may be broken if somebody answers for it
   */
  public record Breach(String code, String message, boolean forbids) {

    /** The same where every place in the order was tried. */
    Breach wherever() {
      return new Breach(code, message + " No other place in the order would do.", forbids);
    }
  }

  /**
   * What would come of it.
   *
   * @param plan afterwards; the one before when a rule forbids it
   * @param before rounds that it changes, as they are
   * @param after the same rounds, and new ones, as they would be; none when a rule forbids it
   * @param more what it costs on top; less than 0 for what it saves
   */
  public record Outcome(
      RoundPlan plan, List<Round> before, List<Round> after, List<Breach> breaches, Bill more) {

    public Outcome {
      before = List.copyOf(before);
      after = List.copyOf(after);
      breaches = List.copyOf(breaches);
    }

    public boolean possible() {
      return breaches.stream().noneMatch(Breach::forbids);
    }

    /** Kilometres on top. */
    public double moreKm() {
      return sum(after, Round::km) - sum(before, Round::km);
    }

    /** Minutes of driving on top. */
    public double moreMinutes() {
      return sum(after, Round::drivingMinutes) - sum(before, Round::drivingMinutes);
    }

    private static double sum(
        List<Round> rounds, java.util.function.ToDoubleFunction<Round> figure) {
      return rounds.stream().mapToDouble(figure).sum();
    }
  }

  private final RoundPlan plan;
  private final Move move;
  private final Draft draft;
  private final Round from;
  private final Stop stop;
  private final Map<String, Integer> stops = new HashMap<>();

  private ByHand(RoundPlan plan, Move move, Draft draft) {
    this.plan = plan;
    this.move = move;
    this.draft = draft;
    from = round(plan, move.call());
    stop =
        from.stops().stream()
            .filter(each -> each.call().id().equals(move.call()))
            .findFirst()
            .orElseThrow();
    for (int s = 0; s < draft.problem().stops().size(); s++) {
      stops.put(draft.call(s).id(), s);
    }
  }

  /** The round with that stop; null when there is none. */
  public static Round round(RoundPlan plan, String call) {
    return plan.rounds().stream()
        .filter(round -> round.stops().stream().anyMatch(stop -> stop.call().id().equals(call)))
        .findFirst()
        .orElse(null);
  }

  /**
   * The calls of the one or two rounds that a move concerns, those kept that have begun or are
   * booked.
   *
   * @param move of a stop that is there
   */
  public static List<Call> calls(RoundPlan plan, Move move, Instant now, Set<String> booked) {
    Round from = round(plan, move.call());
    List<Round> concerned =
        plan.rounds().stream().filter(round -> round.equals(from) || isTo(round, move)).toList();
    Map<String, Call> kept = new HashMap<>();
    Revision.kept(with(plan, concerned, plan.cost()), now, booked)
        .forEach(call -> kept.put(call.id(), call));
    return concerned.stream()
        .flatMap(round -> round.stops().stream())
        .map(each -> kept.getOrDefault(each.call().id(), each.call()))
        .toList();
  }

  private static boolean isTo(Round round, Move move) {
    return round.technician().equals(move.technician()) && round.day().equals(move.day());
  }

  private static RoundPlan with(RoundPlan plan, List<Round> rounds, Bill cost) {
    List<Note> notes = Meeting.afterMove(plan.notes(), rounds);
    return new RoundPlan(
        plan.from(), plan.to(), rounds, plan.leftOut(), notes, cost, plan.currency());
  }

  /**
   * What would come of a move.
   *
   * @param draft of the days of the plan with the {@link #calls} of the move
   */
  public static Outcome move(RoundPlan plan, Move move, Draft draft) {
    return new ByHand(plan, move, draft).outcome();
  }

  private Outcome outcome() {
    RuleCheck check = new RuleCheck(draft, stop, move);
    int to = vehicle(move.technician(), move.day());
    List<Breach> breaches = check.ofStop(to, stops.get(move.call()));
    if (!breaches.isEmpty()) {
      return refused(breaches);
    }
    GivenOrder judge = new GivenOrder(draft.problem());
    Map<Integer, List<Integer>> orders = orders(judge, to);
    for (Map.Entry<Integer, List<Integer>> order : orders.entrySet()) {
      Breach broken = check.ofOrder(judge, order.getKey(), order.getValue());
      if (broken != null) {
        boolean tried = order.getKey() == to && move.position() == CHEAPEST;
        return refused(List.of(tried ? broken.wherever() : broken));
      }
    }
    return done(judge.plan(orders), check);
  }

  private int vehicle(String technician, LocalDate day) {
    for (int v = 0; v < draft.problem().vehicles().size(); v++) {
      if (draft.day(v).worker().code().equals(technician) && draft.day(v).day().equals(day)) {
        return v;
      }
    }
    return -1;
  }

  private Outcome refused(List<Breach> breaches) {
    return new Outcome(plan, List.of(from), List.of(), breaches, Bill.NOTHING);
  }

  /** The orders of the rounds that change, an emptied one left out. */
  private Map<Integer, List<Integer>> orders(GivenOrder judge, int to) {
    Map<Integer, List<Integer>> orders = new LinkedHashMap<>();
    int moved = stops.get(move.call());
    List<Integer> rest = order(from);
    rest.remove((Integer) moved);
    boolean same = isTo(from, move);
    int source = vehicle(from.technician(), from.day());
    if (!same && !rest.isEmpty()) {
      orders.put(source, rest);
    }
    List<Integer> there = same ? rest : target();
    orders.put(to, placed(judge, to, there, moved));
    return orders;
  }

  private List<Integer> order(Round round) {
    return round.stops().stream()
        .map(each -> stops.get(each.call().id()))
        .filter(Objects::nonNull)
        .collect(Collectors.toCollection(ArrayList::new));
  }

  private List<Integer> target() {
    return plan.rounds().stream()
        .filter(round -> isTo(round, move))
        .findFirst()
        .map(this::order)
        .orElseGet(ArrayList::new);
  }

  private List<Integer> placed(GivenOrder judge, int to, List<Integer> there, int moved) {
    if (move.position() != CHEAPEST) {
      return at(there, Math.min(move.position() - 1, there.size()), moved);
    }
    // where it stands, unless another place is better
    List<Integer> best = at(there, isTo(from, move) ? order(from).indexOf(moved) : 0, moved);
    double least = judge.cost(to, best);
    for (int position = 0; position <= there.size(); position++) {
      List<Integer> order = at(there, position, moved);
      double cost = judge.cost(to, order);
      if (cost < least - HAIR) {
        least = cost;
        best = order;
      }
    }
    return best;
  }

  private static List<Integer> at(List<Integer> there, int position, int moved) {
    List<Integer> order = new ArrayList<>(there);
    order.add(position, moved);
    return order;
  }

  private Outcome done(Plan searched, RuleCheck check) {
    List<Round> after = draft.answer(searched).rounds();
    List<Round> before =
        plan.rounds().stream().filter(round -> round.equals(from) || isTo(round, move)).toList();
    List<Round> rounds = new ArrayList<>(plan.rounds());
    rounds.removeAll(before);
    List<Breach> breaches = check.ofSite(rounds);
    rounds.addAll(after);
    rounds.sort(Answer.BY_DAY);
    Bill more = bill(after).minus(bill(before));
    RoundPlan moved = with(plan, rounds, plan.cost().plus(more));
    return new Outcome(moved, before, after, breaches, more);
  }

  private static Bill bill(List<Round> rounds) {
    return rounds.stream().map(Round::cost).reduce(Bill.NOTHING, Bill::plus);
  }
}
