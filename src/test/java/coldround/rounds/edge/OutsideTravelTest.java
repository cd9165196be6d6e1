package coldround.rounds.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.DemoLists;
import coldround.DemoServed;
import coldround.fleet.FleetWiping;
import coldround.rounds.Draft;
import coldround.rounds.Leg;
import coldround.rounds.Note;
import coldround.rounds.Order;
import coldround.rounds.Place;
import coldround.rounds.RoundPlan;
import coldround.rounds.RoundRules;
import coldround.rounds.Travel;
import coldround.rounds.search.Limit;
import coldround.rounds.search.SearchOptions;
import coldround.rounds.search.engine.RuinAndRecreate;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A small server of travel times that is good, slow, wrong or down. */
@QuarkusTest
@TestProfile(DemoServed.class)
class OutsideTravelTest {

  private static final LocalDate MONDAY =
      LocalDate.now().with(TemporalAdjusters.next(DayOfWeek.MONDAY));
  private static final AtomicInteger SERVERS = new AtomicInteger();
  private static boolean fresh;

  @Inject FleetOrder orders;
  @Inject RoundRules rules;
  @Inject FleetWiping wiping;
  @Inject KeptDrives kept;
  @Inject ObjectMapper json;

  private final AtomicInteger calls = new AtomicInteger();
  private final CountDownLatch over = new CountDownLatch(1);
  private HttpServer server;
  private volatile String manner = "good";

  @BeforeEach
  void aServer() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setExecutor(Executors.newCachedThreadPool());
    server.createContext("/", this::answer);
    server.start();
  }

  @BeforeEach
  void theDemoFleet() throws IOException {
    if (!fresh) {
      DemoLists.afresh(wiping);
      fresh = true;
    }
  }

  @AfterEach
  void noServer() {
    over.countDown();
    server.stop(0);
  }

  private void answer(HttpExchange call) throws IOException {
    calls.incrementAndGet();
    String query = call.getRequestURI().getQuery();
    int rows = query.split("&")[0].split("=")[1].split(";").length;
    int columns = query.split("&")[1].split("=")[1].split(";").length;
    if (manner.equals("slow")) {
      hold();
    }
    if (manner.equals("redirect")) {
      call.getResponseHeaders().add("Location", "/elsewhere?" + query);
    }
    byte[] body = body(rows, columns).getBytes(StandardCharsets.UTF_8);
    int status = Map.of("broken", 500, "redirect", 302).getOrDefault(manner, 200);
    call.sendResponseHeaders(status, body.length);
    try (OutputStream out = call.getResponseBody()) {
      if (manner.equals("dripping")) {
        out.write(body, 0, 1);
        out.flush();
        hold();
      } else {
        out.write(body);
      }
    }
  }

  private void hold() {
    try {
      over.await(30, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Each drive takes a quarter of an hour and 16 km. */
  private String body(int rows, int columns) {
    String value =
        Map.of("negative", "-1", "text", "\"soon\"", "no way", "null").getOrDefault(manner, "900");
    return switch (manner) {
      case "no JSON" -> "<html>hello</html>";
      case "something else" -> "{\"answer\": 42}";
      case "too few" -> "{\"durations\": " + matrix(rows, columns - 1, value) + "}";
      default ->
          "{\"durations\": %s, \"distances\": %s}"
              .formatted(matrix(rows, columns, value), matrix(rows, columns, "16000"));
    };
  }

  private static String matrix(int rows, int columns, String value) {
    String row =
        IntStream.range(0, columns).mapToObj(i -> value).collect(Collectors.joining(",", "[", "]"));
    return IntStream.range(0, rows).mapToObj(i -> row).collect(Collectors.joining(",", "[", "]"));
  }

  /** The name in the address makes each source one that nothing is kept of. */
  private DurationsSource source() {
    String address =
        "http://127.0.0.1:%d/%d/{coordinates}?sources={sources}&destinations={destinations}"
            .formatted(server.getAddress().getPort(), SERVERS.incrementAndGet());
    return source(address);
  }

  private DurationsSource source(String address) {
    return new DurationsSource(json, Optional.of(address), "/durations", "/distances", 1);
  }

  private AskedDrives drives(DurationsSource source, long millis) {
    return new AskedDrives(
        source, kept, Clock.systemUTC(), 10, Duration.ofMillis(millis), Duration.ofDays(30));
  }

  private Order order() {
    RoundRequest asked =
        new RoundRequest(MONDAY, MONDAY.plusDays(4), List.of(), List.of(), 1, 1, Map.of());
    return orders.gather(
        asked, MONDAY.minusDays(1).atStartOfDay().toInstant(ZoneOffset.UTC), List.of());
  }

  private RoundPlan plan(Order order, Travel travel) {
    Draft draft = Draft.of(order, rules, orders.prices(), travel);
    SearchOptions options = SearchOptions.of(1, Limit.iterations(500));
    return draft.answer(new RuinAndRecreate().search(draft.problem(), options));
  }

  private static List<Leg> legs(RoundPlan plan) {
    return plan.rounds().stream()
        .flatMap(round -> round.stops().stream())
        .map(RoundPlan.Stop::leg)
        .filter(leg -> leg.minutes() > 0)
        .toList();
  }

  private static List<String> codes(RoundPlan plan) {
    return plan.notes().stream().map(Note::code).toList();
  }

  @Test
  void whatTheSourceTellsIsDrivenAndAskedOnce() {
    Order order = order();
    DurationsSource source = source();
    Travel travel = new Travel(rules.roads());
    drives(source, 60_000).fill(travel, order);
    int asked = calls.get();
    assertTrue(asked > 0);
    RoundPlan plan = plan(order, travel);
    assertFalse(legs(plan).isEmpty());
    legs(plan).forEach(leg -> assertEquals(new Leg(15, 16, false), leg));
    assertFalse(codes(plan).contains("travel-times-estimated"), codes(plan).toString());
    Travel again = new Travel(rules.roads());
    drives(source, 60_000).fill(again, order);
    assertEquals(asked, calls.get(), "kept drives are not asked again");
    List<Place> places = order.places();
    assertEquals(15, again.between(places.get(0), places.get(1)).minutes());
  }

  @Test
  void anEmergencyIsPlacedByWhatIsKeptAndNobodyIsAsked() {
    Order order = order();
    DurationsSource source = source();
    drives(source, 60_000).recall(new Travel(rules.roads()), order);
    assertEquals(0, calls.get());
  }

  @Test
  void anImportedTimeGoesBeforeTheSource() {
    Order order = order();
    Place from = order.places().get(0);
    Place to = order.places().get(1);
    Travel travel = new Travel(rules.roads());
    travel.put(from.road(), to.road(), 7, 5.0);
    drives(source(), 60_000).fill(travel, order);
    assertEquals(7, travel.between(from, to).minutes());
    assertEquals(15, travel.between(to, from).minutes());
  }

  @ParameterizedTest
  @CsvSource({
    "slow, did not answer within",
    "dripping, did not answer within",
    "broken, status 500",
    "redirect, status 302",
    "no JSON, no JSON",
    "something else, rows at /durations",
    "too few, values",
    "negative, cannot be",
    "text, cannot be",
    "down, cannot be reached"
  })
  void aSourceThatFailsIsNamedAndTheRestIsEstimated(String how, String why) {
    manner = how;
    DurationsSource source = source();
    if (how.equals("down")) {
      server.stop(0);
    }
    Order order = order();
    Travel travel = new Travel(rules.roads());
    boolean late = how.equals("slow") || how.equals("dripping");
    drives(source, late ? 400 : 20_000).fill(travel, order);
    RoundPlan plan = plan(order, travel);
    Note note =
        plan.notes().stream()
            .filter(each -> each.code().equals("travel-source-failed"))
            .findFirst()
            .orElseThrow();
    assertTrue(note.message().contains(why), note.message());
    assertFalse(legs(plan).isEmpty());
    legs(plan).forEach(leg -> assertTrue(leg.estimated()));
    assertTrue(codes(plan).contains("travel-times-estimated"), codes(plan).toString());
  }

  @Test
  void aWayThatTheSourceDoesNotKnowIsEstimated() {
    manner = "no way";
    Order order = order();
    Travel travel = new Travel(rules.roads());
    drives(source(), 20_000).fill(travel, order);
    List<Place> places = order.places();
    assertTrue(travel.between(places.get(0), places.get(1)).estimated());
  }

  @ParameterizedTest
  @CsvSource({
    "ftp://example.org/{coordinates}",
    "example.org/{coordinates}",
    "https://example.org/table",
    "https://exa mple.org/{coordinates}"
  })
  void anAddressThatCannotBeAskedStopsTheStart(String address) {
    DurationsSource source = source(address);
    String message =
        assertThrows(IllegalStateException.class, () -> source.check(null)).getMessage();
    assertTrue(message.startsWith("coldround.travel.url"), message);
  }
}
