package coldround.pages;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.rounds.Bill;
import coldround.rounds.ByHand.Breach;
import coldround.rounds.ByHand.Move;
import coldround.rounds.ByHand.Outcome;
import coldround.rounds.Job;
import coldround.rounds.RoundPlan;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A stop that somebody wants elsewhere, with what that would cost, ready to be shown.
 *
 * @param site whose stop it is
 * @param from where it stands now
 * @param more the costs on top, with their names, the sum first
 * @param nothing true when it stands there already
 */
public record MoveSheet(
    String plan,
    int seen,
    Move move,
    String site,
    String from,
    boolean possible,
    boolean nothing,
    List<Breach> breaches,
    List<Amount> more,
    List<After> after,
    boolean changedMeanwhile) {

  /** A cost and its name. */
  public record Amount(String name, String value) {}

  /** A round as it would be. */
  public record After(String who, String day, String times, List<Line> stops) {}

  /**
   * A stop of it.
   *
   * @param units tags of the units that are worked on
   */
  public record Line(String clock, String site, String units, boolean moved) {}

  /**
   * @param revision of the plan that the outcome is of
   * @param changedMeanwhile true when the reader had seen an earlier one
   */
  public static MoveSheet of(
      String id,
      int revision,
      Move move,
      Outcome outcome,
      MeasureSystem system,
      boolean changedMeanwhile) {
    RoundPlan.Round from =
        outcome.before().stream()
            .filter(round -> position(round, move) > 0)
            .findFirst()
            .orElseThrow();
    RoundPlan.Stop stop = from.stops().get(position(from, move) - 1);
    return new MoveSheet(
        id,
        revision,
        move,
        RoundWords.site(stop.premises()),
        "stop %d of %s on %s"
            .formatted(position(from, move), from.name(), RoundWords.day(from.day())),
        outcome.possible(),
        outcome.possible() && orders(outcome.before()).equals(orders(outcome.after())),
        outcome.breaches(),
        outcome.possible() ? more(outcome, system) : List.of(),
        outcome.after().stream().map(round -> after(round, move)).toList(),
        changedMeanwhile);
  }

  private static int position(RoundPlan.Round round, Move move) {
    for (int i = 0; i < round.stops().size(); i++) {
      if (round.stops().get(i).call().id().equals(move.call())) {
        return i + 1;
      }
    }
    return 0;
  }

  /** The only stop of a day may go to somebody who has none: then whose it is differs alone. */
  private static Map<String, List<String>> orders(List<RoundPlan.Round> rounds) {
    return rounds.stream()
        .filter(round -> !round.stops().isEmpty())
        .collect(
            Collectors.toMap(
                RoundPlan.Round::key,
                round -> round.stops().stream().map(stop -> stop.call().id()).toList()));
  }

  private static List<Amount> more(Outcome outcome, MeasureSystem system) {
    Measure currency = Measure.of(outcome.plan().currency());
    Bill more = outcome.more();
    List<Amount> amounts = new ArrayList<>();
    amounts.add(new Amount("In all", signed(more.total(), currency)));
    amounts.add(new Amount("Labour", signed(more.labour(), currency)));
    amounts.add(new Amount("Overtime", signed(more.overtime(), currency)));
    amounts.add(new Amount("Vans", signed(more.driving(), currency)));
    amounts.add(new Amount("Waiting", signed(more.deferring(), currency)));
    Quantity km = new Quantity(outcome.moreKm(), Measure.KILOMETRE);
    String way = Figures.quantity(km, system);
    amounts.add(new Amount("Driving", way + ", " + Math.round(outcome.moreMinutes()) + " min"));
    return amounts;
  }

  private static String signed(double amount, Measure currency) {
    String text = new Quantity(amount, currency).toString();
    return amount > 0 ? "+" + text : text;
  }

  private static After after(RoundPlan.Round round, Move move) {
    return new After(
        round.name(),
        RoundWords.day(round.day()),
        RoundWords.clock(round.leaves(), round.zone())
            + " to "
            + RoundWords.clock(round.returns(), round.zone()),
        round.stops().stream()
            .map(
                stop ->
                    new Line(
                        RoundWords.clock(stop.begins(), round.zone()),
                        RoundWords.site(stop.premises()),
                        stop.call().jobs().stream()
                            .map(Job::tag)
                            .distinct()
                            .collect(Collectors.joining(", ")),
                        stop.call().id().equals(move.call())))
            .toList());
  }
}
