package coldround.intake.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class ImportsTest {

  private static final String VISITS =
      "customer,site,unit,visit,date,ambient [degF],"
          + "head_pressure [psig],suction_pressure [psig],compressor [A],condenser_coil,work,note\n";

  @Inject Fleet fleet;

  /** A customer of its own for each test, with one site and one unit. */
  private String customer;

  @BeforeEach
  void oneUnit() {
    customer = "C" + UUID.randomUUID().toString().substring(0, 8);
    applied("customers", "customer,name\n" + customer + ",Harbor Grocers\n");
    applied("sites", "customer,site,latitude,longitude\n" + customer + ",S1,45.5,-122.6\n");
    applied(
        "units",
        "customer,site,unit,kind,refrigerant\n" + customer + ",S1,U1,walk-in-cooler,R-12\n");
  }

  private static ValidatableResponse send(String kind, String query, String text) {
    return send(kind, query, text.getBytes(StandardCharsets.UTF_8));
  }

  private static ValidatableResponse send(String kind, String query, byte[] bytes) {
    return asPlanner()
        .contentType("text/csv")
        .body(bytes)
        .post("/api/v1/imports/" + kind + query)
        .then();
  }

  private static void applied(String kind, String text) {
    send(kind, "", text)
        .statusCode(200)
        .body("applied", equalTo(true), "rows.rejected", equalTo(0));
  }

  private List<UnitHistory> histories() {
    List<UnitHistory> found = new ArrayList<>();
    fleet.eachHistory(new FleetFilter(customer, "", "", "", ""), found::add);
    return found;
  }

  private List<Visit> visits() {
    return histories().get(0).visits();
  }

  private String visit(String number, String date, String rest) {
    return customer + ",S1,U1," + number + "," + date + "," + rest + "\n";
  }

  @Test
  void theReceiptHasAllThatTheContractNames() {
    String text =
        VISITS
            + visit("1", "2026-05-01", "70,117,34,9.8,light,inspected,")
            + visit("2", "31/02/2015", ",,,,,,");
    send("visits", "", text)
        .statusCode(200)
        .contentType("application/json")
        .body("id", notNullValue())
        .body("kind", equalTo("visits"))
        .body("preview", equalTo(false), "applied", equalTo(true))
        .body("rows.read", equalTo(2), "rows.created", equalTo(1), "rows.changed", equalTo(0))
        .body("rows.unchanged", equalTo(0), "rows.rejected", equalTo(1))
        .body("detected.charset", equalTo("UTF-8"), "detected.delimiter", equalTo(","))
        .body("detected.profile", equalTo("standard"))
        .body("problems", hasSize(1))
        .body("problems[0].row", equalTo(3), "problems[0].column", equalTo("date"))
        .body("problems[0].value", equalTo("31/02/2015"))
        .body("problems[0].code", equalTo("not-a-date"))
        .body("problems[0].message", containsString("2026-05-31"));
  }

  @Test
  void importingAgainChangesNothing() {
    String text =
        VISITS + visit("1", "2026-05-01", "70,117,n/t: port blocked,9.8,light,inspected,x");
    send("visits", "", text).body("rows.created", equalTo(1));
    Visit before = visits().get(0);
    send("visits", "", text).body("rows.created", equalTo(0), "rows.unchanged", equalTo(1));
    assertEquals(before, visits().get(0));
  }

  @Test
  void aLaterFileCorrectsSilenceKeepsAndAHyphenErases() {
    applied("visits", VISITS + visit("1", "2026-05-01", "70,117,34,9.8,light,inspected,first"));
    send("visits", "", VISITS + visit("1", "2026-05-01", ",125,-,,,,-"))
        .body("rows.changed", equalTo(1));
    Visit visit = visits().get(0);
    assertEquals(125, visit.value("head_pressure").orElseThrow().value());
    assertEquals(70, visit.value("ambient").orElseThrow().value());
    assertTrue(visit.value("suction_pressure").isEmpty());
    assertEquals("", visit.note());
    assertEquals("light", visit.finding("condenser_coil").orElseThrow());
  }

  @Test
  void valuesKeepTheUnitTheyWereGivenIn() {
    String text =
        "customer,site,unit,visit,date,ambient [degC],head_pressure [barg],"
            + "suction_pressure [kPa]\n"
            + visit("1", "2026-05-01", "21.1,8.1,335");
    applied("visits", text);
    assertEquals("8.10 barg", visits().get(0).value("head_pressure").orElseThrow().toString());
    assertEquals("335 kPa abs", visits().get(0).value("suction_pressure").orElseThrow().toString());
  }

  @Test
  void aValueThatCannotBeIsKeptAndLeftOutUntilItIsConfirmed() {
    String row = visit("1", "2026-05-01", "70,1170,34,,,,");
    send("visits", "", VISITS + row)
        .body("rows.created", equalTo(1), "rows.rejected", equalTo(0))
        .body("problems.code", equalTo(List.of("suspect-value")))
        .body("problems[0].row", equalTo(2), "problems[0].rejects", equalTo(false))
        .body("problems[0].column", equalTo("head_pressure [psig]"))
        .body("problems[0].message", containsString("1170 kPag (unit of measure)"))
        .body("problems[0].message", containsString("1170!"));
    assertTrue(visits().get(0).value("head_pressure").isEmpty());
    send("visits", "", VISITS + row).body("rows.unchanged", equalTo(1));
    send("visits", "", VISITS + row.replace("1170", "1170!"))
        .body("rows.changed", equalTo(1), "problems", hasSize(0));
    assertEquals(1170, visits().get(0).value("head_pressure").orElseThrow().value());
    send("visits", "", VISITS + row).body("rows.unchanged", equalTo(1), "problems", hasSize(0));
  }

  @Test
  void aPreviewSaysWhatWouldHappenAndAppliesNothing() {
    send("visits", "?preview=true", VISITS + visit("1", "2026-05-01", "70,117,34,,,,"))
        .body("preview", equalTo(true), "applied", equalTo(false), "rows.created", equalTo(1));
    assertEquals(List.of(), visits());
  }

  @Test
  void withoutPartialOneBadRowHoldsBackAll() {
    String text =
        VISITS
            + visit("1", "2026-05-01", "70,117,34,,,,")
            + visit("2", "2026-05-02", "70,high,34,,,,");
    String id =
        send("visits", "?partial=false", text)
            .statusCode(200)
            .body("applied", equalTo(false), "rows.rejected", equalTo(1))
            .extract()
            .path("id");
    assertEquals(List.of(), visits());
    asPlanner().get("/api/v1/imports/" + id).then().statusCode(200).body("rows.read", equalTo(2));
    send("visits", "", text).body("applied", equalTo(true), "rows.created", equalTo(1));
    assertEquals(1, visits().size());
  }

  @Test
  void rejectedRowsMendedCanBeSentAgainAsTheyAre() {
    String odd = "\"=1+1, \"\"quoted\"\"\nsecond line\"";
    String text =
        "visit,customer,site,unit,date,head_pressure [psig],color,note\n"
            + "7,"
            + customer
            + ",S1,U1,2026-05-01,a hundred,red,"
            + odd
            + "\n"
            + "8,"
            + customer
            + ",S1,U1,2026-05-02,120,blue,good\n";
    String id = send("visits", "", text).body("rows.rejected", equalTo(1)).extract().path("id");
    String rejected =
        asPlanner()
            .get("/api/v1/imports/" + id + "/rejected")
            .then()
            .statusCode(200)
            .contentType(containsString("text/csv"))
            .extract()
            .asString();
    assertTrue(
        rejected.startsWith(
            "visit,customer,site,unit,date,head_pressure [psig],color,note,"
                + "problem_row,problem_column,problem\r\n"),
        rejected);
    assertTrue(rejected.contains(",2,head_pressure [psig],"), rejected);
    send("visits", "", rejected.replace("a hundred", "100"))
        .body("rows.created", equalTo(1), "rows.rejected", equalTo(0))
        .body("problems.code", everyItem(equalTo("unknown-column")));
    Visit mended = visits().get(0);
    assertEquals("=1+1, \"quoted\"\nsecond line", mended.note().replace("\r", ""));
  }

  @Test
  void aReceiptCanBeReadAgainAndIsNotSentTwice() {
    String id =
        send("visits", "", VISITS + visit("1", "2026-05-01", "70,warm,34,,,,"))
            .extract()
            .path("id");
    String tag =
        asPlanner()
            .get("/api/v1/imports/" + id)
            .then()
            .statusCode(200)
            .body("problems[0].code", equalTo("not-a-number"), "kind", equalTo("visits"))
            .extract()
            .header("ETag");
    asPlanner().header("If-None-Match", tag).get("/api/v1/imports/" + id).then().statusCode(304);
    asPlanner()
        .get("/api/v1/imports/none")
        .then()
        .statusCode(404)
        .contentType("application/problem+json");
    asPlanner().get("/api/v1/imports/none/rejected").then().statusCode(404);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "date                | 31/02/2015      | not-a-date",
        "date                | 2026-02-29      | not-a-date",
        "date                | 05/06/2026      | ambiguous-date",
        "head_pressure [psig]| about normal    | not-a-number",
        "head_pressure [psig]| -15             | out-of-range",
        "compressor [A]      | -3              | out-of-range",
        "head_pressure [psig]| n/t             | reason-missing",
        "condenser_coil      | mouldy          | unknown-code",
        "date                | -               | not-erasable",
        "visit               | ''              | missing",
        "unit                | U9              | unknown-reference",
        "site                | S9              | unknown-reference",
      })
  void aBadCellIsToldWithRowColumnValueAndMend(String column, String value, String code) {
    String header =
        "customer,site,unit,visit,date,head_pressure [psig],compressor [A],condenser_coil";
    List<String> labels = List.of(header.split(","));
    List<String> cells =
        new ArrayList<>(List.of(customer, "S1", "U1", "1", "2026-05-01", "120", "9", "light"));
    cells.set(labels.indexOf(column), value);
    send("visits", "", header + "\n" + String.join(",", cells) + "\n")
        .statusCode(200)
        .body("rows.rejected", equalTo(1), "rows.created", equalTo(0), "problems", hasSize(1))
        .body("problems[0].row", equalTo(2), "problems[0].column", equalTo(column))
        .body("problems[0].value", equalTo(value), "problems[0].code", equalTo(code));
    assertEquals(List.of(), visits());
  }

  @Test
  void whatIsMissingIsNamedWithTheFileToImportFirst() {
    send("units", "", "customer,site,unit,kind\nNOBODY,S1,U1,chiller\n")
        .body("problems[0].code", equalTo("unknown-reference"))
        .body("problems[0].message", containsString("Import customers first"));
    send("units", "", "customer,site,unit,kind\n" + customer + ",S9,U1,chiller\n")
        .body("problems[0].message", containsString("Import sites first"));
    send("sites", "", "customer,site\nNOBODY,S1\n")
        .body("problems[0].message", containsString("Import customers first"));
    send(
            "readings",
            "",
            "customer,site,unit,visit,quantity,value,measure\n"
                + customer
                + ",S1,U1,99,box,37,degF\n")
        .body("problems[0].column", equalTo("visit"))
        .body("problems[0].message", containsString("Import visits first"));
  }

  @Test
  void twoRowsOfOneKeyAreToldAndTheLaterHolds() {
    send(
            "visits",
            "",
            VISITS
                + visit("1", "2026-05-01", "70,117,34,,,,")
                + visit("1", "2026-05-01", "70,117,34,,,,")
                + visit("1", "2026-05-01", "70,155,34,,,,"))
        .body("rows.created", equalTo(1), "rows.unchanged", equalTo(1), "rows.changed", equalTo(1))
        .body("problems", hasSize(1), "problems[0].code", equalTo("duplicate-in-file"))
        .body("problems[0].row", equalTo(4), "problems[0].message", containsString("line 3"));
    assertEquals(155, visits().get(0).value("head_pressure").orElseThrow().value());
  }

  @Test
  void theWholeColumnDecidesWhetherDayOrMonthComesFirst() {
    String unproven =
        VISITS + visit("1", "05/06/2025", "70,,,,,,") + visit("2", "2025-06-01", ",,,,,,");
    send("visits", "?preview=true", unproven)
        .body("rows.rejected", equalTo(1), "problems[0].code", equalTo("ambiguous-date"))
        .body("problems[0].message", containsString("no date of the column proves the order"));
    send("visits", "", unproven + visit("3", "31/05/2025", ",,,,,,"))
        .body("rows.rejected", equalTo(0), "rows.created", equalTo(3))
        .body("problemsByCode.date-order-found", equalTo(1));
    assertEquals(
        List.of("2025-05-31", "2025-06-01", "2025-06-05"),
        visits().stream().map(visit -> visit.date().toString()).sorted().toList());
  }

  @Test
  void aSheetOfAWorkbookIsReadByItsName() throws IOException {
    Map<String, List<String>> sheets = new LinkedHashMap<>();
    sheets.put("Notes", List.of("what,who", "call the store first,Ruth"));
    sheets.put(
        "Log 2026",
        List.of("customer,site,unit,visit,date,box [degF]", customer + ",S1,U1,1,2026-05-01,37"));
    byte[] workbook = TinyWorkbook.of(sheets);
    send("visits", "?sheet=Log 2026", workbook)
        .statusCode(200)
        .body("rows.created", equalTo(1), "firstRows[0].box", equalTo("37 degF"));
    send("visits", "?sheet=Log 2025", workbook)
        .statusCode(422)
        .body("type", equalTo("urn:coldround:problem:no-such-sheet"))
        .body("detail", containsString("Log 2026"));
    send("visits", "", workbook).statusCode(422).body("detail", containsString("what, who"));
    send("visits", "?sheet=Log", VISITS + visit("2", "2026-05-01", "")).statusCode(422);
  }

  @Test
  void longReadingsGoToTheirVisitByPart() {
    applied("visits", VISITS + visit("1", "2026-05-01", "70,,,,,,"));
    send(
            "readings",
            "",
            "customer,site,unit,visit,quantity,part,value,measure,not_taken\n"
                + customer
                + ",S1,U1,1,condenser_fan,1,0.51,A,\n"
                + customer
                + ",S1,U1,1,condenser_fan,2,,,guard in the way\n"
                + customer
                + ",S1,U1,1,head_pressure,,117,psig,\n"
                + customer
                + ",S1,U1,1,head_pressure,3,117,A,\n"
                + customer
                + ",S1,U1,1,humidity,,40,%,\n")
        .body("rows.changed", equalTo(3), "rows.rejected", equalTo(2))
        .body("problems.code", equalTo(List.of("unknown-measure", "unknown-code")));
    assertEquals(4, visits().get(0).readings().size());
  }

  @Test
  void anUnknownRefrigerantIsKeptWithAWarningAndAKnownOneIsNamedRight() {
    send(
            "units",
            "",
            "customer,site,unit,kind,refrigerant\n"
                + customer
                + ",S1,U2,chiller,r404a\n"
                + customer
                + ",S1,U3,chiller,Icepop 9\n")
        .body("rows.created", equalTo(2), "problems.code", equalTo(List.of("unknown-refrigerant")));
    List<String> designations = histories().stream().map(h -> h.unit().refrigerant()).toList();
    assertEquals(List.of("R-12", "R-404A", "Icepop 9"), designations);
  }

  @Test
  void techniciansFaultsAndTravelTimesAreTakenToo() {
    String t = "T" + customer;
    applied(
        "technicians",
        "technician,name,latitude,longitude,hours,competences,days_off\n"
            + t
            + ",Ana,45.5,-122.6,Mo-Fr 07:00-15:30,refrigerant;electrical,"
            + "2026-11-27;2026-12-24/2027-01-02\n");
    applied("travel-times", "from,to,minutes,distance [mi]\n" + customer + "/S1," + t + ",18,9\n");
    applied(
        "faults",
        "customer,site,unit,date,failure_mode,repaired,downtime [h]\n"
            + customer
            + ",S1,U1,2026-04-01,high-head-lockout,2026-04-02,6\n");
    assertEquals(1, histories().get(0).reportedFaults().size());
    assertTrue(
        fleet.technicians().stream()
            .anyMatch(
                x ->
                    x.code().equals(t)
                        && x.competences().size() == 2
                        && x.daysOff().toString().equals("[2026-11-27, 2026-12-24/2027-01-02]")));
    assertTrue(fleet.travelTimes().stream().anyMatch(x -> x.to().equals(t) && x.minutes() == 18));
  }

  @Test
  void otherDelimitersAndCharactersAreFoundOut() {
    String text = "customer;site;name\n" + customer + ";S2;Caf\u00e9 am T\u00fcr\n";
    send("sites", "", text.getBytes(java.nio.charset.Charset.forName("windows-1252")))
        .body("rows.created", equalTo(1), "detected.delimiter", equalTo(";"));
    assertTrue(
        fleet.sites(customer).stream().anyMatch(s -> s.name().equals("Caf\u00e9 am T\u00fcr")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\n\n",
        "nonsense",
        "site,unit\nS1,U1\n",
        "customer,site,unit\nC,S,U\n",
        "customer,site,unit,visit,date,date\nC,S,U,1,2026-01-01,2026-01-01\n",
        "customer,site,unit,visit,date,head_pressure [degF]\nC,S,U,1,2026-01-01,70\n",
        "<html><body>no</body></html>",
        "{\"customer\": \"C\"}",
        "PK\u0003\u0004 a workbook"
      })
  void aFileThatCannotBeUsedIsRefusedWhole(String text) {
    send("visits", "", text)
        .statusCode(422)
        .contentType("application/problem+json")
        .body("type", containsString("urn:coldround:problem:"))
        .body("status", equalTo(422), "detail", notNullValue());
  }

  @Test
  void aWrongHeaderIsToldWithWhatIsThereAndWhatIsExpected() {
    send("visits", "", "customer,site,unit,number,date\nC,S,U,1,2026-01-01\n")
        .statusCode(422)
        .body("type", equalTo("urn:coldround:problem:wrong-header"))
        .body("detail", containsString("required columns are missing: visit"))
        .body("detail", containsString("There is: customer, site, unit, number, date"))
        .body("detail", containsString("head_pressure [psig]"));
  }

  @Test
  void fiftyMegabytesOfNoiseAreRefused() {
    byte[] noise = new byte[50_000_000];
    new Random(1).nextBytes(noise);
    send("visits", "", noise)
        .statusCode(422)
        .contentType("application/problem+json")
        .body("type", equalTo("urn:coldround:problem:not-csv"));
  }

  @Test
  void moreThanTheStoreKeepsOfOneVisitIsAProblemAndAppliesNothing() {
    applied("visits", VISITS + visit("1", "2026-05-01", "70,,,,,,"));
    StringBuilder text = new StringBuilder("customer,site,unit,visit,quantity,part,not_taken\n");
    for (int i = 0; i < 160; i++) {
      String row = customer + ",S1,U1,1,condenser_fan," + i + "," + "x".repeat(400) + "\n";
      text.append(row);
    }
    send("readings", "", text.toString())
        .statusCode(422)
        .body("type", equalTo("urn:coldround:problem:too-long"));
    assertEquals(1, visits().get(0).readings().size());
  }

  @Test
  void wrongAddressesParametersAndTypesAreProblems() {
    send("boats", "", "a,b\n1,2\n").statusCode(404).contentType("application/problem+json");
    send("visits", "?preview=maybe", VISITS)
        .statusCode(400)
        .body("errors[0].field", equalTo("preview"));
    send("visits", "?profile=none", VISITS)
        .statusCode(400)
        .body("errors[0].message", containsString("standard"));
    asPlanner()
        .contentType("application/json")
        .body("{}")
        .post("/api/v1/imports/visits")
        .then()
        .statusCode(415)
        .contentType("application/problem+json");
    asPlanner()
        .contentType("application/octet-stream")
        .body("customer\nX\n".getBytes())
        .post("/api/v1/imports/customers?preview=true")
        .then()
        .statusCode(200);
    io.restassured.RestAssured.given()
        .contentType("text/csv")
        .body("customer\nX\n")
        .post("/api/v1/imports/customers")
        .then()
        .statusCode(401);
  }

  @Test
  void manyProblemsAreCountedAndOnlyTheFirstTold() {
    StringBuilder text = new StringBuilder(VISITS);
    for (int i = 0; i < 1200; i++) {
      text.append(visit("v" + i, "2026-13-01", ",,,,,,"));
    }
    String id =
        send("visits", "", text.toString())
            .body("rows.rejected", equalTo(1200), "problems", hasSize(200))
            .body("problemCount", equalTo(1200), "problemsByCode.not-a-date", equalTo(1200))
            .extract()
            .path("id");
    String rejected = asPlanner().get("/api/v1/imports/" + id + "/rejected").asString();
    assertEquals(1201, rejected.split("\r\n").length);
    assertTrue(hasItem("v1199").matches(List.of(rejected.split("[\r\n,]"))));
  }
}
