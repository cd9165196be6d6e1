package coldround.access.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.access.Audit;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Every change has its entry, and every entry its change. */
@QuarkusTest
class AuditTest {

  private static final String CUSTOMER = "AUDITED";

  @Inject Audit audit;
  @Inject EntityManager entities;

  private static Response list(String kind, String text, String query) {
    return asPlanner()
        .contentType("text/csv")
        .header("X-Request-Id", "audit-" + kind)
        .body(text)
        .post("/api/v1/imports/" + kind + query);
  }

  private static JsonPath newest() {
    return asPlanner().queryParam("limit", 20).get("/api/v1/audit").jsonPath();
  }

  private static List<Map<String, Object>> of(String kind, String object) {
    return asPlanner()
        .queryParam("limit", 500)
        .get("/api/v1/audit")
        .jsonPath()
        .param("kind", kind)
        .param("object", object)
        .getList("items.findAll { it.kind == kind && it.object == object }");
  }

  private static String unit() {
    list("customers", "customer,name\n" + CUSTOMER + ",Audited Grocers\n", "");
    list("sites", "customer,site\n" + CUSTOMER + ",S1\n", "");
    list(
        "units",
        "customer,site,unit,kind,refrigerant,installed\n"
            + CUSTOMER
            + ",S1,U1,walk-in-cooler,R-404A,2015-01-01\n",
        "");
    return asPlanner()
        .queryParam("customer", CUSTOMER)
        .get("/api/v1/units")
        .jsonPath()
        .getString("items[0].unit.id");
  }

  @Test
  void anImportIsNotedWithItsCallAndOnlyWhenItIsApplied() {
    unit();
    String text = "customer,site,unit,visit,date\n" + CUSTOMER + ",S1,U1,A1,2026-05-01\n";
    String preview = list("visits", text, "?preview=true").jsonPath().getString("id");
    String torn =
        list("visits", text + CUSTOMER + ",S1,NONE,A2,2026-05-01\n", "?partial=false")
            .jsonPath()
            .getString("id");
    String applied = list("visits", text, "").jsonPath().getString("id");

    assertEquals(List.of(), of("import", preview));
    assertEquals(List.of(), of("import", torn));
    List<Map<String, Object>> entries = of("import", applied);
    assertEquals(1, entries.size());
    assertEquals("audit-visits", entries.get(0).get("call"));
    assertEquals(CUSTOMER, entries.get(0).get("customer"));
    assertEquals("1 visits made, 0 changed, 0 rejected", entries.get(0).get("became"));
    assertEquals(Map.of("account", "planner", "name", "Planner"), entries.get(0).get("by"));
  }

  @Test
  void aVisitIsNotedAsItWasAndAsItBecameAndNotWhenNothingChanged() {
    String unit = unit();
    String first = "{\"unit\": \"" + unit + "\", \"visit\": \"B1\", \"date\": \"2026-05-02\"}";
    String second = first.replace("}", ", \"work\": [\"drain-cleared\"]}");
    for (String sent : List.of(first, first, second)) {
      asPlanner().contentType("application/json").body(sent).post("/api/v1/visits");
    }
    List<Map<String, Object>> entries = of("visit", unit + "/B1");
    assertEquals(List.of("changed", "made"), entries.stream().map(e -> e.get("action")).toList());
    assertEquals("2026-05-02, 0 readings", entries.get(0).get("was"));
    assertEquals("2026-05-02, 0 readings, work [drain-cleared]", entries.get(0).get("became"));
    asPlanner()
        .queryParam("customer", CUSTOMER)
        .get("/api/v1/audit")
        .then()
        .body("items.findAll { it.kind == 'visit' && it.customer != 'AUDITED' }.size()", equalTo(0))
        .body("items.findAll { it.kind == 'account' }.size()", equalTo(0));
  }

  @Test
  void bookingsAreNotedInAllTheirStates() {
    String unit = unit();
    String task =
        asPlanner()
            .queryParam("unit", unit)
            .get("/api/v1/tasks")
            .jsonPath()
            .getString("items[0].id");
    String address = "/api/v1/tasks/" + task + "/booking";
    String body =
        "{\"start\": \"2026-12-01T09:00:00Z\", \"technician\": \"T1\", \"reference\": \"r\"}";
    asPlanner().contentType("application/json").body(body).put(address).then().statusCode(201);
    asPlanner().contentType("application/json").body(body).put(address).then().statusCode(200);
    asPlanner().delete(address).then().statusCode(204);
    List<Map<String, Object>> entries = of("booking", task);
    assertEquals(List.of("cancelled", "made"), entries.stream().map(e -> e.get("action")).toList());
    assertEquals(CUSTOMER, entries.get(0).get("customer"));
    assertEquals("", entries.get(0).get("became"));
  }

  @Test
  void accountsAndSubscriptionsAreNotedWithoutTheirSecrets() {
    JsonPath made = TwoCustomers.account("scheduler", "");
    String id = made.getString("id");
    String renewed =
        asPlanner()
            .contentType("application/json")
            .post("/api/v1/accounts/" + id + "/renew")
            .jsonPath()
            .getString("token");
    asPlanner().post("/api/v1/accounts/" + id + "/revoke").then().statusCode(200);
    assertEquals(
        List.of("revoked", "renewed", "made"),
        of("account", id).stream().map(e -> e.get("action")).toList());
    JsonPath subscription =
        asPlanner()
            .contentType("application/json")
            .body("{\"url\": \"http://127.0.0.1:9/hook\"}")
            .post("/api/v1/subscriptions")
            .jsonPath();
    asPlanner().delete("/api/v1/subscriptions/" + subscription.getString("id"));
    assertEquals(
        List.of("removed", "made"),
        of("subscription", subscription.getString("id")).stream()
            .map(e -> e.get("action"))
            .toList());
    String all = asPlanner().queryParam("limit", 500).get("/api/v1/audit").asString();
    for (String secret :
        List.of(made.getString("token"), renewed, subscription.getString("secret"), Api.TOKEN)) {
      assertFalse(all.contains(secret));
    }
  }

  @Test
  void aChangeThatIsRolledBackLeavesNoEntry() {
    IllegalStateException undone =
        assertThrows(
            IllegalStateException.class,
            () ->
                QuarkusTransaction.requiringNew()
                    .run(
                        () -> {
                          audit.note(Audit.Change.of("trial", "t1", "made", "", "x"));
                          entities.flush();
                          throw new IllegalStateException("undone");
                        }));
    assertEquals("undone", undone.getMessage());
    assertEquals(List.of(), of("trial", "t1"));
    QuarkusTransaction.requiringNew()
        .run(() -> audit.note(Audit.Change.of("trial", "t2", "made", "", "x")));
    assertEquals(1, of("trial", "t2").size());
  }

  @Test
  void anEntryIsNeitherChangedNorDeletedByACall() {
    String id = newest().getString("items[0].id");
    for (String method : List.of("PUT", "POST", "PATCH", "DELETE")) {
      for (String address : List.of("/api/v1/audit", "/api/v1/audit/" + id)) {
        int status = asPlanner().request(method, address).statusCode();
        assertTrue(status == 404 || status == 405, method + " " + address + " " + status);
      }
    }
    // nor by a query of the program: the rows are immutable to it
    assertThrows(
        RuntimeException.class,
        () ->
            QuarkusTransaction.requiringNew()
                .run(
                    () ->
                        entities
                            .createQuery("update AuditRow set accountName = 'x'")
                            .executeUpdate()));
  }

  @Test
  void theListGoesOnPageByPage() {
    JsonPath first = asPlanner().queryParam("limit", 1).get("/api/v1/audit").jsonPath();
    JsonPath second =
        asPlanner()
            .queryParam("limit", 1)
            .queryParam("after", first.getString("next"))
            .get("/api/v1/audit")
            .jsonPath();
    assertTrue(
        Long.parseLong(first.getString("items[0].id"))
            > Long.parseLong(second.getString("items[0].id")));
  }
}
