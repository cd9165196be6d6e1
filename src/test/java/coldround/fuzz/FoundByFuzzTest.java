package coldround.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.http.Parameters;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Requests that once were answered by a fault of the service, each as small as it could be made.
 */
@QuarkusTest
class FoundByFuzzTest {

  private static final byte[] NOTHING = null;
  private static final int SAVED_AT_ONCE = 4;

  private static Wire.Answer send(String method, String address, String body, String... more)
      throws IOException {
    byte[] bytes = body == null ? null : body.getBytes(StandardCharsets.UTF_8);
    return send(method, address, bytes, more);
  }

  private static Wire.Answer send(String method, String address, byte[] bytes, String... more)
      throws IOException {
    List<String> headers = new ArrayList<>(List.of(more));
    headers.add("Host: localhost");
    headers.add("Authorization: Bearer " + Api.TOKEN);
    if (headers.stream().noneMatch(header -> header.startsWith("Content-Type"))) {
      headers.add("Content-Type: application/json");
    }
    try (Wire wire = new Wire("localhost", RestAssured.port)) {
      return wire.send(new Shot(0, "", method, address, headers, bytes));
    }
  }

  private static void isRefused(Wire.Answer answer, String says) {
    assertEquals(400, answer.status(), answer.text());
    assertEquals("application/problem+json", answer.headers().get("content-type"));
    assertTrue(answer.text().contains(says), answer.text());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/api/v1/subscriptions/%00",
        "/api/v1/accounts/a%00b",
        "/api/v1/profiles/%00",
        "/api/v1/tasks/%00/booking",
        "/api/v1/rounds/%00",
        "/api/v1/units?customer=%00",
        "/api/v1/tasks?unit=a%00"
      })
  void noAddressHoldsNul(String address) throws IOException {
    isRefused(send("GET", address, NOTHING), "NUL");
  }

  @Test
  void noCursorHoldsNul() throws IOException {
    String cursor = Parameters.cursor("\0");
    for (String list : List.of("subscriptions", "accounts", "units", "tasks", "audit")) {
      isRefused(send("GET", "/api/v1/" + list + "?after=" + cursor, NOTHING), "after");
    }
  }

  /** One store keeps NUL, the other does not: neither gets it, whoever reads the body. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "POST | accounts | {'name': 'a\\u0000b', 'role': 'scheduler'} | /name",
        "POST | visits | {'unit': 'u', 'visit': '1', 'findings': {'door': '\\u0000'}} |"
            + " /findings/door",
        "POST | visits | {'unit': 'u', 'visit': '1', 'work': ['a', '\\u0000']} | /work/1",
        "POST | rounds | {'seconds': 1, 'daysOff': {'no\\u0000body': []}} |"
            + " /daysOff/no\\\\u0000body",
        "POST | profiles | {'name': 'p', 'meaning': '\\u0000', 'dates': 'month-day-year'} |"
            + " /meaning",
        "POST | subscriptions | {'url': 'http://127.0.0.1:9/', 'types': ['\\u0000']} | /types/0",
        "POST | replacement-plans | {'customers': ['\\u0000']} | /customers/0",
        "PUT | tasks/1/booking | {'reference': '\\u0000'} | /reference",
        "POST | rounds | '\\u0000' | /",
        "PUT | tasks/1/booking | {'reference': 'a\\ud83eb'} | /reference",
        "POST | visits | {'unit': 'u', 'visit': '1', 'work': ['\\ud83e\\udd76', '\\udd76']} | /work/1"
      })
  void noBodyHoldsNulOrHalfACharacter(String method, String call, String body, String field)
      throws IOException {
    String json = body.replace('\'', '"');
    isRefused(send(method, "/api/v1/" + call, json), "\"field\":\"" + field + "\"");
    byte[] wide = json.getBytes(StandardCharsets.UTF_16BE);
    isRefused(send(method, "/api/v1/" + call, wide), "\"field\":\"" + field + "\"");
  }

  @ParameterizedTest
  @CsvSource({
    "accounts, name=a%00b&role=scheduler, 400",
    "accounts, name=a&role=scheduler&login=b%00, 400",
    "replacement, customer=A&customer=%00, 400",
    "units/UNIT/visits, number=7&date=2026-05-12&note=%00, 400",
    "units/UNIT/visits, number=%00&date=2026-05-12, 400",
    "rounds, from=2026-05-01%00, 400",
    "enter, token=%00, 401"
  })
  void noFormHoldsNul(String page, String form, int status) throws IOException {
    imported("customers", "customer,name\nNULF,Forms\n");
    imported("sites", "customer,site\nNULF,S\n");
    imported("units", "customer,site,unit,kind\nNULF,S,U,ice-machine\n");
    String unit =
        Api.asPlanner().get("/api/v1/units?customer=NULF").path("items[0].unit.id").toString();
    Wire.Answer answer =
        send(
            "POST",
            "/" + page.replace("UNIT", unit),
            form,
            "Content-Type: application/x-www-form-urlencoded");
    assertEquals(status, answer.status(), answer.text());
    assertTrue(status == 401 || answer.text().contains("NUL") || page.equals("rounds"));
  }

  private static void imported(String kind, String csv) throws IOException {
    Wire.Answer answer = send("POST", "/api/v1/imports/" + kind, csv, "Content-Type: text/csv");
    assertTrue(answer.text().contains("\"rejected\":0"), answer.text());
  }

  /** A body that a call does not take is not read, whatever it says it is. */
  @ParameterizedTest
  @ValueSource(strings = {"GET refrigerants", "GET accounts/1", "POST rounds/1/stop"})
  void aBodyThatNobodyWantsIsNotRead(String call) throws IOException {
    String[] parts = call.split(" ");
    Wire.Answer answer =
        send(
            parts[0],
            "/api/v1/" + parts[1],
            "[[[",
            "Content-Type: multipart/form-data; boundary=x");
    assertTrue(answer.status() < 500, answer.text());
  }

  @Test
  void noRowOfAFileHoldsNul() throws IOException {
    String file = "customer,name\nNUL,a\0b\n";
    Wire.Answer answer = send("POST", "/api/v1/imports/customers", file, "Content-Type: text/csv");
    assertTrue(answer.text().contains("\"rejected\":1"), answer.text());
  }

  @Test
  void daysOffThatAreNoListAreToldSo() throws IOException {
    String body = "{\"seconds\": 1, \"daysOff\": {\"nobody\": {\"2026-05-05\": 1}}}";
    isRefused(send("POST", "/api/v1/rounds", body), "is a list of days");
  }

  @Test
  void aKindOfChangeThatIsNullIsToldSo() throws IOException {
    String body = "{\"url\": \"http://127.0.0.1:9/\", \"types\": [null]}";
    isRefused(send("POST", "/api/v1/subscriptions", body), "/types");
  }

  @ParameterizedTest
  @ValueSource(strings = {"upkeep/backtest?until=", "tasks?from="})
  void aDayOfNoYearThatIsMeantIsToldSo(String call) throws IOException {
    for (String day : List.of("-999999999-01-01", "-0001-01-01", "%2B999999999-12-31")) {
      isRefused(send("GET", "/api/v1/" + call + day, NOTHING), "is a day such as");
    }
  }

  /** Some took seconds to be told that there is nothing at them. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "rounds/%s",
        "rounds/%s.csv",
        "exports/%s",
        "replacement-plans/%s",
        "units/1/visits/%s"
      })
  void aLongAddressIsAnsweredSoon(String call) throws IOException {
    String address = "/api/v1/" + call.formatted("x".repeat(3900));
    long best = Long.MAX_VALUE;
    for (int i = 0; i < 3; i++) {
      Wire.Answer answer = send("GET", address, NOTHING);
      assertEquals(404, answer.status(), answer.text());
      assertEquals("application/problem+json", answer.headers().get("content-type"));
      best = Math.min(best, answer.millis());
    }
    assertTrue(best < 500, best + " ms");
  }

  /** RFC 9110, 12.5.1: what cannot be honoured may be disregarded. */
  @ParameterizedTest
  @ValueSource(strings = {"a/b/c", "", ",;q=", "x", "text/html, a/b/c", "*/*;q=x"})
  void anAcceptThatNamesNoMediaTypeIsDisregarded(String accept) throws IOException {
    String profile = "{\"name\": \"accept\", \"meaning\": \"m\", \"dates\": \"month-day-year\"}";
    Wire.Answer answer = send("POST", "/api/v1/profiles", profile, "Accept: " + accept);
    assertTrue(answer.status() < 300, answer.text());
    Wire.Answer list = send("GET", "/api/v1/units?limit=1", NOTHING, "Accept: " + accept);
    assertEquals(200, list.status(), list.text());
  }

  /** Each finds none of that name, and each would make it. */
  @Test
  void whoSavesTheSameAtOnceIsNoFault() throws Exception {
    ExecutorService callers = Executors.newFixedThreadPool(SAVED_AT_ONCE);
    try {
      for (int i = 0; i < 10; i++) {
        String profile = "{\"name\": \"at-once-%d\", \"meaning\": \"m\"}".formatted(i);
        Callable<Integer> call = () -> send("POST", "/api/v1/profiles", profile).status();
        List<Integer> answers = new ArrayList<>();
        for (Future<Integer> each : callers.invokeAll(Collections.nCopies(SAVED_AT_ONCE, call))) {
          answers.add(each.get());
        }
        Collections.sort(answers);
        List<Integer> wanted = new ArrayList<>(Collections.nCopies(SAVED_AT_ONCE, 200));
        wanted.set(SAVED_AT_ONCE - 1, 201);
        assertEquals(wanted, answers);
      }
    } finally {
      callers.shutdownNow();
    }
  }
}
