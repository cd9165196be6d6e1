package coldround.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class PlainTableTest {

  private record Key(long unit, String name) {}

  private record Sample(Key key, LocalDate day, int count, Double size, Instant at, String text) {}

  private static final PlainTable<Sample> TABLE =
      new PlainTable<>(
          "plain_sample",
          2,
          List.of(
              Column.id("unit_id", row -> row.key.unit),
              Column.text("name", row -> row.key.name),
              Column.day("a_day", row -> row.day),
              Column.whole("a_count", row -> row.count),
              Column.number("a_size", row -> row.size),
              Column.moment("at", row -> row.at),
              Column.text("a_text", row -> row.text)));
  private static final OfUnits OF_UNITS =
      new OfUnits("plain_sample", "name", "a_day", "a_count", "a_size", "at", "a_text");
  private static final Sample SOME =
      new Sample(new Key(1, "one"), null, 1, null, Instant.EPOCH, null);
  private static final EntityManager REFUSES =
      (EntityManager)
          Proxy.newProxyInstance(
              PlainTableTest.class.getClassLoader(),
              new Class<?>[] {EntityManager.class},
              (proxy, method, arguments) -> {
                throw new IllegalStateException(method.getName());
              });
  private static final String[] TEXTS = {
    "",
    "null",
    "{a,b}",
    "a \"quoted\" one",
    "back\\slash",
    "it's",
    "µ° €",
    "two\nlines",
    ",",
    "NULL"
  };

  @Inject EntityManager entities;
  @Inject DataSource store;

  @BeforeEach
  void table() throws SQLException {
    run(
        "create table plain_sample (unit_id bigint not null, name varchar(40) not null, a_day date,"
            + " a_count integer not null, a_size double precision,"
            + " at timestamp with time zone not null, a_text varchar(80),"
            + " primary key (unit_id, name))");
  }

  @AfterEach
  void noTable() throws SQLException {
    run("drop table plain_sample");
  }

  private void run(String statement) throws SQLException {
    try (Connection connection = store.getConnection();
        Statement run = connection.createStatement()) {
      run.execute(statement);
    }
  }

  private List<Sample> stored(List<Long> units) {
    List<Sample> found = new ArrayList<>();
    QuarkusTransaction.requiringNew()
        .run(() -> OF_UNITS.each(entities, units, row -> found.add(read(row))));
    found.sort(ORDER);
    return found;
  }

  private static final Comparator<Sample> ORDER =
      Comparator.comparing((Sample row) -> row.key.unit).thenComparing(row -> row.key.name);

  private static Sample read(ResultSet row) throws SQLException {
    return new Sample(
        new Key(row.getLong(1), row.getString(2)),
        row.getObject(3, LocalDate.class),
        row.getInt(4),
        row.getObject(5, Double.class),
        row.getObject(6, OffsetDateTime.class).toInstant(),
        row.getString(7));
  }

  private static Sample any(Random random, Key key) {
    return new Sample(
        key,
        random.nextInt(5) == 0 ? null : LocalDate.of(1990, 1, 1).plusDays(random.nextInt(30_000)),
        random.nextInt(3),
        random.nextInt(5) == 0 ? null : random.nextGaussian() * 1e6,
        Instant.ofEpochSecond(random.nextInt(), random.nextInt(1_000_000) * 1000L),
        random.nextInt(5) == 0 ? null : TEXTS[random.nextInt(TEXTS.length)]);
  }

  /** Of different keys, some of them already in the table. */
  private static Map<Key, Sample> some(Random random, int most) {
    Map<Key, Sample> some = new HashMap<>();
    for (int n = random.nextInt(most); n > 0; n--) {
      Key key = new Key(random.nextInt(60), "name " + random.nextInt(20));
      some.put(key, any(random, key));
    }
    return some;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void holdsWhatWasWrittenLast(long seed) {
    Random random = new Random(seed);
    Map<Key, Sample> expected = new HashMap<>();
    for (int round = 0; round < 12; round++) {
      Map<Key, Sample> put = some(random, 1500);
      Map<Key, Sample> gone = some(random, 400);
      Map<Key, Sample> added = some(random, 1500);
      expected.putAll(put);
      expected.keySet().removeAll(gone.keySet());
      added.keySet().removeAll(expected.keySet());
      expected.putAll(added);
      QuarkusTransaction.requiringNew()
          .run(
              () -> {
                TABLE.put(entities, put.values());
                TABLE.delete(entities, gone.values());
                TABLE.insert(entities, added.values());
              });
      List<Long> units = random.longs(random.nextInt(80), 0, 70).boxed().distinct().toList();
      assertEquals(
          expected.values().stream()
              .filter(row -> units.contains(row.key.unit))
              .sorted(ORDER)
              .toList(),
          stored(units));
    }
  }

  @Test
  void aRowThatIsAsItWasIsNotWritten() {
    Random random = new Random(4);
    List<Sample> rows = new ArrayList<>();
    for (int i = 0; i < 700; i++) {
      rows.add(any(random, new Key(i, "one")));
    }
    assertEquals(700, put(rows));
    assertEquals(0, put(rows));
    Sample was = rows.get(3);
    rows.set(3, new Sample(was.key, was.day, was.count + 1, was.size, was.at, was.text));
    rows.set(600, new Sample(rows.get(600).key, null, 0, null, was.at, null));
    rows.add(any(random, new Key(700, "new")));
    assertEquals(3, put(rows));
  }

  private int put(List<Sample> rows) {
    return QuarkusTransaction.requiringNew().call(() -> TABLE.put(entities, rows));
  }

  @Test
  void nothingToWriteAsksNobody() {
    TABLE.put(REFUSES, List.of());
    TABLE.insert(REFUSES, List.of());
    TABLE.delete(REFUSES, List.of());
    OF_UNITS.each(REFUSES, List.of(), row -> {});
    assertThrows(IllegalStateException.class, () -> TABLE.put(REFUSES, List.of(SOME)));
  }
}
