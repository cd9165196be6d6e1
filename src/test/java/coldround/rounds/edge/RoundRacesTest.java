package coldround.rounds.edge;

import static coldround.rounds.edge.RoundsTest.ended;
import static coldround.rounds.edge.RoundsTest.planned;
import static coldround.rounds.edge.RoundsTest.post;
import static coldround.rounds.edge.RoundsTest.read;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.DemoLists;
import coldround.DemoServed;
import coldround.fleet.FleetWiping;
import coldround.quantity.MeasureSystem;
import coldround.rounds.Call;
import coldround.rounds.Order;
import coldround.rounds.Standing;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.CyclicBarrier;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Several change one plan at once. */
@QuarkusTest
@TestProfile(DemoServed.class)
class RoundRacesTest {

  private static final String ROUNDS = "/api/v1/rounds/";
  private static final Map<Class<?>, String> PLANS = new HashMap<>();

  /** Somebody waits for what another transaction holds. */
  private static final Map<String, String> WAITING =
      Map.of(
          "H2", "select 1 from information_schema.sessions where blocker_id is not null",
          "PostgreSQL", "select 1 from pg_locks where not granted");

  @Inject DataSource database;
  @Inject StoredRounds store;
  @Inject Changing changing;
  @Inject FleetWiping wiping;

  private String plan;

  @BeforeEach
  void aWeekIsPlanned() throws Exception {
    if (!PLANS.containsKey(getClass())) {
      DemoLists.afresh(wiping);
      PLANS.put(getClass(), planned(1));
    }
    plan = PLANS.get(getClass());
  }

  private interface Condition {
    boolean holds() throws Exception;
  }

  private static void await(String what, Condition condition) throws Exception {
    Instant until = Instant.now().plus(Duration.ofMinutes(1));
    while (!condition.holds()) {
      assertTrue(Instant.now().isBefore(until), what);
      Thread.sleep(20);
    }
  }

  private static int sql(Connection connection, String statement, Object... values)
      throws SQLException {
    try (PreparedStatement prepared = connection.prepareStatement(statement)) {
      for (int i = 0; i < values.length; i++) {
        prepared.setObject(i + 1, values[i]);
      }
      return prepared.executeUpdate();
    }
  }

  private void sql(String statement, Object... values) throws SQLException {
    try (Connection connection = database.getConnection()) {
      assertEquals(1, sql(connection, statement, values));
    }
  }

  private boolean somebodyWaits() throws SQLException {
    try (Connection connection = database.getConnection()) {
      String asked = WAITING.get(connection.getMetaData().getDatabaseProductName());
      try (PreparedStatement prepared = connection.prepareStatement(asked);
          ResultSet rows = prepared.executeQuery()) {
        return rows.next();
      }
    }
  }

  private static Timestamp soon() {
    return Timestamp.from(Instant.now().plus(Duration.ofHours(1)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "replan | {\"seconds\": 1}",
        "emergencies | {\"unit\": \"UNIT\", \"day\": \"DAY\"}",
        "moves | {\"stop\": \"STOP\"}"
      })
  void whoWaitedForAnotherThatBeganToPlanIsRefused(String what, String body) throws Exception {
    JsonPath before = read(plan);
    String first = "days[0].rounds[0].stops[0].";
    String sent =
        body.replace("UNIT", before.getString(first + "tasks[0].unit.id"))
            .replace("DAY", before.getString("days[0].day"))
            .replace("STOP", before.getString(first + "id"));
    try (Connection other = database.getConnection()) {
      other.setAutoCommit(false);
      String begins = "update round_plan set state = 'planning', beat = ? where id = ?";
      sql(other, begins, soon(), plan);
      CompletableFuture<Response> answer =
          CompletableFuture.supplyAsync(() -> post(ROUNDS + plan + "/" + what, sent));
      await("the call waits for the other", () -> somebodyWaits() || answer.isDone());
      other.commit();
      answer.get().then().statusCode(409).body("detail", containsString("still being worked on"));
      assertEquals(before.getInt("revision"), read(plan).getInt("revision"));
    } finally {
      sql("update round_plan set state = 'planned' where id = ?", plan);
    }
  }

  @Test
  void ofTwoThatPlanAnewAtOnceOneIsTakenAndItsPlanIsMade() throws Exception {
    for (int pair = 0; pair < 3; pair++) {
      int revision = read(plan).getInt("revision");
      CyclicBarrier both = new CyclicBarrier(2);
      List<CompletableFuture<Integer>> answers =
          Stream.of(1, 2)
              .map(seed -> CompletableFuture.supplyAsync(() -> anew(both, seed)))
              .toList();
      List<Integer> codes = answers.stream().map(CompletableFuture::join).sorted().toList();
      assertEquals(List.of(202, 409), codes);
      post(ROUNDS + plan + "/stop", "{}").then().statusCode(204);
      assertEquals("stopped", ended(plan));
      assertEquals(revision + 1, read(plan).getInt("revision"));
      assertFalse(read(plan).getList("days").isEmpty());
    }
  }

  @Test
  void anInstanceThatWasAwayForTooLongLeavesThePlanToWhoTookItUp() throws Exception {
    post(ROUNDS + plan + "/replan", "{\"seconds\": 600}").then().statusCode(202);
    await("it is planned", () -> read(plan).getString("state").equals("planning"));
    Hold lost = new Hold(plan, read(plan).getInt("revision"), 0);
    String taken =
        "update round_plan set state = 'waiting', found = 777, beat = ?, resumed = 1 where id = ?";
    sql(taken, soon(), plan);
    await("it is left to the other", () -> read(plan).getString("state").equals("waiting"));
    assertEquals(Hold.Kept.LOST, store.keep(lost, Standing.State.PLANNING, 0.5, 1, null));
    assertFalse(store.end(lost, Standing.State.FAILED, 1, null, ""));
    assertEquals("waiting", read(plan).getString("state"));
    assertEquals(777, read(plan).getInt("progress.improvements"));
    Hold others = new Hold(plan, lost.revision(), 1);
    assertTrue(store.end(others, Standing.State.STOPPED, 778, null, ""));
    assertEquals("stopped", read(plan).getString("state"));
    assertFalse(store.end(others, Standing.State.FAILED, 1, null, ""), "ended twice");
  }

  @Test
  void aServiceThatEndsWaitsForWhoMayBeInTheStoreAndInterruptsNobody() throws Exception {
    CountDownLatch inside = new CountDownLatch(1);
    CompletableFuture<String> left = new CompletableFuture<>();
    FleetOrder store =
        new FleetOrder(null, null, null, null, null, null) {
          @Override
          Order gather(RoundRequest asked, Instant now, List<Call> kept) {
            inside.countDown();
            try {
              // stands for what is read after the wish to stop
              Thread.sleep(1000);
              left.complete("undisturbed");
            } catch (InterruptedException e) {
              left.complete("interrupted");
            }
            throw new IllegalStateException("nothing is read here");
          }
        };
    Clock clock = Clock.systemUTC();
    Planner ending = new Planner(this.store, store, null, null, clock, null, null, null);
    LocalDate day = LocalDate.now();
    RoundRequest asked = RoundRequest.usual(day, day, day);
    ending.submit(new PlanningRun(Hold.first("of-nobody"), asked, List.of(), List.of(), clock));
    inside.await();
    ending.atEnd(null);
    assertEquals("undisturbed", left.getNow("not waited for"));
  }

  @Test
  void anEmergencyStaysInPlansMadeAnewUntilItIsWithdrawn() throws Exception {
    JsonPath all = read(plan);
    String unit =
        all.getString(
            "days.rounds.flatten().stops.flatten().find { it.site.customer != 'KVS' }"
                + ".tasks[0].unit.id");
    LocalDate day = LocalDate.parse(all.getString("days[0].day"));
    String asked = "{\"from\": \"%s\", \"seconds\": 1, \"customers\": [\"KVS\"]}";
    String own = post("/api/v1/rounds", asked.formatted(day)).jsonPath().getString("id");
    assertEquals("planned", ended(own));
    JsonNode body =
        JsonNodeFactory.instance.objectNode().put("unit", unit).put("day", day.toString());
    CompletableFuture<Response> waiting = new CompletableFuture<>();
    String emergency =
        QuarkusTransaction.requiringNew()
            .timeout(120)
            .call(
                () -> {
                  // put in while somebody who plans anew waits already: it must be seen
                  String id = changing.emergency(own, body, MeasureSystem.US).id();
                  waiting.completeAsync(() -> post(ROUNDS + own + "/replan", "{\"seconds\": 1}"));
                  await("who plans anew waits", this::somebodyWaits);
                  return id;
                });
    assertEquals(202, waiting.get().statusCode());
    assertEquals("planned", ended(own));
    String there =
        "days.find { it.day == '" + day + "' }.rounds.stops.flatten().tasks.flatten().id";
    assertTrue(read(own).getList(there).contains(emergency), "gone when planned anew");
    String anew = "{\"seconds\": 1, \"withdrawn\": [\"%s\"]}";
    post(ROUNDS + own + "/replan", anew.formatted("emergency-none"))
        .then()
        .statusCode(400)
        .body("errors[0].field", equalTo("withdrawn"));
    post(ROUNDS + own + "/replan", anew.formatted(emergency)).then().statusCode(202);
    assertEquals("planned", ended(own));
    assertEquals(3, read(own).getInt("revision"));
    assertFalse(read(own).prettify().contains(emergency), "withdrawn");
  }

  private int anew(CyclicBarrier both, int seed) {
    try {
      both.await();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
    String body = "{\"seconds\": 600, \"seed\": %d}".formatted(seed);
    return post(ROUNDS + plan + "/replan", body).statusCode();
  }
}
