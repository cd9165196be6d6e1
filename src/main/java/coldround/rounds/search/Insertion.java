package coldround.rounds.search;

import java.util.List;
import java.util.OptionalInt;

/**
 * What came of putting one more stop into a plan.
 *
 * @param plan the plan afterwards; the one before if there was no way
 * @param vehicle the vehicle that serves the stop, empty if there was no way
 * @param moved stops that changed their place or are left out to make room, at most one
 */
public record Insertion(Plan plan, OptionalInt vehicle, List<Integer> moved) {

  public Insertion {
    moved = List.copyOf(moved);
  }
}
