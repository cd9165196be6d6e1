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
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * {@code upkeep UNITS [postgresql]}: all tasks of a fleet against the time to score it, in the same
 * run: both from the database, as the service does it, and the computing alone.
 */
final class FleetTasks implements Program {

  private static final int ROUNDS = 5;
  private static final int WARM_UP_SECONDS = 30;
  private static final int READINGS_A_UNIT = 20;
  private static final int SAMPLE = 2000;

  private final Scoring scoring;
  private final Upkeep upkeep;
  private final List<UnitHistory> sample = new ArrayList<>();
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
    Arguments asked = Arguments.of("upkeep UNITS [postgresql]", 1, arguments);
    int units = asked.number(0);
    System.out.println(
        "| round | read and scored s | with tasks s | times | scored alone us a unit"
            + " | tasks alone us a unit | tasks |");
    System.out.println("|---|---|---|---|---|---|---|");
    Laps laps = new Laps(4);
    try (Store database = Store.of(asked.store());
        BenchmarkStore store =
            new BenchmarkStore(database.url(Store.DATABASE), units, units * READINGS_A_UNIT)) {
      store.read(fleet -> fleet.eachHistory(FleetFilter.ALL, this::sample));
      // as long for a small fleet as for a big one, until little is left to be compiled
      long warm = System.nanoTime() + TimeUnit.SECONDS.toNanos(WARM_UP_SECONDS);
      do {
        store.read(fleet -> fleet.each(FleetFilter.ALL, this::score, assessment -> {}));
        store.read(fleet -> fleet.each(FleetFilter.ALL, this::count, count -> tasks += count));
      } while (System.nanoTime() < warm);
      for (int round = 1; round <= ROUNDS; round++) {
        tasks = 0;
        laps.begin();
        store.read(fleet -> fleet.each(FleetFilter.ALL, this::score, assessment -> {}));
        laps.lap(0);
        store.read(fleet -> fleet.each(FleetFilter.ALL, this::count, count -> tasks += count));
        laps.lap(1);
        List<Assessment> assessed = sample.stream().map(this::score).toList();
        laps.lap(2);
        assessed.forEach(assessment -> upkeep.tasks(assessment, BenchmarkStore.DAY));
        laps.lap(3);
        System.out.printf(
            Locale.ROOT,
            "| %d | %.2f | %.2f | %.2f | %.1f | %.1f | %d |%n",
            round,
            laps.last(0),
            laps.last(1),
            laps.last(1) / laps.last(0),
            aUnit(laps.last(2)),
            aUnit(laps.last(3)),
            tasks);
      }
    }
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("units", units);
    figures.put("tasks", tasks);
    figures.put("scoreSeconds", laps.rounds(0));
    figures.put("taskSeconds", laps.rounds(1));
    figures.put("scoreAloneSeconds", laps.rounds(2));
    figures.put("tasksAloneSeconds", laps.rounds(3));
    System.out.println(new ObjectMapper().writeValueAsString(figures));
  }

  private double aUnit(double seconds) {
    return seconds * 1e6 / sample.size();
  }

  private void sample(UnitHistory history) {
    if (sample.size() < SAMPLE) {
      sample.add(history);
    }
  }

  private int count(UnitHistory history) {
    return upkeep.tasks(score(history), BenchmarkStore.DAY).size();
  }

  private Assessment score(UnitHistory history) {
    return scoring.assess(history, BenchmarkStore.DAY);
  }
}
