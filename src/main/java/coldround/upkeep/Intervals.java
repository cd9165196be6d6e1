package coldround.upkeep;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The intervals of scoring/intervals.csv: a row that names the kind goes before one for all. */
final class Intervals {

  private static final String FILE = "intervals.csv";

  private final Map<String, List<Interval>> byTask = new HashMap<>();

  private Intervals() {}

  static Intervals load(RuleTables tables, TaskCatalogue catalogue, Set<String> kinds) {
    Intervals intervals = new Intervals();
    Set<String> taken = new HashSet<>();
    tables
        .read(FILE, "interval", row -> interval(row, catalogue, kinds, taken))
        .forEach(
            row -> intervals.byTask.computeIfAbsent(row.task(), t -> new ArrayList<>()).add(row));
    if (!intervals.byTask.containsKey(TaskCode.CONDENSER)) {
      tables.problem(FILE, 0, "task", "no interval for " + TaskCode.CONDENSER);
    }
    return intervals;
  }

  private static Interval interval(
      TableRow row, TaskCatalogue catalogue, Set<String> kinds, Set<String> taken) {
    String task = row.required("task");
    if (!catalogue.has(task)) {
      throw new IllegalArgumentException("'" + task + "' is no task of " + TaskCatalogue.FILE);
    }
    KindSet set = KindSet.of(row, "kinds", kinds);
    for (String kind : set.kinds()) {
      if (!taken.add(task + " " + kind)) {
        throw new IllegalArgumentException(
            "another row has an interval of " + task + " for " + kind);
      }
    }
    return new Interval(
        task,
        set,
        row.codes("harsh_in"),
        row.whole("usual"),
        row.whole("harsh"),
        row.whole("longest"),
        row.whole("longest_harsh"),
        row.source());
  }

  Optional<Interval> find(String task, String kind) {
    Interval every = null;
    for (Interval row : byTask.getOrDefault(task, List.of())) {
      if (row.kinds().named(kind)) {
        return Optional.of(row);
      }
      if (row.kinds().every()) {
        every = row;
      }
    }
    return Optional.ofNullable(every);
  }
}
