package coldround.fleet.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.FleetFilter;
import coldround.fleet.UnitHistory;
import coldround.fleet.UnitIds;
import coldround.refrigerant.RefrigerantRules;
import coldround.scoring.Assessment;
import coldround.scoring.Condition;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.table.RuleTables;
import coldround.upkeep.Task;
import coldround.upkeep.Upkeep;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One fleet in H2 and in PostgreSQL: scores, reasons and tasks are the same to the last digit,
 * whatever the database, the order, the batch and the number of threads.
 */
class SameDigitsTest {

  private static final int UNITS = 603;
  private static final String H2 =
      "jdbc:h2:mem:same-digits;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;"
          + "DEFAULT_NULL_ORDERING=HIGH";

  /** What a unit comes to, compared in every digit. */
  private record Result(Condition condition, List<Task> tasks) {}

  private static Scoring scoring;
  private static Upkeep upkeep;
  private static EmbeddedPostgres server;
  private static BenchmarkStore h2;
  private static BenchmarkStore postgres;
  private static Map<String, Result> expected;

  @BeforeAll
  static void fill() throws Exception {
    RuleTables tables = new RuleTables("scoring", null);
    ScoringRules rules = ScoringRules.load(tables);
    RefrigerantRules gases = RefrigerantRules.load(tables);
    scoring = new Scoring(rules, gases);
    upkeep =
        Upkeep.load(
            tables, rules, gases.refrigerants(), gases.leakInspections(), gases.categories());
    h2 = new BenchmarkStore(H2, UNITS, UNITS * 20);
    server = EmbeddedPostgres.start();
    postgres = new BenchmarkStore(server.getJdbcUrl("postgres", "postgres"), UNITS, UNITS * 20);
    expected = oneByOne(h2);
  }

  @AfterAll
  static void stop() throws Exception {
    h2.close();
    postgres.close();
    server.close();
  }

  /** By this thread alone, each unit read for itself. */
  private static Map<String, Result> oneByOne(BenchmarkStore store) {
    Map<String, Result> results = new TreeMap<>();
    store.read(
        fleet -> {
          for (int i = 1; i <= UNITS; i++) {
            String id = UnitIds.text(i);
            results.put(id, result(fleet.history(id).orElseThrow()));
          }
        });
    return results;
  }

  private static Result result(UnitHistory history) {
    Assessment assessment = scoring.assess(history, BenchmarkStore.DAY);
    return new Result(assessment.condition(), upkeep.tasks(assessment, BenchmarkStore.DAY));
  }

  private static Map<String, Result> all(BenchmarkStore store) {
    Map<String, Result> results = new TreeMap<>();
    store.read(
        fleet ->
            fleet.each(
                FleetFilter.ALL,
                history -> Map.entry(history.unit().id(), result(history)),
                each -> results.put(each.getKey(), each.getValue())));
    return results;
  }

  private static void same(Map<String, Result> results) {
    assertEquals(expected.keySet(), results.keySet());
    expected.forEach((id, result) -> assertEquals(result, results.get(id), id));
  }

  @Test
  void unitsDiffer() {
    long scores =
        expected.values().stream().map(each -> each.condition().score()).distinct().count();
    assertTrue(scores > UNITS / 5, scores + " different scores of " + UNITS);
  }

  @Test
  void allAtOnce() {
    same(all(h2));
  }

  @Test
  void onPostgres() {
    same(oneByOne(postgres));
    same(all(postgres));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 50, 499})
  void inAnyOrderAndBatch(int batch) {
    List<String> ids = new ArrayList<>(expected.keySet());
    Collections.shuffle(ids, new Random(batch));
    for (BenchmarkStore store : List.of(h2, postgres)) {
      Map<String, Result> results = new TreeMap<>();
      store.read(
          fleet -> {
            for (int from = 0; from < ids.size(); from += batch) {
              fleet.each(
                  ids.subList(from, Math.min(ids.size(), from + batch)),
                  history -> Map.entry(history.unit().id(), result(history)),
                  each -> results.put(each.getKey(), each.getValue()));
            }
          });
      same(results);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5})
  void byAnyNumberOfThreads(int count) throws Exception {
    List<UnitHistory> histories = new ArrayList<>();
    h2.read(fleet -> fleet.eachHistory(FleetFilter.ALL, histories::add));
    Map<String, Result> results = new ConcurrentHashMap<>();
    List<Thread> threads = new ArrayList<>();
    for (int n = 0; n < count; n++) {
      int first = n;
      Thread thread =
          new Thread(
              () -> {
                for (int i = first; i < histories.size(); i += count) {
                  results.put(histories.get(i).unit().id(), result(histories.get(i)));
                }
              });
      threads.add(thread);
      thread.start();
    }
    for (Thread thread : threads) {
      thread.join();
    }
    same(results);
  }
}
