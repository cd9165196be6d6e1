package coldround.fleet.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Correction;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.FleetWriting.Written;
import coldround.fleet.Kind;
import coldround.fleet.Reading;
import coldround.quantity.Quantity;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.File;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** New visits are written later than they are taken; nobody may see that. */
@QuarkusTest
class HeldVisitsTest {

  private static final String HEADER = "customer,site,unit,visit,date,head_pressure [psig]\n";

  @Inject FleetWriting writing;

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
      csv.append("HELD,S,U").append(1 + i % 2).append(",L").append(i % 7).append('-').append(i);
      csv.append(",2026-01-").append(10 + i % 20).append(',').append(150 + i % 50).append('\n');
    }
    // the first row of all again, far behind: what is held is written for it
    csv.append("HELD,S,U1,L0-0,2026-01-10,151\n");
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

  private static List<String> scratchFiles() {
    String ours = "coldround-" + ProcessHandle.current().pid() + "-visits-";
    return Stream.of(new File(System.getProperty("java.io.tmpdir")).list())
        .filter(name -> name.startsWith(ours))
        .toList();
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
