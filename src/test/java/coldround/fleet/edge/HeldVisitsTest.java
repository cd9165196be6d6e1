package coldround.fleet.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

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

  /** More than memory holds of them, in the order of a log and not in that of the store. */
  @Test
  void aLongLogIsWrittenWholeAndLeavesNoFileBehind() {
    int rows = 60_000;
    StringBuilder csv = new StringBuilder(HEADER);
    for (int i = 0; i < rows; i++) {
      if (i == rows - 5000) {
        // the first row again, far behind: what is held is written for it, and more is held
        csv.append("HELD,S,U1,L0-0,2026-01-10,151\n");
      }
      csv.append("HELD,S,U").append(1 + i % 2).append(",L").append(i % 7).append('-').append(i);
      csv.append(",2026-01-").append(10 + i % 20).append(',').append(150 + i % 50).append('\n');
    }
    send("visits", csv.toString())
        .body("rows.created", equalTo(rows))
        .body("rows.changed", equalTo(1));
    assertTrue(stored("L0-0").get(0).contains(",151"), stored("L0-0").toString());
    send("visits", csv.toString())
        .body("rows.created", equalTo(0))
        .body("rows.unchanged", equalTo(rows - 1))
        .body("rows.changed", equalTo(2));
    assertEquals(List.of(), scratchFiles());
  }

  @Test
  void aLongLogOfWhichARowIsBadLeavesNothingWhereAllIsAsked() {
    StringBuilder csv = new StringBuilder(HEADER);
    for (int i = 0; i < 40_000; i++) {
      csv.append("HELD,S,U1,N").append(i).append(",2026-01-10,150\n");
    }
    csv.append("HELD,S,U1,N40000,2026-13-10,150\n");
    asPlanner()
        .contentType("text/csv")
        .body(csv.toString())
        .post("/api/v1/imports/visits?partial=false")
        .then()
        .body("applied", equalTo(false));
    assertEquals(List.of(), stored("N1"));
    assertEquals(List.of(), scratchFiles());
  }

  /** Those that are open: Linux forgets their names at once. */
  private static List<String> scratchFiles() {
    String ours = "coldround-" + ProcessHandle.current().pid() + "-visits-";
    return Stream.of(Objects.requireNonNullElse(new File("/proc/self/fd").listFiles(), NONE))
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
    assumeTrue(new File("/proc/self/fd").exists(), "no list of open files here");
    try (SortedRuns runs = new SortedRuns(Comparator.comparing(row -> row.number))) {
      assertEquals(0, runs.bytes());
      assertEquals(1, scratchFiles().size());
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
