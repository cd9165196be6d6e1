package coldround.upkeep;

import coldround.reason.Source;
import java.util.List;

/**
 * An event on record that asks for a task: a row of scoring/task-triggers.csv.
 *
 * @param key name of the row, the code of the reason
 * @param when what kind of event
 * @param what part, failure mode, work or code of a reason
 * @param grade of the part; empty for all but findings
 * @param days from the event to the due date
 * @param clearedBy work on the same day or later after which the event is settled
 */
record Trigger(
    String key,
    When when,
    String what,
    String grade,
    String task,
    int days,
    List<String> clearedBy,
    Source source) {

  /** Where the event stands in the record. */
  enum When {
    FINDING,
    FAULT,
    WORK,
    /** A finding that the assessment made from readings, by the code of its reason. */
    SIGN
  }

  /**
   * @throws IllegalArgumentException when a finding has no grade or the days run backwards
   */
  Trigger {
    if ((when == When.FINDING) == grade.isEmpty()) {
      throw new IllegalArgumentException("a finding needs a grade, other events have none");
    }
    if (days < 0) {
      throw new IllegalArgumentException("days must not be below 0");
    }
  }
}
