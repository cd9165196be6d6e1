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
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * {@code score UNITS READINGS [postgresql]}: scores a fleet from a database as the service reads
 * it. The floor is plain JDBC over the same rows in the same run.
 */
final class FleetScoring implements Program {

  private static final int ROUNDS = 5;
  private static final int WARM_UP_SECONDS = 30;
  private static final int VISITS = 1000;

  private final Scoring scoring;

  FleetScoring() {
    RuleTables tables = new RuleTables("scoring", null);
    ScoringRules rules = ScoringRules.load(tables);
    RefrigerantRules gases = RefrigerantRules.load(tables);
    tables.check();
    scoring = new Scoring(rules, gases);
  }

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("score UNITS READINGS [postgresql]", 2, arguments);
    int units = asked.number(0);
    int readings = asked.number(1);
    long begin = System.nanoTime();
    try (Store database = Store.of(asked.store());
        BenchmarkStore store = new BenchmarkStore(database.url(Store.DATABASE), units, readings)) {
      System.out.printf("filled in %.0f s%n", (System.nanoTime() - begin) / 1e9);
      run(store, units, readings);
    }
  }

  private void run(BenchmarkStore store, int units, int readings) throws Exception {
    System.out.println("| round | plain JDBC s | read s | read and scored s | times the floor |");
    System.out.println("|---|---|---|---|---|");
    // as long for a small fleet as for a big one, until little is left to be compiled
    long warm = System.nanoTime() + TimeUnit.SECONDS.toNanos(WARM_UP_SECONDS);
    do {
      store.plainRows();
      store.read(fleet -> fleet.each(FleetFilter.ALL, this::score, assessment -> {}));
    } while (System.nanoTime() < warm);
    Laps laps = new Laps(3);
    for (int round = 1; round <= ROUNDS; round++) {
      laps.begin();
      store.plainRows();
      laps.lap(0);
      store.read(fleet -> fleet.eachHistory(FleetFilter.ALL, history -> {}));
      laps.lap(1);
      store.read(fleet -> fleet.each(FleetFilter.ALL, this::score, assessment -> {}));
      laps.lap(2);
      System.out.printf(
          Locale.ROOT,
          "| %d | %.2f | %.2f | %.2f | %.2f |%n",
          round,
          laps.last(0),
          laps.last(1),
          laps.last(2),
          laps.last(2) / laps.last(0));
    }
    double[] oneUnit = new double[ROUNDS];
    for (int round = 0; round < ROUNDS; round++) {
      oneUnit[round] = oneUnit(store, units);
    }
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("units", units);
    figures.put("readings", readings);
    figures.put("floorSeconds", laps.rounds(0));
    figures.put("seconds", laps.rounds(2));
    figures.put("oneUnitMilliseconds", oneUnit);
    System.out.println(new ObjectMapper().writeValueAsString(figures));
  }

  private Assessment score(UnitHistory history) {
    return scoring.assess(history, BenchmarkStore.DAY);
  }

  /** Mean time to read and score one unit anew. */
  private double oneUnit(BenchmarkStore store, int units) {
    long[] nanos = new long[1];
    store.read(
        fleet -> {
          long start = System.nanoTime();
          for (int i = 0; i < VISITS; i++) {
            String id = coldround.fleet.UnitIds.text(1 + (i * 7919L) % units);
            fleet.each(List.of(id), this::score, assessment -> {});
          }
          nanos[0] = System.nanoTime() - start;
        });
    return nanos[0] / 1e6 / VISITS;
  }
}
