package coldround.benchmark;

import coldround.benchmark.Benchmarks.Program;
import coldround.fleet.FleetFilter;
import coldround.fleet.UnitHistory;
import coldround.fleet.edge.BenchmarkStore;
import coldround.refrigerant.RefrigerantRules;
import coldround.scoring.Assessment;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.table.RuleTables;
import coldround.upkeep.Upkeep;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * {@code upkeep UNITS}: all tasks of a fleet against the time to score it, in the same run: both
 * from the database, as the service does it, and the computing alone.
 */
final class FleetTasks implements Program {

  private static final int ROUNDS = 5;
  private static final int READINGS_A_UNIT = 20;
  private static final int CHUNK = 500;

  private final Scoring scoring;
  private final Upkeep upkeep;
  private final List<UnitHistory> chunk = new ArrayList<>();
  private long scoringNanos;
  private long taskNanos;
  private long tasks;

  FleetTasks() {
    RuleTables tables = new RuleTables("scoring", null);
    ScoringRules rules = ScoringRules.load(tables);
    RefrigerantRules gases = RefrigerantRules.load(tables);
    upkeep =
        Upkeep.load(
            tables, rules, gases.refrigerants(), gases.leakInspections(), gases.categories());
    tables.check();
    scoring = new Scoring(rules, gases);
  }

  @Override
  public void run(String... arguments) throws Exception {
    if (arguments.length != 1) {
      throw new IllegalArgumentException("upkeep UNITS, such as upkeep 100000");
    }
    int units = Integer.parseInt(arguments[0]);
    System.out.println(
        "| round | read and scored s | with tasks s | times | scored alone s | tasks alone s |"
            + " tasks |");
    System.out.println("|---|---|---|---|---|---|---|");
    double least = Double.MAX_VALUE;
    double leastScore = Double.MAX_VALUE;
    double leastStored = Double.MAX_VALUE;
    double leastStoredTasks = Double.MAX_VALUE;
    try (BenchmarkStore store = new BenchmarkStore(units, units * READINGS_A_UNIT)) {
      for (int round = 1; round <= ROUNDS; round++) {
        long start = System.nanoTime();
        store.read(fleet -> fleet.eachHistory(FleetFilter.ALL, this::score));
        long scored = System.nanoTime();
        round(store);
        long done = System.nanoTime();
        print(round, (scored - start) / 1e9, (done - scored) / 1e9);
        leastStored = Math.min(leastStored, (scored - start) / 1e9);
        leastStoredTasks = Math.min(leastStoredTasks, (done - scored) / 1e9);
        least = Math.min(least, taskNanos / 1e9);
        leastScore = Math.min(leastScore, scoringNanos / 1e9);
      }
    }
    System.out.printf(
        Locale.ROOT,
        "{\"units\": %d, \"tasks\": %d, \"scoreSeconds\": %.3f, \"taskSeconds\": %.3f,"
            + " \"timesScoring\": %.2f, \"scoreAloneSeconds\": %.3f, \"tasksAloneSeconds\":"
            + " %.3f}%n",
        units,
        tasks,
        leastStored,
        leastStoredTasks,
        leastStoredTasks / leastStored,
        leastScore,
        least);
  }

  private void score(UnitHistory history) {
    scoring.assess(history, BenchmarkStore.DAY);
  }

  private void round(BenchmarkStore store) {
    scoringNanos = 0;
    taskNanos = 0;
    tasks = 0;
    store.read(fleet -> fleet.eachHistory(FleetFilter.ALL, this::add));
    flush();
  }

  private void print(int round, double scored, double withTasks) {
    System.out.printf(
        Locale.ROOT,
        "| %d | %.2f | %.2f | %.2f | %.2f | %.2f | %d |%n",
        round,
        scored,
        withTasks,
        withTasks / scored,
        scoringNanos / 1e9,
        taskNanos / 1e9,
        tasks);
  }

  private void add(UnitHistory history) {
    chunk.add(history);
    if (chunk.size() == CHUNK) {
      flush();
    }
  }

  private void flush() {
    long start = System.nanoTime();
    List<Assessment> assessed = new ArrayList<>();
    chunk.forEach(history -> assessed.add(scoring.assess(history, BenchmarkStore.DAY)));
    long scored = System.nanoTime();
    for (Assessment assessment : assessed) {
      tasks += upkeep.tasks(assessment, BenchmarkStore.DAY).size();
    }
    scoringNanos += scored - start;
    taskNanos += System.nanoTime() - scored;
    chunk.clear();
  }
}
