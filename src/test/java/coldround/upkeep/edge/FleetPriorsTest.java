package coldround.upkeep.edge;

import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.refrigerant.RefrigerantRules;
import coldround.scoring.FaultPriors;
import coldround.scoring.FaultRecord;
import coldround.scoring.FleetLine;
import coldround.scoring.FleetList;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.scoring.statistics.FaultTally;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Priors from the whole fleet: the same for all, whoever was written first. */
@QuarkusTest
class FleetPriorsTest {

  private static final String CLASS = "self-contained";

  @Inject Fleet fleet;
  @Inject FleetList list;
  @Inject Scoring scoring;
  @Inject ScoringRules rules;
  @Inject RefrigerantRules gases;
  @Inject Everyday everyday;
  @Inject FleetPriors priors;
  @Inject Reassessment reassessment;
  @Inject Today today;

  @BeforeEach
  void aFleetLargeEnoughToEstimateFrom() {
    Api.put("customers", "customer,name\nPRIORS,Priors\n");
    Api.put("sites", "customer,site,jurisdiction\nPRIORS,S,US-VA\n");
    StringBuilder units = new StringBuilder("customer,site,unit,kind,installed,refrigerant\n");
    StringBuilder visits = new StringBuilder("customer,site,unit,visit,date\n");
    StringBuilder faults = new StringBuilder("customer,site,unit,date,failure_mode\n");
    for (int i = 0; i < 40; i++) {
      String key = "PRIORS,S,R" + i + ",";
      units.append(key).append("reach-in-cooler,2019-03-0").append(1 + i % 9).append(",R-134a\n");
      visits
          .append(key)
          .append("1,202")
          .append(1 + i % 3)
          .append("-04-1")
          .append(i % 10)
          .append("\n");
      for (int n = 0; n < i % 5; n++) {
        faults.append(key).append("2025-0").append(1 + n).append("-15,compressor-no-start\n");
      }
    }
    Api.put("units", units.toString());
    Api.put("visits", visits.toString());
    Api.put("faults", faults.toString());
  }

  private List<UnitHistory> histories() {
    List<UnitHistory> all = new ArrayList<>();
    fleet.eachHistory(FleetFilter.ALL, all::add);
    all.removeIf(history -> !history.unit().inUse(today.at(history.site())));
    return all;
  }

  /** Worked out plainly, one history after the other, without the store. */
  private FaultPriors expectedPriors() {
    LocalDate day = today.usually();
    Map<String, FaultTally> sums = new TreeMap<>();
    for (UnitHistory history : histories()) {
      scoring
          .faultRecord(history, today.at(history.site()))
          .ifPresent(
              record -> sums.merge(record.faultClass(), tally(record, day), FaultTally::plus));
    }
    return rules.faultPriors().estimated(sums, rules.limits());
  }

  private static FaultTally tally(FaultRecord record, LocalDate day) {
    long days = java.time.temporal.ChronoUnit.DAYS.between(record.firstSeen(), day);
    return FaultTally.of(record.events().size(), days);
  }

  private Map<String, Double> stored() {
    Map<String, Double> scores = new TreeMap<>();
    FleetList.Place after = null;
    List<FleetLine> lines;
    do {
      lines =
          list.lines(
              new FleetList.Search("", "", "", "", "", ""), FleetList.Order.SCORE, after, 500);
      lines.forEach(line -> scores.put(line.unitId(), line.score()));
      after = lines.isEmpty() ? after : FleetList.Place.of(lines.get(lines.size() - 1));
    } while (lines.size() == 500);
    return scores;
  }

  private Map<String, Double> expectedScores() {
    Scoring plain = new Scoring(rules.with(expectedPriors()), gases);
    Map<String, Double> scores = new TreeMap<>();
    histories()
        .forEach(
            history ->
                scores.put(
                    history.unit().id(),
                    plain.assess(history, today.at(history.site())).condition().score()));
    return scores;
  }

  @Test
  void theSameScoreToTheLastDigitInAnyNumberOfThreads() {
    everyday.everyHour();
    Map<String, Double> expected = expectedScores();
    List<UnitHistory> histories = histories();
    Map<String, Double> parallel = new java.util.concurrent.ConcurrentSkipListMap<>();
    histories.parallelStream()
        .forEach(
            history ->
                parallel.put(
                    history.unit().id(),
                    scoring.assess(history, today.at(history.site())).condition().score()));
    assertEquals(expected, parallel);
  }

  @Test
  void aFleetLargeEnoughHasItsOwnPrior() {
    everyday.everyHour();
    FaultPriors.FaultPrior its = scoring.priors().byClass().get(CLASS);
    assertNotEquals(rules.faultPriors().byClass().get(CLASS).rate(), its.rate());
    assertEquals(expectedPriors().byClass().get(CLASS).rate(), its.rate());
    assertTrue(its.source().toString().contains("of the fleet"), its.source().toString());
  }

  @Test
  void storedAndAskedForScoresAreWhatOnePlainLoopGives() {
    everyday.everyHour();
    Map<String, Double> expected = expectedScores();
    assertEquals(expected, stored());
    String id = expected.keySet().iterator().next();
    Api.asPlanner()
        .get("/api/v1/units/" + id + "/condition")
        .then()
        .body("score.toDouble()", equalTo(expected.get(id)));
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "7, 2", "500, 3"})
  void theSameScoreToTheLastDigitInAnyBatchSizeAndOrder(int size, long seed) {
    everyday.everyHour();
    Map<String, Double> before = stored();
    List<String> ids = new ArrayList<>(before.keySet());
    Collections.shuffle(ids, new Random(seed));
    for (int from = 0; from < ids.size(); from += size) {
      reassessment.changed(ids.subList(from, Math.min(ids.size(), from + size)));
    }
    everyday.everyHour();
    assertEquals(before, stored());
    assertEquals(expectedScores(), stored());
  }

  @ParameterizedTest
  @CsvSource({"2025-03-20", "2025-01-01", "2023-06-30"})
  void aPastDayIsScoredWithThePriorsOfThatDay(String past) {
    LocalDate day = LocalDate.parse(past);
    Map<String, FaultTally> sums = new TreeMap<>();
    List<UnitHistory> all = new ArrayList<>();
    fleet.eachHistory(FleetFilter.ALL, all::add);
    for (UnitHistory history : all) {
      if (history.unit().inUse(day)) {
        scoring
            .faultRecord(history, day)
            .ifPresent(
                record -> sums.merge(record.faultClass(), tally(record, day), FaultTally::plus));
      }
    }
    FaultPriors then = rules.faultPriors().estimated(sums, rules.limits());
    Scoring plain = new Scoring(rules.with(then), gases);
    UnitHistory one =
        all.stream().filter(its -> its.unit().tag().equals("R4")).findFirst().orElseThrow();
    Api.asPlanner()
        .get("/api/v1/units/" + one.unit().id() + "/condition?asOf=" + past)
        .then()
        .statusCode(200)
        .body("score.toDouble()", equalTo(plain.assess(one, day).condition().score()));
  }

  @Test
  void aUnitThatWentOutOfUseStillCountsForTheDaysBefore() {
    String address =
        "/api/v1/units/"
            + histories().stream()
                .filter(its -> its.unit().tag().equals("R4"))
                .findFirst()
                .orElseThrow()
                .unit()
                .id()
            + "/condition?asOf=2025-06-01";
    String before = Api.asPlanner().get(address).asString();
    Api.put(
        "units",
        "customer,site,unit,kind,retired\nPRIORS,S,R9,reach-in-cooler," + today.usually() + "\n");
    everyday.everyHour();
    assertEquals(before, Api.asPlanner().get(address).asString());
    Api.put("units", "customer,site,unit,kind,retired\nPRIORS,S,R9,reach-in-cooler,-\n");
  }

  @Test
  void oneMoreFaultChangesThePriorForAllOfTheClassAtTheNextEstimate() {
    everyday.everyHour();
    double before = scoring.priors().byClass().get(CLASS).rate().mean();
    Api.put(
        "faults", "customer,site,unit,date,failure_mode\nPRIORS,S,R0,2025-07-01,drain-blocked\n");
    assertEquals(
        before, scoring.priors().byClass().get(CLASS).rate().mean(), "until then as it was");
    everyday.everyHour();
    assertFalse(before == scoring.priors().byClass().get(CLASS).rate().mean());
    assertEquals(expectedScores(), stored());
  }

  @Test
  void whoLooksForThoseOfOthersMeanwhileDoesNotTakeTheNewOnesBack() {
    everyday.everyHour();
    FaultPriors before = scoring.priors();
    Api.put(
        "faults", "customer,site,unit,date,failure_mode\nPRIORS,S,R0,2025-08-01,drain-blocked\n");
    QuarkusTransaction.begin();
    try {
      assertTrue(priors.estimate());
      FaultPriors estimated = scoring.priors();
      CompletableFuture.runAsync(everyday::followOthers).join();
      assertSame(estimated, scoring.priors(), "while the fleet is worked out with them");
    } finally {
      QuarkusTransaction.rollback();
    }
    assertSame(before, scoring.priors(), "they were never kept");
    everyday.followOthers();
    assertEquals(before.byClass(), scoring.priors().byClass());
  }

  @Test
  void theMeanCumulativeFunctionIsToldByClassAndMode() {
    Api.asPlanner()
        .get(
            "/api/v1/fleet/mean-cumulative-faults?class=self-contained&customer=PRIORS&failureMode=compressor-no-start")
        .then()
        .statusCode(200)
        .body("items.size()", equalTo(1))
        .body("items[0].units", equalTo(40))
        .body("items[0].faults", equalTo(80))
        .body("items[0].steps[-1].mean.toDouble()", org.hamcrest.Matchers.closeTo(2.0, 0.4));
    Api.asPlanner()
        .get("/api/v1/fleet/mean-cumulative-faults?by=failure-mode&customer=PRIORS")
        .then()
        .statusCode(200)
        .body("items.failureMode", org.hamcrest.Matchers.hasItem("compressor-no-start"))
        .body("items.find { it.failureMode == 'compressor-no-start' }.faults", equalTo(80));
    Api.asPlanner()
        .get("/api/v1/fleet/mean-cumulative-faults.svg?by=failure-mode&customer=PRIORS")
        .then()
        .statusCode(200)
        .contentType("image/svg+xml")
        .body("svg.polyline.size()", org.hamcrest.Matchers.greaterThan(0));
    Api.asPlanner()
        .get("/api/v1/fleet/mean-cumulative-faults.svg?by=colour")
        .then()
        .statusCode(400)
        .contentType("application/problem+json");
    for (String wrong : List.of("by=colour", "class=fridge", "failureMode=sang", "asOf=soon")) {
      Api.asPlanner()
          .get("/api/v1/fleet/mean-cumulative-faults?" + wrong)
          .then()
          .statusCode(400)
          .contentType("application/problem+json");
    }
  }
}
