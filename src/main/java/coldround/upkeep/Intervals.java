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
import java.util.concurrent.ConcurrentHashMap;

/** The intervals of scoring/intervals.csv: a row that names the kind goes before one for all. */
final class Intervals {

  private static final String FILE = "intervals.csv";

  private final Map<String, List<Interval>> byTask = new HashMap<>();

  // by task, for each kind that was asked for
  private final Map<String, Map<String, Interval>> byKind = new ConcurrentHashMap<>();

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
    Map<String, Interval> known = byKind.get(kind);
    return Optional.ofNullable(
        (known != null ? known : byKind.computeIfAbsent(kind, this::of)).get(task));
  }

  private Map<String, Interval> of(String kind) {
    Map<String, Interval> intervals = new HashMap<>();
    byTask.forEach(
        (task, rows) -> {
          for (Interval row : rows) {
            if (row.kinds().named(kind)) {
              intervals.put(task, row);
            } else if (row.kinds().every()) {
              intervals.putIfAbsent(task, row);
            }
          }
        });
    return intervals;
  }
}
