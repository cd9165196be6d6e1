package coldround.fleet.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Correction;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.FleetWriting.Written;
import coldround.fleet.HeldRows;
import coldround.fleet.Kind;
import coldround.fleet.Reading;
import coldround.quantity.Quantity;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.hibernate.exception.DataException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** New visits are written later than they are taken; nobody may see that. */
@QuarkusTest
class HeldVisitsTest {

  private static final String HEADER = "customer,site,unit,visit,date,head_pressure [psig]\n";

  private static final File[] NONE = {};
  // only some systems tell
  private static final File OPEN_FILES = new File("/proc/self/fd");

  @Inject FleetWriting writing;
  @Inject HeldRows held;

  @BeforeEach
  void unit() {
    send("customers", "customer,name\nHELD,Held back\n");
    send("sites", "customer,site\nHELD,S\n");
    send("units", "customer,site,unit,kind\nHELD,S,U1,walk-in-cooler\nHELD,S,U2,ice-machine\n");
  }

  private static ValidatableResponse send(String kind, String csv) {
    return asPlanner()
        .contentType("text/csv")
        .body(csv)
        .post("/api/v1/imports/" + kind)
        .then()
        .statusCode(200);
  }

  private static List<String> stored(String visit) {
    String all = asPlanner().get("/api/v1/exports/visits.csv?customer=HELD").asString();
    return all.lines().filter(line -> line.startsWith("HELD,S,U1," + visit + ",")).toList();
  }

  private static Entry entry(String visit, double psig) {
    Map<String, Object> said = new LinkedHashMap<>();
    said.put("customer", "HELD");
    said.put("site", "S");
    said.put("unit", "U1");
    said.put("visit", visit);
    said.put("date", LocalDate.of(2026, 4, 30));
    said.put("head_pressure", Reading.taken("head_pressure", Quantity.of(psig, "psig")));
    return new Entry(0, said);
  }

  private Written write(String visit, double psig) {
    return writing.write(Kind.VISITS, List.of(entry(visit, psig)), Correction.FIELD);
  }

  @Test
  void whatNobodyReadsIsWrittenWithTheTransaction() {
    QuarkusTransaction.requiringNew().run(() -> write("ALONE", 200));
    assertEquals(1, stored("ALONE").size());
    assertTrue(stored("ALONE").get(0).contains(",200"), stored("ALONE").toString());
  }

  @Test
  void whatIsRolledBackIsNotWritten() {
    QuarkusTransaction.begin();
    write("GONE", 200);
    QuarkusTransaction.rollback();
    assertEquals(List.of(), stored("GONE"));
  }

  @Test
  void aVisitThatIsHeldBackIsFoundByTheNextOfItsTransaction() {
    List<Outcome> outcomes =
        QuarkusTransaction.requiringNew()
            .call(
                () ->
                    List.of(
                        write("TWICE", 200).outcomes().get(0),
                        write("TWICE", 200).outcomes().get(0),
                        write("TWICE", 210).outcomes().get(0)));
    assertEquals(List.of(Outcome.CREATED, Outcome.UNCHANGED, Outcome.CHANGED), outcomes);
    assertTrue(stored("TWICE").get(0).contains(",210"), stored("TWICE").toString());
  }

  @Test
  void aRowFarBehindInAFileIsLaidOverTheOneBefore() {
    StringBuilder csv = new StringBuilder(HEADER);
    for (int i = 0; i < 1300; i++) {
      csv.append("HELD,S,U").append(1 + i % 2).append(",F").append(i).append(",2026-03-01,190\n");
    }
    csv.append("HELD,S,U1,F4,2026-03-01,195\n");
    send("visits", csv.toString())
        .body("rows.created", equalTo(1300))
        .body("rows.changed", equalTo(1))
        .body("problemsByCode.duplicate-in-file", equalTo(1));
    assertTrue(stored("F4").get(0).contains(",195"), stored("F4").toString());
    send("visits", csv.toString()).body("rows.unchanged", equalTo(1299));
  }

  /** Visits with so long notes that some thousand are more than memory holds of them. */
  private static List<Entry> longLog(String prefix) {
    List<Entry> log = new ArrayList<>();
    for (int i = 0; i < 3000; i++) {
      Map<String, Object> said = new LinkedHashMap<>(entry(prefix + i % 7 + "-" + i, 150).said());
      said.put("customer", "LONGLOG");
      said.put("unit", "U" + (1 + i % 2));
      said.put("note", String.valueOf(i % 10).repeat(6000));
      log.add(new Entry(i, said));
    }
    return log;
  }

  private List<Outcome> write(List<Entry> log) {
    List<Outcome> outcomes = new ArrayList<>();
    for (int from = 0; from < log.size(); from += 500) {
      List<Entry> batch = log.subList(from, Math.min(log.size(), from + 500));
      outcomes.addAll(writing.write(Kind.VISITS, batch, Correction.FIELD).outcomes());
    }
    return outcomes;
  }

  private void longLogsUnits() {
    send("customers", "customer,name\nLONGLOG,Long log\n");
    send("sites", "customer,site\nLONGLOG,S\n");
    send(
        "units",
        "customer,site,unit,kind\nLONGLOG,S,U1,walk-in-cooler\nLONGLOG,S,U2,ice-machine\n");
  }

  @Test
  void aLongLogIsWrittenWholeAndLeavesNoFileBehind() {
    longLogsUnits();
    List<Entry> log = longLog("L");
    // the first row again, far behind: what is held is written for it, and more is held
    log.add(2500, log.get(0));
    QuarkusTransaction.begin();
    try {
      List<Outcome> outcomes = write(log);
      assertEquals(Outcome.UNCHANGED, outcomes.remove(2500));
      assertEquals(Collections.nCopies(3000, Outcome.CREATED), outcomes);
      held.writeHeld();
      assertEquals(List.of(), scratchFiles());
      assertEquals(Collections.nCopies(3001, Outcome.UNCHANGED), write(log));
    } finally {
      // so many would make all that reads the whole fleet dear for the tests behind this one
      QuarkusTransaction.rollback();
    }
  }

  @Test
  void aLongLogThatIsRolledBackLeavesNothing() {
    longLogsUnits();
    List<Entry> log = longLog("N");
    QuarkusTransaction.begin();
    write(log);
    assertEquals(OPEN_FILES.exists() ? 1 : 0, scratchFiles().size());
    QuarkusTransaction.rollback();
    assertEquals(List.of(), scratchFiles());
    QuarkusTransaction.begin();
    try {
      assertEquals(List.of(Outcome.CREATED), write(log.subList(0, 1)));
    } finally {
      QuarkusTransaction.rollback();
    }
  }

  /** Those that are open: Linux forgets their names at once. */
  private static List<String> scratchFiles() {
    String ours = "coldround-" + ProcessHandle.current().pid() + "-visits-";
    return Stream.of(Objects.requireNonNullElse(OPEN_FILES.listFiles(), NONE))
        .map(HeldVisitsTest::target)
        .filter(name -> name.contains(ours))
        .toList();
  }

  private static String target(File link) {
    try {
      return Files.readSymbolicLink(link.toPath()).toString();
    } catch (IOException closedMeanwhile) {
      return "";
    }
  }

  @Test
  void anOpenFileWouldBeSeen() {
    try (SortedRuns runs = new SortedRuns(Comparator.comparing(row -> row.number))) {
      assertEquals(0, runs.bytes());
      assertEquals(OPEN_FILES.exists() ? 1 : 0, scratchFiles().size());
    }
    assertEquals(List.of(), scratchFiles());
  }

  /** As the database tells it, so that the sender is answered what is too long. */
  @Test
  void whatIsLongerThanTheStoreKeepsIsToldWhenItIsWritten() {
    Entry entry = entry("LONG-NOTE", 200);
    Map<String, Object> said = new LinkedHashMap<>(entry.said());
    said.put("note", "x".repeat(200_000));
    Entry tooLong = new Entry(0, said);
    QuarkusTransaction.begin();
    try {
      writing.write(Kind.VISITS, List.of(tooLong), Correction.FIELD);
      assertThrows(DataException.class, held::writeHeld);
    } finally {
      QuarkusTransaction.rollback();
    }
    assertEquals(List.of(), stored("LONG-NOTE"));
  }

  @Test
  void whoFollowsHearsOfAllThatIsWrittenAndMayEndIt() {
    List<Integer> heard = new ArrayList<>();
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              held.follow(heard::add);
              write("HEARD-1", 200);
              write("HEARD-2", 200);
              assertEquals(2, held.held());
              held.writeHeld();
              assertEquals(0, held.held());
            });
    assertEquals(List.of(2), heard);
    QuarkusTransaction.begin();
    try {
      held.follow(
          rows -> {
            throw new IllegalStateException("the service ends");
          });
      write("ENDED", 200);
      assertThrows(IllegalStateException.class, held::writeHeld);
    } finally {
      QuarkusTransaction.rollback();
    }
    assertEquals(List.of(), stored("ENDED"));
  }

  @Test
  void readingsOfTheLongFormGoToAVisitThatTheFileBeforeItMade() {
    send("visits", HEADER + "HELD,S,U1,LONG,2026-03-02,190\n").body("rows.created", equalTo(1));
    send(
            "readings",
            "customer,site,unit,visit,quantity,value,measure\n"
                + "HELD,S,U1,LONG,suction_pressure,20,psig\n")
        .body("rows.changed", equalTo(1));
    assertTrue(stored("LONG").get(0).contains(",20,"), stored("LONG").toString());
  }
}
