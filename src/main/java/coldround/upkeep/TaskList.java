package coldround.upkeep;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Set;

/** The open upkeep tasks of the fleet in the order in which they fall due. */
public interface TaskList {

  /**
   * What is looked for; an empty field or null looks for everything.
   *
   * @param from first due date, null for any
   * @param to last due date, null for any
   * @param unit id or tag
   */
  record Search(LocalDate from, LocalDate to, String customer, String site, String unit) {
    public Search {
      customer = customer == null ? "" : customer;
      site = site == null ? "" : site;
      unit = unit == null ? "" : unit;
    }
  }

  /** Names a task without its reasons. */
  record Entry(String taskId, String unitId, LocalDate due) {}

  /**
   * Puts these tasks in the place of all that the units had.
   *
   * @param counted tasks whose change calendars count already
   */
  void replace(Collection<String> unitIds, Collection<Task> tasks, Set<String> counted);

  /**
   * @param after task that the entries follow, null for the beginning
   * @return at most {@code limit} entries by due date
   */
  List<Entry> entries(Search search, Entry after, int limit);
}
