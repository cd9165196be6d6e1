package coldround.scoring;

import java.time.LocalDate;
import java.util.Collection;

/** The list of all units in use by their last condition, kept up to date as the fleet changes. */
public interface Ranking {

  /**
   * One unit's place in it.
   *
   * @param nextDue when the task to do first falls due, null if there is none
   * @param nextTask which one, empty if none
   */
  record Place(String unitId, Condition condition, LocalDate nextDue, String nextTask) {}

  void put(Collection<Place> places);

  /** Takes units out of it: retired ones. */
  void remove(Collection<String> unitIds);
}
