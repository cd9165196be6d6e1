package coldround.feed.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.feed.Change;
import coldround.feed.Cursor;
import coldround.feed.Outbox;
import coldround.feed.PackedChanges;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.hibernate.Session;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A scheduling system follows the feed while many write to it. */
@QuarkusTest
class FeedTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int WRITERS = 8;

  // for 102,400 changes: -Dcoldround.test.transactions=200 -Dcoldround.test.changes=80
  private static final int TRANSACTIONS = Integer.getInteger("coldround.test.transactions", 80);
  private static final int CHANGES = Integer.getInteger("coldround.test.changes", 10);

  private static final Map<String, String> RESERVED =
      Map.of(
          "H2",
          "select identity_cache from information_schema.columns"
              + " where table_name = 'feed_event' and column_name = 'id'",
          "PostgreSQL",
          "select cache_size from pg_sequences where sequencename = 'feed_event_id_seq'");

  @Inject EntityManager entities;
  @Inject Outbox outbox;
  @Inject StoredFeed feed;
  @TestHTTPResource URL service;

  private record Numbered(int number, boolean rolledBack) {}

  /** Marks the changes of one test. */
  private final String run = UUID.randomUUID().toString();

  @Test
  void numbersAreReservedAheadOnlyWhereAllConnectionsShareThem() {
    Object[] reserved = reserved();
    assertEquals(reserved[0].equals("H2") ? 10_000L : 1L, reserved[1], (String) reserved[0]);
  }

  /** The database and how many numbers of changes it reserves at once. */
  private Object[] reserved() {
    return QuarkusTransaction.requiringNew()
        .call(
            () ->
                entities
                    .unwrap(Session.class)
                    .doReturningWork(
                        connection -> {
                          String name = connection.getMetaData().getDatabaseProductName();
                          try (Statement ask = connection.createStatement();
                              ResultSet told = ask.executeQuery(RESERVED.get(name))) {
                            assertTrue(told.next());
                            return new Object[] {name, told.getLong(1)};
                          }
                        }));
  }

  @Test
  void noChangeIsMissedDoubledOrOutOfOrderWhileEightWrite() throws Exception {
    String start = end();
    ExecutorService threads = Executors.newFixedThreadPool(WRITERS + 2);
    List<Future<?>> writers = new ArrayList<>();
    for (int i = 0; i < WRITERS; i++) {
      int writer = i;
      writers.add(threads.submit(() -> write(writer)));
    }
    Future<List<Map<String, Object>>> quick = threads.submit(() -> follow(start, 500));
    Future<List<Map<String, Object>>> slow = threads.submit(() -> follow(start, 37));
    for (Future<?> writer : writers) {
      writer.get(5, TimeUnit.MINUTES);
    }
    List<Map<String, Object>> seen = quick.get(5, TimeUnit.MINUTES);
    assertEquals(ids(seen), ids(slow.get(5, TimeUnit.MINUTES)), "both readers saw one order");
    threads.shutdown();
    assertEquals(WRITERS * committed(), seen.size());
    assertEquals(seen.size(), new HashSet<>(ids(seen)).size(), "no id twice");
    assertInOrderOfEachWriter(seen);
    assertEquals(ids(seen), ids(readAll(start, 211)), "a later reader sees the same order");
  }

  /** Every fifth transaction is rolled back; some linger before they commit. */
  private static int committed() {
    return (TRANSACTIONS - TRANSACTIONS / 5) * CHANGES;
  }

  private void write(int writer) {
    Random random = new Random(writer);
    int number = 0;
    for (int i = 0; i < TRANSACTIONS; i++) {
      boolean rolledBack = i % 5 == 4;
      int first = number;
      List<Change> changes =
          IntStream.range(0, CHANGES)
              .mapToObj(n -> change("w" + writer, new Numbered(first + n, rolledBack)))
              .toList();
      long linger = random.nextInt(4) == 0 ? random.nextInt(20) : 0;
      if (rolledBack) {
        assertThrows(IllegalStateException.class, () -> add(changes, linger, true));
      } else {
        add(changes, linger, false);
        number += CHANGES;
      }
    }
  }

  private Change change(String subject, Object data) {
    return new Change("coldround.test." + run, subject, data);
  }

  private void add(List<Change> changes, long lingerMs, boolean fail) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              outbox.add(changes);
              sleep(lingerMs);
              if (fail) {
                throw new IllegalStateException("to be rolled back");
              }
            });
  }

  private static void sleep(long ms) {
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Polls until all that is to come has come, or for long enough that it never will. */
  private List<Map<String, Object>> follow(String start, int limit) {
    List<Map<String, Object>> seen = new ArrayList<>();
    String cursor = start;
    Instant end = Instant.now().plusSeconds(240);
    while (seen.size() < WRITERS * committed() && Instant.now().isBefore(end)) {
      Page page = page(cursor, limit);
      own(page).forEach(seen::add);
      cursor = page.next();
    }
    return seen;
  }

  private List<Map<String, Object>> readAll(String start, int limit) {
    List<Map<String, Object>> seen = new ArrayList<>();
    String cursor = start;
    Page page;
    do {
      page = page(cursor, limit);
      own(page).forEach(seen::add);
      cursor = page.next();
    } while (!page.items().isEmpty());
    return seen;
  }

  private record Page(List<Map<String, Object>> items, String next) {}

  /** Read by a plain client: hundreds of thousands of events come this way. */
  private static Page page(String cursor, int limit) {
    byte[] body =
        asPlanner()
            .queryParam("after", cursor)
            .queryParam("limit", limit)
            .get("/api/v1/feed")
            .then()
            .statusCode(200)
            .extract()
            .asByteArray();
    try {
      return JSON.readValue(body, Page.class);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<Map<String, Object>> own(Page page) {
    return page.items().stream().filter(item -> item.get("type").toString().endsWith(run)).toList();
  }

  private static List<Object> ids(List<Map<String, Object>> changes) {
    return changes.stream().map(change -> change.get("id")).toList();
  }

  private static void assertInOrderOfEachWriter(List<Map<String, Object>> seen) {
    Map<Object, Integer> next = new HashMap<>();
    for (Map<String, Object> change : seen) {
      Map<?, ?> data = (Map<?, ?>) change.get("data");
      int expected = next.merge(change.get("subject"), 1, Integer::sum) - 1;
      assertEquals(expected, data.get("number"), "next of " + change.get("subject"));
      assertEquals(false, data.get("rolledBack"));
    }
    assertEquals(WRITERS, next.size());
  }

  private String end() {
    List<String> cursors = new ArrayList<>(List.of(""));
    Page page;
    do {
      page = page(cursors.get(cursors.size() - 1), 500);
      cursors.add(page.next());
    } while (!page.items().isEmpty());
    return cursors.get(cursors.size() - 1);
  }

  @Test
  void changesThatStandInOneRowAreReadFromAnyPlaceByAsManyAsAreWanted() {
    String start = end();
    int many = PackedChanges.MOST + 3;
    add(IntStream.range(0, many).mapToObj(n -> change("s" + n, n)).toList(), 0, false);
    add(List.of(change("alone", "x")), 0, false);
    List<Map<String, Object>> all = readAll(start, 500);
    List<String> subjects =
        new ArrayList<>(IntStream.range(0, many).mapToObj(n -> "s" + n).toList());
    subjects.add("alone");
    assertEquals(subjects, all.stream().map(change -> change.get("subject")).toList());
    assertEquals(all.size(), new HashSet<>(ids(all)).size(), "no id twice");
    for (int limit : new int[] {1, 7, PackedChanges.MOST, PackedChanges.MOST + 1, many}) {
      assertEquals(all, readAll(start, limit), "by " + limit);
    }
  }

  @Test
  void whatIsRolledBackIsNotInTheFeed() {
    String start = end();
    assertThrows(IllegalStateException.class, () -> add(List.of(change("gone", "x")), 0, true));
    add(List.of(change("kept", "x")), 0, false);
    List<Map<String, Object>> seen = readAll(start, 500);
    assertEquals(List.of("kept"), seen.stream().map(change -> change.get("subject")).toList());
  }

  // attributes that CloudEvents 1.0 requires, and those of its optional ones that are used
  @Test
  void aChangeIsACloudEvent() {
    String start = end();
    add(List.of(change("s", Map.of("a", 1))), 0, false);
    asPlanner()
        .queryParam("after", start)
        .get("/api/v1/feed")
        .then()
        .body(
            "items[0].specversion", equalTo("1.0"),
            "items[0].id", not(equalTo("")),
            "items[0].source", equalTo("/coldround"),
            "items[0].type", equalTo("coldround.test." + run),
            "items[0].subject", equalTo("s"),
            "items[0].time", endsWith("Z"),
            "items[0].datacontenttype", equalTo("application/json"),
            "items[0].data.a", equalTo(1));
  }

  @Test
  void waitingAnswersAsSoonAsThereIsSomething() throws Exception {
    String start = end();
    ExecutorService thread = Executors.newSingleThreadExecutor();
    Future<List<Map<String, Object>>> waiting =
        thread.submit(
            () ->
                asPlanner()
                    .queryParam("after", start)
                    .queryParam("wait", 50)
                    .get("/api/v1/feed")
                    .jsonPath()
                    .getList("items"));
    Thread.sleep(300);
    add(List.of(change("s", "x")), 0, false);
    assertEquals(1, own(new Page(waiting.get(40, TimeUnit.SECONDS), "")).size());
    thread.shutdown();
  }

  @Test
  void oneWhoHangsUpIsWaitedForNoLonger() throws Exception {
    String call =
        ("GET /api/v1/feed?wait=60&after=%s HTTP/1.1\r\nHost: localhost\r\n"
                + "Authorization: Bearer %s\r\n\r\n")
            .formatted(end(), Api.TOKEN);
    long patient = System.nanoTime() + 60_000_000_000L;
    List<Socket> readers = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      Socket reader = new Socket(service.getHost(), service.getPort());
      reader.getOutputStream().write(call.getBytes(StandardCharsets.UTF_8));
      readers.add(reader);
    }
    Receiver.until("all wait", () -> waiting() == readers.size());
    for (Socket reader : readers) {
      reader.close();
    }
    Receiver.until("none does", () -> waiting() == 0);
    assertTrue(System.nanoTime() < patient, "the threads waited to the end");
  }

  /** Threads that look for changes. */
  private static long waiting() {
    return Thread.getAllStackTraces().values().stream()
        .filter(
            stack ->
                Arrays.stream(stack)
                    .anyMatch(
                        frame ->
                            frame.getClassName().equals(FeedResource.class.getName())
                                && frame.getMethodName().equals("look")))
        .count();
  }

  // RFC 9110, section 13.1.2
  @Test
  void aPageThatTheReaderHasIsNotSentAgain() {
    String start = end();
    add(List.of(change("s", "x"), change("s", "y")), 0, false);
    for (int limit : new int[] {1, 50}) {
      String tag =
          asPlanner()
              .queryParam("after", start)
              .queryParam("limit", limit)
              .get("/api/v1/feed")
              .header("ETag");
      for (int i = 0; i < 2; i++) {
        asPlanner()
            .header("If-None-Match", tag)
            .queryParam("after", start)
            .queryParam("limit", limit)
            .get("/api/v1/feed")
            .then()
            .statusCode(304)
            .header("ETag", equalTo(tag));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "after=f1.zzzzzzzzzzzz",
        "after=nonsense",
        "after=f1.",
        "after=f1.-1",
        "after=f1.zzzzzzzzzzzzz",
        "limit=0",
        "limit=501",
        "limit=many",
        "wait=-1",
        "wait=61",
        "wait=long"
      })
  void aReaderThatAsksForNonsenseIsToldWhatIsWrong(String query) {
    asPlanner()
        .get("/api/v1/feed?" + query)
        .then()
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors[0].field", equalTo(query.substring(0, query.indexOf('='))));
  }

  @ParameterizedTest
  @ValueSource(strings = {"after=nonsense", "after=bm9uc2Vuc2U", "limit=0"})
  void aSnapshotIsAskedForAsItGaveItsPages(String query) {
    asPlanner().get("/api/v1/feed/snapshot?" + query).then().statusCode(400);
  }

  @Test
  void aReaderFromTheFutureIsSentToTheSnapshot() {
    String ahead = new Cursor(Cursor.parse(end()).orElseThrow().position() + 1).text();
    asPlanner()
        .queryParam("after", ahead)
        .get("/api/v1/feed")
        .then()
        .statusCode(400)
        .body("detail", containsString("/api/v1/feed/snapshot"));
  }

  @Test
  void aCursorOlderThanWhatIsKeptIsGone() {
    String old = end();
    add(List.of(change("forgotten", "x")), 0, false);
    String kept = end();
    feed.forget(Instant.now().plusSeconds(60));
    add(List.of(change("later", "x")), 0, false);
    asPlanner()
        .queryParam("after", old)
        .get("/api/v1/feed")
        .then()
        .statusCode(410)
        .contentType("application/problem+json")
        .body(
            "type", endsWith("cursor-too-old"),
            "detail", startsWith("Start again from /api/v1/feed/snapshot"));
    List<Map<String, Object>> seen = readAll(kept, 500);
    assertEquals(List.of("later"), seen.stream().map(change -> change.get("subject")).toList());
    assertTrue(own(page("", 500)).stream().noneMatch(c -> c.get("subject").equals("forgotten")));
  }
}
