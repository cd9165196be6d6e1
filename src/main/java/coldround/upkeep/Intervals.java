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

  /** Those of one kind of unit: all by task, and those of tasks that are done by habit. */
  private record OfKind(Map<String, Interval> all, List<Interval> usual) {}

  private final Map<String, OfKind> byKind = new ConcurrentHashMap<>();
  private final TaskCatalogue catalogue;

  private Intervals(TaskCatalogue catalogue) {
    this.catalogue = catalogue;
  }

  static Intervals load(RuleTables tables, TaskCatalogue catalogue, Set<String> kinds) {
    Intervals intervals = new Intervals(catalogue);
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
    return Optional.ofNullable(of(kind).all.get(task));
  }

  /** Of every task that units of the kind have, but the cleaning of condensers. */
  List<Interval> usual(String kind) {
    return of(kind).usual;
  }

  private OfKind of(String kind) {
    OfKind known = byKind.get(kind);
    return known != null ? known : byKind.computeIfAbsent(kind, this::ofKind);
  }

  private OfKind ofKind(String kind) {
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
    List<Interval> usual = new ArrayList<>();
    for (TaskKind task : catalogue.all()) {
      Interval interval = intervals.get(task.code());
      boolean cleaning = task.code().equals(TaskCode.CONDENSER);
      if (interval != null && !cleaning && task.kinds().contains(kind)) {
        usual.add(interval);
      }
    }
    return new OfKind(intervals, usual);
  }
}
