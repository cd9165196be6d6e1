package coldround.access.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Two customers at two ends of a continent, a technician living at each, and everything that can be
 * named by an id: once for the own and once for the other. Accounts of every role belong to the
 * own.
 */
final class TwoCustomers {

  static final String OWN = "OWNCO";
  static final String ALIEN = "ALIENCO";
  static final String OWN_TECHNICIAN = "OWNTECH";
  static final String ALIEN_TECHNICIAN = "ALIENTECH";

  /** What the ids of one customer are. */
  record Ids(String customer, String unit, String task, String plan, String rounds) {}

  final Ids own;
  final Ids alien;
  final String sharedRounds;
  final Map<String, String> tokens = new LinkedHashMap<>();
  final String spareAccount;
  final String importId;

  TwoCustomers() throws InterruptedException {
    list("customers", "customer,name\n" + OWN + ",Own Grocers\n" + ALIEN + ",Alien Grocers\n");
    list(
        "sites",
        "customer,site,name,latitude,longitude\n"
            + (OWN + ",S1,Own Street,45.5,-122.6\n")
            + (ALIEN + ",S1,Alien Street,44.3,-69.8\n"));
    importId =
        list(
            "units",
            "customer,site,unit,kind,refrigerant,charge [lb],installed\n"
                + (OWN + ",S1,OWNUNIT,walk-in-cooler,R-404A,20,2015-01-01\n")
                + (ALIEN + ",S1,ALIENUNIT,walk-in-cooler,R-404A,20,2015-01-01\n"));
    list(
        "visits",
        "customer,site,unit,visit,date,technician,head_pressure [psig],ambient [degF]\n"
            + (OWN + ",S1,OWNUNIT,V1,2024-05-01," + OWN_TECHNICIAN + ",250,85\n")
            + (ALIEN + ",S1,ALIENUNIT,V1,2024-05-01," + ALIEN_TECHNICIAN + ",250,85\n"));
    list(
        "technicians",
        "technician,name,latitude,longitude,hours\n"
            + (OWN_TECHNICIAN + ",Own Hand,45.5,-122.6,Mo-Su 08:00-17:00\n")
            + (ALIEN_TECHNICIAN + ",Alien Hand,44.3,-69.8,Mo-Su 08:00-17:00\n"));
    own = ids(OWN, OWN_TECHNICIAN);
    alien = ids(ALIEN, ALIEN_TECHNICIAN);
    sharedRounds = rounds(List.of(OWN, ALIEN), List.of(OWN_TECHNICIAN, ALIEN_TECHNICIAN));
    tokens.put("planner", account("planner", "").getString("token"));
    tokens.put(
        "technician",
        account("technician", ",'technician':'" + OWN_TECHNICIAN + "'").getString("token"));
    tokens.put("customer", account("customer", ",'customer':'" + OWN + "'").getString("token"));
    tokens.put("scheduler", account("scheduler", "").getString("token"));
    spareAccount = account("scheduler", "").getString("id");
  }

  private static String list(String kind, String text) {
    return asPlanner()
        .contentType("text/csv")
        .body(text.getBytes(StandardCharsets.UTF_8))
        .post("/api/v1/imports/" + kind)
        .then()
        .statusCode(200)
        .body("rows.rejected", equalTo(0))
        .extract()
        .path("id");
  }

  static JsonPath account(String role, String more) {
    return asPlanner()
        .contentType("application/json")
        .body(("{'name':'The " + role + "','role':'" + role + "'" + more + "}").replace('\'', '"'))
        .post("/api/v1/accounts")
        .then()
        .statusCode(201)
        .extract()
        .jsonPath();
  }

  private static Ids ids(String customer, String technician) throws InterruptedException {
    String unit =
        asPlanner()
            .queryParam("customer", customer)
            .get("/api/v1/units")
            .jsonPath()
            .getString("items[0].unit.id");
    String task =
        asPlanner()
            .queryParam("customer", customer)
            .get("/api/v1/tasks")
            .jsonPath()
            .getString("items[0].id");
    String plan =
        asPlanner()
            .contentType("application/json")
            .body(Map.of("customers", List.of(customer), "horizon", 1, "runs", 10))
            .post("/api/v1/replacement-plans")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    return new Ids(customer, unit, task, plan, rounds(List.of(customer), List.of(technician)));
  }

  private static String rounds(List<String> customers, List<String> technicians)
      throws InterruptedException {
    Map<String, Object> asked = new HashMap<>();
    asked.put("from", LocalDate.now().plusDays(1).toString());
    asked.put("to", LocalDate.now().plusDays(5).toString());
    asked.put("customers", customers);
    asked.put("technicians", technicians);
    asked.put("seconds", 1);
    Response accepted =
        asPlanner().contentType("application/json").body(asked).post("/api/v1/rounds");
    accepted.then().statusCode(202);
    String id = accepted.jsonPath().getString("id");
    Instant until = Instant.now().plus(Duration.ofMinutes(2));
    String state;
    do {
      Thread.sleep(100);
      state = asPlanner().get("/api/v1/rounds/" + id).jsonPath().getString("state");
    } while (List.of("waiting", "planning").contains(state) && Instant.now().isBefore(until));
    if (!"planned".equals(state)) {
      throw new AssertionError("rounds are " + state);
    }
    return id;
  }
}
