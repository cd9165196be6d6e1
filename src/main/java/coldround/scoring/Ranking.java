package coldround.scoring;

import java.time.LocalDate;
import java.util.Collection;

/** The list of all units in use by their last condition, kept up to date as the fleet changes. */
public interface Ranking {

  /**
   * One unit's place in it.
   *
   * @param nextDue when the first of its upkeep tasks falls due, null if none does
   * @param nextTask which one, empty if none
   */
  record Place(String unitId, Condition condition, LocalDate nextDue, String nextTask) {}

  void put(Collection<Place> places);

  /** Takes units out of it: retired ones. */
  void remove(Collection<String> unitIds);
}
