package coldround.access.edge;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.edge.WaitingFleetSize;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@TestProfile(TightLimits.class)
class TightLimitsTest {

  @TestHTTPResource URL service;

  /** Status line and headers of a call from one of the many addresses that this machine has. */
  private String from(String address, String head, String body) throws IOException {
    try (Socket socket =
        new Socket(
            InetAddress.getByName(service.getHost()),
            service.getPort(),
            InetAddress.getByName(address),
            0)) {
      String call =
          head
              + "\r\nHost: localhost\r\nConnection: close\r\nContent-Length: "
              + body.length()
              + "\r\n\r\n"
              + body;
      socket.getOutputStream().write(call.getBytes(StandardCharsets.UTF_8));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private String get(String address, String token) throws IOException {
    return from(address, "GET /api/v1/refrigerants HTTP/1.1\r\nAuthorization: Bearer " + token, "");
  }

  private String enter(String address, String token) throws IOException {
    return from(
        address,
        "POST /enter HTTP/1.1\r\nContent-Type: application/x-www-form-urlencoded",
        "token=" + token);
  }

  private static void status(int status, String answer) {
    assertTrue(answer.startsWith("HTTP/1.1 " + status), answer.lines().findFirst().orElse(""));
  }

  @Test
  void whoGuessesTokensHasToWaitAndTheNeighbourHasNot() throws IOException {
    String known = TwoCustomers.account("scheduler", "").getString("token");
    String fresh = TwoCustomers.account("scheduler", "").getString("token");
    status(200, get("127.0.0.5", known));
    for (int i = 0; i < 4; i++) {
      status(401, get("127.0.0.5", "guess-%04d-of-many".formatted(i * 1234)));
    }
    String locked = get("127.0.0.5", "another-guess");
    status(429, locked);
    assertTrue(locked.toLowerCase().contains("\nretry-after: 10"), locked);
    assertTrue(locked.contains("urn:coldround:problem:too-many-guesses"), locked);
    // a right guess is not even looked at, nor is one typed into the page
    status(429, get("127.0.0.5", fresh));
    String page = enter("127.0.0.5", fresh);
    status(429, page);
    assertTrue(page.contains("then try again"), page);
    status(200, get("127.0.0.5", known));
    status(200, get("127.0.0.6", fresh));
  }

  @Test
  void thePageCountsGuessesTooAndTheBeginningTellsWhoComesFromElsewhere() throws IOException {
    for (int i = 0; i < 4; i++) {
      status(401, enter("127.0.1." + i, "same-beginning-" + i));
    }
    status(429, enter("127.0.1.9", "same-beginning-9"));
    status(401, enter("127.0.1.9", "other-beginning-9"));
  }

  @Test
  void anAccountThatCallsTooOftenIsToldWhenAndOthersAreNotHurt() {
    String greedy = TwoCustomers.account("scheduler", "").getString("token");
    String other = TwoCustomers.account("scheduler", "").getString("token");
    Response last;
    int calls = 0;
    do {
      last = given().auth().preemptive().oauth2(greedy).get("/api/v1/refrigerants");
      calls++;
    } while (last.statusCode() == 200 && calls < 500);
    assertTrue(calls > 60, "calls " + calls);
    last.then()
        .statusCode(429)
        .contentType("application/problem+json")
        .body("type", equalTo("urn:coldround:problem:too-many-calls"))
        .header("Retry-After", equalTo("1"));
    given().auth().preemptive().oauth2(other).get("/api/v1/refrigerants").then().statusCode(200);
  }

  /**
   * Calls whose sender has stopped in the middle of the body. One that another call was counted
   * before is refused: it is sent again.
   */
  private final class HalfSent implements AutoCloseable {

    private final byte[] call;
    private final Socket[] open;

    HalfSent(int calls, String token, String path, String type) throws IOException {
      String head = "POST %s HTTP/1.1\r\nHost: localhost\r\nContent-Type: %s\r\n";
      String body = "Content-Length: 1000\r\nAuthorization: Bearer %s\r\n\r\ncustomer,na";
      call = (head + body).formatted(path, type, token).getBytes(StandardCharsets.UTF_8);
      open = new Socket[calls];
      sendAgain();
    }

    void sendAgain() throws IOException {
      for (int i = 0; i < open.length; i++) {
        if (open[i] == null || open[i].getInputStream().available() > 0) {
          if (open[i] != null) {
            open[i].close();
          }
          open[i] = new Socket(service.getHost(), service.getPort());
          open[i].getOutputStream().write(call);
        }
      }
    }

    @Override
    public void close() throws IOException {
      for (Socket socket : open) {
        socket.close();
      }
    }
  }

  @Test
  void oneWhoHasADearCallUnderWayIsToldToWaitAndOthersAreNotHurt() throws Exception {
    String dear = TwoCustomers.account("planner", "").getString("token");
    String other = TwoCustomers.account("planner", "").getString("token");
    try (HalfSent held = new HalfSent(1, dear, "/api/v1/scoring/trial", "application/json")) {
      export(dear, 429, held::sendAgain);
      String told = ask(dear, "/api/v1/exports/customers.csv");
      assertTrue(told.contains("urn:coldround:problem:too-many-calls"), told);
      assertTrue(told.toLowerCase().contains("\nretry-after: 1"), told);
      assertTrue(told.contains("that cost much are under way"), told);
      // what costs little goes on, and so do the dear calls of others
      assertEquals(200, status(dear));
      export(other, 200, () -> {});
    }
    export(dear, 200, () -> {});
  }

  private String ask(String token, String path) throws IOException {
    return from("127.0.0.7", "GET " + path + " HTTP/1.1\r\nAuthorization: Bearer " + token, "");
  }

  private interface Meanwhile {
    void happens() throws IOException;
  }

  /** Asks every 1.2 s, which is less than the account may, until it is answered so. */
  private void export(String token, int wanted, Meanwhile meanwhile) throws Exception {
    long end = System.nanoTime() + 30_000_000_000L;
    String answer = ask(token, "/api/v1/exports/customers.csv");
    while (!answer.startsWith("HTTP/1.1 " + wanted) && System.nanoTime() < end) {
      Thread.sleep(1200);
      meanwhile.happens();
      answer = ask(token, "/api/v1/exports/customers.csv");
    }
    status(wanted, answer);
  }

  private static int status(String token) {
    return given().auth().preemptive().oauth2(token).get("/api/v1/refrigerants").statusCode();
  }

  /** The same for a call that costs little. */
  private static void until(String token, int wanted, Meanwhile meanwhile) throws Exception {
    long end = System.nanoTime() + 30_000_000_000L;
    int status = status(token);
    while (status != wanted && System.nanoTime() < end) {
      Thread.sleep(1200);
      meanwhile.happens();
      status = status(token);
    }
    assertEquals(wanted, status);
  }

  @Test
  void oneWhoSendsSlowlyKeepsHisOwnCallsWaitingAndNobodyElses() throws Exception {
    String slow = TwoCustomers.account("planner", "").getString("token");
    List<Long> millis = new ArrayList<>();
    try (HalfSent held = new HalfSent(8, slow, "/api/v1/imports/customers", "text/csv")) {
      until(slow, 429, held::sendAgain);
      for (int i = 0; i < 2; i++) {
        String other = TwoCustomers.account("scheduler", "").getString("token");
        for (int call = 0; call < 50; call++) {
          long begun = System.nanoTime();
          assertEquals(200, status(other));
          millis.add((System.nanoTime() - begun) / 1_000_000);
        }
      }
    }
    millis.sort(null);
    assertTrue(millis.get(98) < 2000, "99 of 100 calls of others within " + millis.get(98) + " ms");
    // nobody counted these out; that their connection is gone is seen when it matters
    until(slow, 200, () -> {});
  }

  @Test
  void oneWhoDoesNotReadKeepsOneDearCallAndNobodyElses() throws Exception {
    fleet();
    String slow = TwoCustomers.account("planner", "").getString("token");
    try (Socket socket = new Socket()) {
      socket.setReceiveBufferSize(4096);
      socket.connect(new java.net.InetSocketAddress(service.getHost(), service.getPort()));
      String call =
          "GET /api/v1/exports/customers.csv HTTP/1.1\r\nHost: localhost\r\nAuthorization: Bearer "
              + slow
              + "\r\n\r\n";
      // asked for again and again on one connection, and none of the answers is read
      socket.getOutputStream().write(call.repeat(40).getBytes(StandardCharsets.UTF_8));
      String other = TwoCustomers.account("planner", "").getString("token");
      for (int i = 0; i < 20; i++) {
        long begun = System.nanoTime();
        given()
            .auth()
            .preemptive()
            .oauth2(other)
            .get("/api/v1/exports/units.csv")
            .then()
            .statusCode(200);
        assertTrue(System.nanoTime() - begun < 2_000_000_000L, "another waited for who reads not");
      }
    }
  }

  @Test
  void oneWhoHangsUpOnADearCallKeepsItUntilItsWorkHasEnded() throws Exception {
    String dear = TwoCustomers.account("planner", "").getString("token");
    WaitingFleetSize size = new WaitingFleetSize();
    try (Socket socket = new Socket(service.getHost(), service.getPort())) {
      String call =
          "GET /api/v1/upkeep/backtest?customer=C1 HTTP/1.1\r\nHost: localhost\r\n"
              + "Authorization: Bearer "
              + dear
              + "\r\n\r\n";
      socket.getOutputStream().write(call.getBytes(StandardCharsets.UTF_8));
      size.untilAsked();
    }
    // often enough that it has been seen that the connection is gone
    for (int i = 0; i < 20; i++) {
      status(429, ask(dear, "/api/v1/exports/customers.csv"));
    }
    size.tell();
    export(dear, 200, () -> {});
  }

  private static void fleet() {
    send("customer,name\nC1,One\nC2,Two\n").then().statusCode(200);
    asPlanner()
        .contentType("text/csv")
        .body("customer,site,name\nC1,S,Dock\nC2,S,Dock\n")
        .post("/api/v1/imports/sites")
        .then()
        .statusCode(200);
    asPlanner()
        .contentType("text/csv")
        .body("customer,site,unit,kind\nC1,S,U1,chiller\nC1,S,U2,chiller\nC2,S,U1,chiller\n")
        .post("/api/v1/imports/units")
        .then()
        .statusCode(200);
  }

  @Test
  void callsThatWorkThroughTheWholeFleetSayHowToAskForLess() {
    fleet();
    asPlanner()
        .get("/api/v1/upkeep/backtest")
        .then()
        .statusCode(413)
        .contentType("application/problem+json")
        .body("type", equalTo("urn:coldround:problem:too-many-units"))
        .body("errors[0].field", equalTo("customer"))
        .body("detail", containsString("3 units"))
        .body("detail", containsString("Name one customer"));
    asPlanner().get("/api/v1/upkeep/backtest?customer=C1").then().statusCode(200);
    asPlanner()
        .contentType("application/json")
        .body("{\"skipCleanings\": true}")
        .post("/api/v1/upkeep/what-if")
        .then()
        .statusCode(413);
    asPlanner()
        .contentType("application/json")
        .body(
            "{\"weights\": {\"age\": 40, \"refrigerant\": 20, \"coil\": 20, \"repeat-faults\":"
                + " 20}}")
        .post("/api/v1/scoring/trial")
        .then()
        .statusCode(413);
  }

  @Test
  void aFileHasSoManyRowsAndBytesAndNoMore() {
    String rows = "customer,name\n" + "L1,One\nL2,Two\nL3,Three\nL4,Four\nL5,Five\n";
    send(rows).then().statusCode(200).body("rows.created", equalTo(5));
    send(rows.replace("L", "M") + "M6,Six\n")
        .then()
        .statusCode(413)
        .body("type", equalTo("urn:coldround:problem:too-many-rows"))
        .body("detail", containsString("At most 5 rows"));
    asPlanner()
        .get("/api/v1/exports/customers.csv")
        .then()
        .body(org.hamcrest.Matchers.not(containsString("M1")));
    send("customer,name\nB1," + "long ".repeat(500) + "\n").then().statusCode(413);
  }

  private static Response send(String text) {
    return asPlanner().contentType("text/csv").body(text).post("/api/v1/imports/customers");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/api/v1/visits",
        "/api/v1/rounds",
        "/api/v1/replacement-plans",
        "/api/v1/profiles",
        "/api/v1/accounts"
      })
  void jsonIsNeitherDeepNorLong(String address) {
    String deep = "{\"a\":" + "[".repeat(200) + "]".repeat(200) + "}";
    int status = asPlanner().contentType("application/json").body(deep).post(address).statusCode();
    assertEquals(400, status);
    String longest = "{\"a\": \"" + "x".repeat(1_100_000) + "\"}";
    asPlanner()
        .contentType("application/json")
        .body(longest)
        .post(address)
        .then()
        .statusCode(413)
        .contentType("application/problem+json");
  }
}
