package coldround.rounds.edge;

import coldround.quantity.MeasureSystem;
import coldround.rounds.ByHand;
import java.util.List;

/**
 * What a move comes to.
 *
 * @param moved false when it was only asked for, or a rule forbids it
 * @param possible false when a rule forbids it
 * @param more what it costs on top; below 0 for what it saves
 * @param moreTravel driving on top
 * @param rounds as they are afterwards, those that change; an emptied one is gone
 */
record MoveView(
    boolean moved,
    boolean possible,
    List<ByHand.Breach> breaches,
    RoundView.Cost more,
    RoundView.Travelled moreTravel,
    List<DayOf> rounds) {

  /** A round and its day. */
  record DayOf(java.time.LocalDate day, RoundView.Round round) {}

  static MoveView of(ByHand.Outcome outcome, boolean taken, String currency, MeasureSystem system) {
    return new MoveView(
        taken,
        outcome.possible(),
        outcome.breaches(),
        RoundView.cost(outcome.more(), currency),
        new RoundView.Travelled(
            RoundView.km(outcome.possible() ? outcome.moreKm() : 0, system),
            RoundView.number(outcome.possible() ? outcome.moreMinutes() : 0, 1)),
        outcome.after().stream()
            .map(round -> new DayOf(round.day(), RoundView.round(round, currency, system)))
            .toList());
  }
}
