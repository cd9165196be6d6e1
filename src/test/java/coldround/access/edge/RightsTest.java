package coldround.access.edge;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.access.edge.TwoCustomers.Ids;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Every operation and page × every role × own and foreign, held against docs/access.md. */
@QuarkusTest
class RightsTest {

  private static final Map<Class<?>, TwoCustomers> DATA = new HashMap<>();

  /** Ids that there never were, in the form of each kind. */
  private static final Ids NOBODY =
      new Ids("NOSUCHCO", "uzzzzzz", "uzzzzzz-none", "00000000-no-plan", "00000000-no-rounds");

  private TwoCustomers data;
  private RightsTable table;

  /** One operation or page. */
  private record Call(String name, String method, String path) {
    boolean page() {
      return !path.startsWith("/api/");
    }
  }

  @BeforeEach
  void twoCustomers() throws Exception {
    table = RightsTable.read();
    if (!DATA.containsKey(getClass())) {
      DATA.put(getClass(), new TwoCustomers());
    }
    data = DATA.get(getClass());
  }

  private static List<Call> operations() {
    Map<String, Map<String, Map<String, Object>>> paths =
        asPlanner().queryParam("format", "json").get("/q/openapi").jsonPath().getMap("paths");
    List<Call> calls = new ArrayList<>();
    paths.forEach(
        (path, item) ->
            item.forEach(
                (method, operation) -> {
                  if (Set.of("get", "put", "post", "delete", "patch").contains(method)) {
                    calls.add(
                        new Call(
                            String.valueOf(operation.get("operationId")),
                            method.toUpperCase(java.util.Locale.ROOT),
                            path));
                  }
                }));
    return calls;
  }

  /** Pages are not in the description; they are known by their annotations. */
  private static List<Call> pages() {
    List<Call> calls = new ArrayList<>();
    new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("coldround")
            .stream()
            .filter(type -> type.isAnnotatedWith(Path.class))
            .flatMap(type -> type.getMethods().stream())
            .filter(
                method -> method.isAnnotatedWith(GET.class) || method.isAnnotatedWith(POST.class))
            .map(RightsTest::page)
            .filter(Call::page)
            .forEach(calls::add);
    return calls;
  }

  private static Call page(JavaMethod method) {
    String address = "/" + method.getOwner().getAnnotationOfType(Path.class).value();
    if (method.isAnnotatedWith(Path.class)) {
      address += "/" + method.getAnnotationOfType(Path.class).value();
    }
    address = address.replaceAll(": ?\\[.*?\\]\\+", "").replaceAll("/+", "/");
    address = address.length() > 1 ? address.replaceAll("/$", "") : address;
    String verb = method.isAnnotatedWith(GET.class) ? "GET" : "POST";
    return new Call(verb + " " + address, verb, address);
  }

  @Test
  void theTablesNameEveryOperationAndPageAndNothingElse() {
    Set<String> there = new TreeSet<>();
    operations().forEach(call -> there.add(call.name()));
    pages().forEach(call -> there.add(call.name()));
    Set<String> told = new TreeSet<>(table.rights().keySet());
    Set<String> missing = new TreeSet<>(there);
    missing.removeAll(told);
    assertEquals(Set.of(), missing, "docs/access.md says nothing of these");
    told.removeAll(there);
    assertEquals(Set.of(), told, "docs/access.md tells of these, which there are not");
  }

  @Test
  void everyOperationIsAnsweredAsTheTableSays() {
    List<String> wrong = new ArrayList<>();
    operations().forEach(call -> RightsTable.ROLES.forEach(role -> check(call, role, wrong)));
    assertEquals(List.of(), wrong);
  }

  @Test
  void everyPageIsAnsweredAsTheTableSays() {
    List<String> wrong = new ArrayList<>();
    pages().stream()
        .filter(call -> !Set.of("POST /leave", "POST /demo-fleet/wipe").contains(call.name()))
        // a planner would load a fleet; for the others it is refused as the table says
        .forEach(
            call ->
                RightsTable.ROLES.stream()
                    .filter(
                        role ->
                            !call.name().equals("POST /demo-fleet/load") || !role.equals("planner"))
                    .forEach(role -> check(call, role, wrong)));
    assertEquals(List.of(), wrong);
  }

  private void check(Call call, String role, List<String> wrong) {
    String right = table.of(call.name(), role);
    String what = call.name() + " by " + role + ", " + right + ": ";
    Response answer = send(call, role, data.own);
    int status = answer.statusCode();
    if (right.equals("no")) {
      boolean home = call.name().equals("GET /") && status == 303;
      boolean problem =
          call.page()
              || (answer.contentType().startsWith("application/problem+json")
                  && answer.jsonPath().getString("type").endsWith(":not-allowed"));
      if (!home && (status != 403 || !problem)) {
        wrong.add(what + status + " " + answer.contentType());
      }
      return;
    }
    if (status == 401 || status == 403 || status == 404 && known(call) || status >= 500) {
      wrong.add(what + status + " " + start(answer.asString()));
    }
    if (right.equals("own")) {
      foreign(call, role, answer, what, wrong);
    }
  }

  /** All that the call names is there, so that 404 would be a refusal. */
  private static boolean known(Call call) {
    return call.method().equals("GET")
        && !call.path().matches(".*(subscriptions|dead-letters|imports/files|/profiles/).*")
        && !call.path().matches(".*(booking|completion)$");
  }

  private void foreign(Call call, String role, Response own, String what, List<String> wrong) {
    if (own.contentType().matches("(application/json|text/).*")
        && own.asString().matches("(?s).*(ALIENCO|ALIENUNIT|ALIENTECH|Alien ).*")) {
      wrong.add(what + "the answer tells of the other customer");
    }
    if (call.name().matches("GET /(replacement|rounds)?")) {
      // nothing can be asked for by name
      return;
    }
    Response foreign = send(call, role, data.alien);
    Response unknown = send(call, role, NOBODY);
    String told = told(foreign, data.alien);
    if (foreign.statusCode() != unknown.statusCode() || !told.equals(told(unknown, NOBODY))) {
      wrong.add(
          what
              + ("foreign " + foreign.statusCode() + " " + start(told))
              + (" unknown " + unknown.statusCode() + " " + start(told(unknown, NOBODY))));
    }
    if (call.path().contains("{") && !call.path().contains("exports")
        || call.name().equals("recordVisit")) {
      if (foreign.statusCode() != 404) {
        wrong.add(what + "foreign " + foreign.statusCode());
      }
    }
  }

  private static String start(String text) {
    return text.substring(0, Math.min(150, text.length()));
  }

  private static String told(Response answer, Ids ids) {
    return answer
        .asString()
        .replace(ids.unit(), "UNIT")
        .replace(ids.plan(), "PLAN")
        .replace(ids.rounds(), "ROUNDS")
        .replace(ids.customer(), "CUSTOMER")
        // each call has an id
        .replaceAll("urn:coldround:call:[\\w-]+", "")
        // calendars say when they were asked for, pages when they were made
        .replaceAll("DTSTAMP:\\w+", "");
  }

  private Response send(Call call, String role, Ids ids) {
    RequestSpecification request =
        RestAssured.given()
            .redirects()
            .follow(false)
            .auth()
            .preemptive()
            .oauth2(data.tokens.get(role));
    String path = call.path();
    request.queryParam("customer", ids.customer()).queryParam("site", "S1");
    if (path.endsWith("/saturation")) {
      request.queryParam("pressure", 100).queryParam("unit", "psig");
    } else if (path.endsWith("/expected-head")) {
      request.queryParam("ambient", 70).queryParam("split", 30).queryParam("unit", "degF");
    }
    if (!call.method().equals("GET")) {
      body(call, role, request, ids);
    }
    return request.request(call.method(), address(path, ids));
  }

  private static void body(Call call, String role, RequestSpecification request, Ids ids) {
    if (call.name().equals("recordVisit")) {
      request
          .contentType("application/json")
          .body(
              Map.of(
                  "unit", ids.unit(), "visit", role + "-" + ids.customer(), "date", "2026-05-12"));
    } else if (call.name().equals("importFile")) {
      request.contentType("text/csv").body("nothing");
    } else if (call.name().equals("POST /imports")) {
      request.multiPart("file", "some.csv", "nothing".getBytes(StandardCharsets.UTF_8), "text/csv");
    } else if (call.page()) {
      request.contentType("application/x-www-form-urlencoded").body("token=" + coldround.Api.TOKEN);
    } else if (call.name().equals("planRounds") || call.name().equals("makeReplacementPlan")) {
      request.contentType("application/json").body("{\"seconds\": 0, \"horizon\": 0}");
    } else {
      request.contentType("application/json").body("{}");
    }
  }

  private String address(String path, Ids ids) {
    Map<String, String> byStep = new TreeMap<>();
    byStep.put("units", ids.unit());
    byStep.put("tasks", ids.task());
    byStep.put("rounds", ids.rounds());
    byStep.put("replacement-plans", ids.plan());
    byStep.put("accounts", data.spareAccount);
    byStep.put("imports", data.importId);
    String first =
        path.replaceFirst("^/api/v1/", "/").split("/").length > 1
            ? path.replaceFirst("^/api/v1/", "/").split("/")[1]
            : "";
    return path.replace("{kind}", "units")
        .replace("{type}", "coldround.task.planned")
        .replace("{designation}", "R-404A")
        .replace("{number}", "V1")
        .replace("{visit}", "V1")
        .replace("{unit}", ids.unit())
        .replace("{name}", "standard")
        .replaceAll("\\{[^}]+\\}", byStep.getOrDefault(first, "none"));
  }

  @Test
  void aTechnicianIsToldTheOwnRoundsOfASharedPlan() {
    String shared = "/api/v1/rounds/" + data.sharedRounds;
    String all = asPlanner().get(shared).asString();
    assertTrue(all.contains(TwoCustomers.OWN) && all.contains(TwoCustomers.ALIEN), all);
    for (String form : List.of("", ".csv", ".ics", ".geojson")) {
      String told = as("technician").get(shared + form).then().statusCode(200).extract().asString();
      assertTrue(told.contains("OWNUNIT"), form);
      assertFalse(told.contains("ALIEN"), form + told);
    }
    String page = as("technician").get("/rounds/" + data.sharedRounds).asString();
    assertTrue(page.contains("OWNUNIT") && !page.contains("ALIEN"), page);
  }

  private RequestSpecification as(String role) {
    return RestAssured.given().auth().preemptive().oauth2(data.tokens.get(role));
  }
}
