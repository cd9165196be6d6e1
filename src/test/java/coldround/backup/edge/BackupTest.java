package coldround.backup.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import coldround.Api;
import coldround.EventSchemas;
import coldround.backup.BadBackup;
import coldround.backup.Manifest;
import coldround.backup.edge.StoreCommands.Login;
import coldround.feed.Cursor;
import coldround.feed.EventTypes;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is stored comes back cell by cell on either database, and nothing is overwritten. */
@QuarkusTest
class BackupTest {

  private static final String H2 =
      "jdbc:h2:file:%s/coldround;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH";

  /** As it stands in JSON: NUL, the first half of a character, and a whole one. */
  private static final String ODD = "\\u0000\\uD83E and \\uD83E\\uDDCA";

  @Inject DataSource store;
  @TempDir Path folder;
  private Path file;

  private static StoreCommands inFolder(Path data) {
    return new StoreCommands(
        Optional.of(data),
        place -> new Login(H2.formatted(place.orElseThrow()), "sa", "sa"),
        changed -> fail("changed in the embedded database: " + changed));
  }

  private static StoreCommands inServer(Login login, Consumer<String> told) {
    return new StoreCommands(Optional.empty(), none -> login, told);
  }

  /** A plan that another test has asked for goes on changing until it is made. */
  private void nothingIsPlanned() throws Exception {
    long end = System.nanoTime() + Duration.ofMinutes(2).toNanos();
    String working = "select count(*) from round_plan where state in ('waiting', 'planning')";
    try (Connection connection = store.getConnection();
        Statement statement = connection.createStatement()) {
      long plans = 1;
      while (plans > 0 && System.nanoTime() < end) {
        try (ResultSet count = statement.executeQuery(working)) {
          count.next();
          plans = count.getLong(1);
        }
        Thread.sleep(plans > 0 ? 200 : 0);
      }
      assertEquals(0, plans, "plans in work");
    }
  }

  @BeforeEach
  void aFleetIsBackedUp() throws Exception {
    nothingIsPlanned();
    Api.put("customers", "customer,name,note\nBK,\"Bäcker \"\"K\"\"\",\"two\nlines 🧊\"\n");
    Api.put(
        "sites", "customer,site,latitude,time_zone\nBK,S1,45.123456789012345,America/New_York\n");
    Api.put(
        "units",
        "customer,site,unit,kind,installed,refrigerant,charge [lb]\n"
            + "BK,S1,U1,chiller,2004-02-29,R-404A,38\n");
    Api.put(
        "visits",
        "customer,site,unit,visit,date,ambient [degF],head_pressure [psig],suction_pressure"
            + " [psig],condenser_coil\n"
            + "BK,S1,U1,1,2026-05-12,82,260,41,heavy\n");
    // puts all changes in their order, which else goes on behind the backup
    asPlanner().get("/api/v1/feed/snapshot?limit=1").then().statusCode(200);
    file = folder.resolve("backup.zip");
    Response answer = asPlanner().get("/api/v1/backup");
    answer.then().statusCode(200).contentType("application/zip");
    Files.write(file, answer.asByteArray());
  }

  private static Map<String, String> withoutAudit(Connection connection) throws Exception {
    Map<String, String> rows = StoreRows.of(connection);
    // that a backup was taken is noted behind it
    rows.remove("audit");
    return rows;
  }

  /** All but the one change that says that it was restored. */
  private static Map<String, String> asBackedUp(Connection connection, Manifest manifest)
      throws Exception {
    try (Statement statement = connection.createStatement()) {
      long id;
      try (ResultSet last =
          statement.executeQuery(
              "select * from feed_event order by id desc fetch first row only")) {
        assertTrue(last.next());
        id = last.getLong("id");
        assertEquals(EventTypes.FEED_RESTORED, last.getString("type"));
        assertEquals(id, last.getLong("position"));
        assertTrue(id > manifest.made().toEpochMilli() * 1000, "far ahead: " + id);
        assertTrue(last.getString("data").contains(manifest.made().toString()));
      }
      statement.execute("delete from feed_event where id = " + id);
      statement.execute("update feed_head set position = (select max(position) from feed_event)");
    }
    return withoutAudit(connection);
  }

  private Map<String, String> here() throws Exception {
    try (Connection connection = store.getConnection()) {
      return withoutAudit(connection);
    }
  }

  private static void same(Map<String, String> expected, Map<String, String> found) {
    assertEquals(expected.keySet(), found.keySet());
    expected.forEach((table, rows) -> assertEquals(rows, found.get(table), table));
    assertTrue(expected.get("assessment").contains("score="), "scores are compared");
    assertTrue(expected.get("upkeep_task").contains("due="), "tasks are compared");
    assertTrue(expected.get("account").contains("token_hash="), "accounts are compared");
    assertTrue(expected.get("feed_event").contains("position="), "the feed is compared");
  }

  @Test
  void allRowsComeBackInTheEmbeddedDatabase() throws Exception {
    StoreCommands commands = inFolder(folder.resolve("new"));
    Manifest manifest = commands.restore(file);
    try (Connection connection =
        new Login(H2.formatted(folder.resolve("new")), "sa", "sa").open()) {
      numberingGoesOn(connection, manifest);
      same(here(), asBackedUp(connection, manifest));
    }
  }

  /** Nothing that comes later may take a number that was given before, also behind the backup. */
  private static void numberingGoesOn(Connection connection, Manifest manifest) throws Exception {
    Map<String, Long> next = new TreeMap<>(new Schema(connection).next());
    long change = next.get("feed_event.id");
    assertTrue(change > manifest.made().toEpochMilli() * 1000, "changes: " + change);
    next.put("feed_event.id", manifest.next().get("feed_event.id"));
    assertEquals(manifest.next(), next);
    connection.setAutoCommit(false);
    try (Statement statement = connection.createStatement()) {
      statement.execute(
          "insert into feed_event (type, subject, happened, data) values ('t', 's', now(), '{}')");
      try (ResultSet id = statement.executeQuery("select max(id) from feed_event")) {
        id.next();
        assertEquals(change, id.getLong(1));
      }
    }
    connection.rollback();
    connection.setAutoCommit(true);
  }

  private static String cursor() {
    return asPlanner().get("/api/v1/feed/snapshot?limit=1").jsonPath().getString("cursor");
  }

  /**
   * A reader that had come to the moment of the backup goes on, whoever had read on after it begins
   * anew, however much has been told since.
   */
  @Test
  void aReaderThatKnowsWhatWasUndoneIsSentToTheSnapshot() throws Exception {
    String kept = cursor();
    String undone = new Cursor(Cursor.parse(kept).orElseThrow().position() + 1).text();
    Instant made = Instant.now();
    try (Connection connection = store.getConnection()) {
      FeedRestored.mark(connection, new ObjectMapper(), made, made.plusSeconds(1));
    }
    Api.put("customers", "customer,name\nBK,Renamed\n");
    List<Map<String, Object>> told =
        asPlanner()
            .get("/api/v1/feed?limit=500&after=" + kept)
            .then()
            .statusCode(200)
            .extract()
            .jsonPath()
            .getList("items");
    assertEquals(EventTypes.FEED_RESTORED, told.get(0).get("type"));
    told.forEach(EventSchemas::check);
    for (String wait : List.of("", "&wait=1", "&limit=1")) {
      asPlanner()
          .get("/api/v1/feed?after=" + undone + wait)
          .then()
          .statusCode(410)
          .contentType("application/problem+json")
          .body("type", equalTo("urn:coldround:problem:cursor-undone"))
          .body("detail", containsString("/api/v1/feed/snapshot"));
    }
    asPlanner()
        .contentType("application/json")
        .body("{\"url\": \"http://127.0.0.1:9/\", \"after\": \"" + undone + "\"}")
        .post("/api/v1/subscriptions")
        .then()
        .statusCode(410);
    asPlanner().get("/api/v1/feed?after=" + cursor()).then().statusCode(200);
    try (Connection connection = store.getConnection()) {
      // twice within a moment, or by a clock that goes back: still ahead
      long first = FeedRestored.mark(connection, new ObjectMapper(), null, made);
      assertTrue(FeedRestored.mark(connection, new ObjectMapper(), null, made) > first);
    }
  }

  /** As after the database's own tools. */
  @Test
  void aStoreThatWasTakenBackByOtherMeansIsMarked() throws Exception {
    Path data = folder.resolve("marked");
    StoreCommands commands = inFolder(data);
    BadBackup none = assertThrows(BadBackup.class, commands::restored);
    assertTrue(none.getMessage().contains("There is no store"), none.getMessage());
    commands.restore(file);
    commands.restored();
    try (Connection connection = new Login(H2.formatted(data), "sa", "sa").open();
        Statement statement = connection.createStatement();
        ResultSet marks =
            statement.executeQuery(
                "select count(*), max(position) = (select position from feed_head) from feed_event"
                    + " where type = '"
                    + EventTypes.FEED_RESTORED
                    + "'")) {
      marks.next();
      assertEquals(2, marks.getInt(1));
      assertTrue(marks.getBoolean(2), "the feed goes on behind it");
      BadBackup used = assertThrows(BadBackup.class, commands::restored);
      assertTrue(used.getMessage().contains("is in use"), used.getMessage());
    }
  }

  @Test
  void allRowsComeBackInPostgres() throws Exception {
    try (EmbeddedPostgres server = EmbeddedPostgres.start()) {
      Login login = new Login(server.getJdbcUrl("postgres", "postgres"), "postgres", "postgres");
      List<String> told = new ArrayList<>();
      StoreCommands commands = inServer(login, told::add);
      Manifest manifest = commands.restore(file);
      try (Connection connection = login.open()) {
        numberingGoesOn(connection, manifest);
        same(here(), asBackedUp(connection, manifest));
      }
      BadBackup refused = assertThrows(BadBackup.class, () -> commands.restore(file));
      assertTrue(refused.getMessage().contains("is not overwritten"), refused.getMessage());
      Path second = folder.resolve("second.zip");
      assertEquals(manifest.allRows(), commands.backup(second).allRows());
      assertEquals(List.of(), told);
      textThatIsNoneOfPostgresIsReplacedAndTold(login, server.getJdbcUrl("postgres", "other"));
    }
  }

  /** The embedded database keeps what PostgreSQL does not: NUL, and half a character. */
  private void textThatIsNoneOfPostgresIsReplacedAndTold(Login first, String url) throws Exception {
    Path odd = changed("odd-text.zip", "rows/customer.jsonl", row -> row.replace("two\\n", ODD));
    inFolder(folder.resolve("odd-text")).restore(odd);
    try (Connection kept = new Login(H2.formatted(folder.resolve("odd-text")), "sa", "sa").open()) {
      assertEquals("\u0000\ud83e and \ud83e\uddcalines \ud83e\uddca", note(kept));
    }
    try (Connection connection = first.open();
        Statement statement = connection.createStatement()) {
      statement.execute("create database other");
    }
    Login login = new Login(url, "postgres", "postgres");
    List<String> told = new ArrayList<>();
    inServer(login, told::add).restore(odd);
    try (Connection connection = login.open()) {
      assertEquals("\ufffd\ufffd and \ud83e\uddcalines \ud83e\uddca", note(connection));
    }
    assertEquals(1, told.size(), told.toString());
    assertTrue(told.get(0).startsWith("table customer, row "), told.get(0));
    assertTrue(told.get(0).contains("column note: NUL at character 1 "), told.get(0));
  }

  private static String note(Connection connection) throws Exception {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("select note from customer where code = 'BK'")) {
      assertTrue(row.next());
      return row.getString(1);
    }
  }

  @Test
  void aStoreThatIsThereIsNotOverwritten() throws Exception {
    StoreCommands commands = inFolder(folder.resolve("kept"));
    commands.restore(file);
    byte[] before = Files.readAllBytes(folder.resolve("kept/coldround.mv.db"));
    BadBackup refused = assertThrows(BadBackup.class, () -> commands.restore(file));
    assertTrue(refused.getMessage().contains("is not overwritten"), refused.getMessage());
    try (Connection user = new Login(H2.formatted(folder.resolve("kept")), "sa", "sa").open()) {
      for (Runnable call :
          new Runnable[] {
            () -> commands.restore(file), () -> commands.backup(folder.resolve("x.zip"))
          }) {
        BadBackup used = assertThrows(BadBackup.class, call::run);
        assertTrue(used.getMessage().contains("is in use"), used.getMessage());
      }
      assertTrue(user.isValid(1));
    }
    assertEquals(before.length > 0, Files.exists(folder.resolve("kept/coldround.mv.db")));
  }

  private void refused(Path bad, String why) throws IOException {
    Path data = folder.resolve("none");
    BadBackup refused = assertThrows(BadBackup.class, () -> inFolder(data).restore(bad));
    assertTrue(refused.getMessage().contains(why), refused.getMessage());
    assertFalse(Files.exists(data.resolve("coldround.mv.db")), "nothing is left");
    if (Files.exists(data)) {
      try (var left = Files.list(data)) {
        assertEquals(0, left.count(), "nothing is left beside it");
      }
    }
  }

  @Test
  void badFilesAreToldApart() throws IOException {
    refused(folder.resolve("nowhere.zip"), "There is no file");
    Path cut = folder.resolve("cut.zip");
    byte[] whole = Files.readAllBytes(file);
    Files.write(cut, java.util.Arrays.copyOf(whole, whole.length * 2 / 3));
    refused(cut, "cut off, or another kind of file");
    refused(Files.writeString(folder.resolve("list.zip"), "customer,name\n"), "another kind");
    String manifest = "manifest.json";
    refused(changed("foreign.zip", manifest, all -> "{\"format\":\"other\"}"), "no backup that");
    refused(
        changed("newer.zip", manifest, all -> all.replace("\"schema\":", "\"schema\":9")),
        "this program knows");
    String rows = "rows/customer.jsonl";
    refused(changed("lost.zip", rows, all -> "[\"id\"]\n"), "has 0 rows where");
    refused(changed("odd.zip", rows, all -> "[\"colour\"]\n"), "unknown column colour");
    refused(changed("empty.zip", rows, all -> ""), "does not begin with the names");
    refused(changed("none.zip", rows, all -> all + "{}\n"), "is no JSON array of ");
    refused(changed("broken.zip", rows, all -> all + "[\n"), "is no JSON. Use another");
    refused(
        changed("twice.zip", rows, all -> all + all.substring(all.indexOf('\n') + 1)),
        "Table customer of the backup does not go into the database");
    for (String day : List.of("\"no day\"", "5", "true", "\"2004-02-30\"")) {
      refused(
          changed("day.zip", "rows/unit.jsonl", all -> all.replace("\"2004-02-29\"", day)),
          "of table unit of the backup cannot be read in column installed");
    }
  }

  /** The backup with one entry that says something else. */
  private Path changed(String name, String what, UnaryOperator<String> how) throws IOException {
    Path other = folder.resolve(name);
    try (ZipFile from = new ZipFile(file.toFile());
        OutputStream out = Files.newOutputStream(other);
        ZipOutputStream to = new ZipOutputStream(out)) {
      for (ZipEntry entry : Collections.list(from.entries())) {
        to.putNextEntry(new ZipEntry(entry.getName()));
        byte[] bytes = from.getInputStream(entry).readAllBytes();
        if (entry.getName().equals(what)) {
          String text = new String(bytes, StandardCharsets.UTF_8);
          String instead = how.apply(text);
          assertNotEquals(text, instead, "nothing was changed");
          bytes = instead.getBytes(StandardCharsets.UTF_8);
        }
        to.write(bytes);
        to.closeEntry();
      }
    }
    return other;
  }

  @Test
  void aBackupNeedsItsFolderAndOverwritesNothing() throws IOException {
    StoreCommands commands = inFolder(folder.resolve("source"));
    commands.restore(file);
    BadBackup lost =
        assertThrows(BadBackup.class, () -> commands.backup(folder.resolve("no/such/b.zip")));
    assertTrue(lost.getMessage().contains("There is no folder"), lost.getMessage());
    BadBackup there = assertThrows(BadBackup.class, () -> commands.backup(file));
    assertTrue(there.getMessage().contains("is not overwritten"), there.getMessage());
    // a device that takes no byte, as a full disk
    Path full = Path.of("/dev/full");
    if (Files.exists(full)) {
      Path link = Files.createSymbolicLink(folder.resolve("full.zip.part"), full);
      BadBackup room =
          assertThrows(BadBackup.class, () -> commands.backup(folder.resolve("full.zip")));
      assertTrue(room.getMessage().contains("No space left"), room.getMessage());
      assertFalse(Files.exists(folder.resolve("full.zip")), "no half file");
      assertFalse(Files.exists(link), "no half file");
    }
    assertTrue(commands.backup(folder.resolve("again.zip")).allRows() > 0);
  }
}
