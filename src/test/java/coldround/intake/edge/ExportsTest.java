package coldround.intake.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.DemoServed;
import coldround.sheet.FormulaGuard;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.opencsv.CSVReader;
import com.opencsv.CSVReaderBuilder;
import com.opencsv.RFC4180ParserBuilder;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** What is stored comes out as it went in. */
@QuarkusTest
@TestProfile(DemoServed.class)
class ExportsTest {

  static final List<String> KINDS =
      List.of(
          "customers",
          "sites",
          "units",
          "visits",
          "readings",
          "faults",
          "technicians",
          "travel-times");

  @Inject DataSource database;

  @ParameterizedTest
  @FieldSource("KINDS")
  void anExportHasTheColumnsOfItsTemplate(String kind) throws Exception {
    String header = export(kind, "csv").lines().findFirst().orElseThrow();
    assertEquals(Files.readString(Path.of("import/templates", kind + ".csv")).strip(), header);
  }

  private static String export(String kind, String form) {
    return new String(
        asPlanner()
            .get("/api/v1/exports/" + kind + "." + form)
            .then()
            .statusCode(200)
            .extract()
            .asByteArray(),
        StandardCharsets.UTF_8);
  }

  @Test
  void readIntoAnEmptyServiceTheFleetHasTheSameScores() throws Exception {
    addWhatIsHardToKeep();
    Map<String, String> exports = new LinkedHashMap<>();
    KINDS.forEach(kind -> exports.put(kind, export(kind, "csv")));
    Map<String, List<Object>> before = scores();
    assertTrue(before.size() > 50, "the demo fleet is there");
    empty();
    assertEquals(Map.of(), scores());
    exports.forEach((kind, text) -> read(kind, text));
    assertEquals(before, scores());
    exports.forEach((kind, text) -> assertEquals(text, export(kind, "csv"), kind));
  }

  /** Other units of measure, parts, reasons, formulas, quotes and lines. */
  private static void addWhatIsHardToKeep() {
    read("customers", "customer,name,note\nHARD,=1+1,\"two\nlines, \"\"quoted\"\"\"\n");
    read("sites", "customer,site,name,elevation [ft]\nHARD,S,@site,1234.5\n");
    read(
        "units",
        "customer,site,unit,kind,refrigerant,charge [kg],high_cutout [bar],design_split [deltaK]\n"
            + "HARD,S,-U,walk-in-cooler,R-404A,4.3,27.3,11.1\n");
    read(
        "visits",
        "customer,site,unit,visit,date,ambient [degC],head_pressure [bar],suction_pressure [psig]\n"
            + "HARD,S,-U,1,2026-05-12,25.3,17.77,n/t: port blocked\n");
    read(
        "readings",
        "customer,site,unit,visit,quantity,part,value,measure\n"
            + "HARD,S,-U,1,condenser_fan,2,0.79,A\n");
    read("technicians", "technician,days_off\nHARD,2026-11-27; 2026-12-24/2027-01-02\n");
  }

  private static void read(String kind, String text) {
    asPlanner()
        .contentType("text/csv")
        .body(text.getBytes(StandardCharsets.UTF_8))
        .post("/api/v1/imports/" + kind)
        .then()
        .statusCode(200)
        .body("rows.rejected", equalTo(0));
  }

  private static Map<String, List<Object>> scores() {
    Map<String, List<Object>> scores = new TreeMap<>();
    String next = "";
    do {
      JsonPath page =
          asPlanner()
              .queryParam("limit", 500)
              .queryParam("after", next)
              .get("/api/v1/units")
              .jsonPath();
      List<Map<String, Object>> items = page.getList("items");
      for (Map<String, Object> item : items) {
        Map<?, ?> unit = (Map<?, ?>) item.get("unit");
        scores.put(
            unit.get("customer") + "/" + unit.get("site") + "/" + unit.get("tag"),
            List.of(item.get("score"), item.get("range"), item.get("completeness")));
      }
      next = page.getString("next");
    } while (next != null);
    return scores;
  }

  private void empty() throws Exception {
    try (Connection connection = database.getConnection();
        Statement statement = connection.createStatement()) {
      List<String> tables = new ArrayList<>();
      try (ResultSet found =
          statement.executeQuery(
              "select table_name from information_schema.tables where table_schema = 'public'"
                  + " and table_type = 'BASE TABLE' and table_name not in"
                  + " ('flyway_schema_history', 'account', 'feed_head', 'turn')")) {
        while (found.next()) {
          tables.add(found.getString(1));
        }
      }
      assertTrue(tables.contains("unit"), tables.toString());
      statement.execute("set referential_integrity false");
      for (String table : tables) {
        statement.execute("delete from \"" + table + "\"");
      }
      statement.execute("set referential_integrity true");
    }
  }

  // CWE-1236
  @Test
  void noCellActsAsAFormula() {
    read("customers", "customer,name\nSPREAD,=HYPERLINK(1)\n");
    String text = export("customers", "csv");
    assertTrue(text.contains("SPREAD,'=HYPERLINK(1)"), text);
  }

  // the CSV is read by OpenCSV, the lines by Jackson: every cell of either is in the other
  @ParameterizedTest
  @FieldSource("KINDS")
  void theLinesOfJsonSayTheSameAsTheCsv(String kind) throws Exception {
    addWhatIsHardToKeep();
    List<Map<String, String>> ofCsv = new ArrayList<>();
    try (CSVReader csv =
        new CSVReaderBuilder(new StringReader(export(kind, "csv")))
            .withCSVParser(new RFC4180ParserBuilder().build())
            .build()) {
      String[] names = csv.readNext();
      for (String[] cells = csv.readNext(); cells != null; cells = csv.readNext()) {
        Map<String, String> row = new TreeMap<>();
        for (int i = 0; i < names.length; i++) {
          if (!cells[i].isEmpty()) {
            row.put(names[i], FormulaGuard.undo(cells[i]));
          }
        }
        ofCsv.add(row);
      }
    }
    ObjectMapper json = new ObjectMapper();
    List<Map<String, String>> ofLines = new ArrayList<>();
    for (String line : export(kind, "ndjson").split("\n")) {
      ofLines.add(json.readValue(line, new TypeReference<TreeMap<String, String>>() {}));
    }
    assertTrue(!ofCsv.isEmpty(), "there are rows");
    assertEquals(ofCsv, ofLines);
  }

  @Test
  void aKindThatIsNoneIsTold() {
    asPlanner()
        .get("/api/v1/exports/cars.csv")
        .then()
        .statusCode(404)
        .contentType("application/problem+json");
  }
}
