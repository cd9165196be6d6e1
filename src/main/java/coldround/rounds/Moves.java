package coldround.rounds;

import coldround.rounds.ByHand.Move;
import coldround.rounds.ByHand.Outcome;

/** Stops of plans moved by hand. */
public interface Moves {

  /** What a move would cost and which rules it would break; nothing is changed. */
  Outcome tried(String plan, Move move);

  /**
   * Moves the stop, if no rule forbids it.
   *
   * @param revision of the plan that the reader has seen
   */
  Outcome take(String plan, Move move, int revision);
}
