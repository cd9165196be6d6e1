package coldround.intake.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The lists of three invented contractors go in as they are, each by its profile. */
@QuarkusTest
class ExampleProfilesTest {

  private static final Path FOLDER = Path.of("demo-data", "profiles-examples");

  @Inject Fleet fleet;

  private static ValidatableResponse send(String example, String file, String kind)
      throws IOException {
    return asPlanner()
        .contentType("text/csv")
        .body(Files.readAllBytes(FOLDER.resolve(example + "-" + file + ".csv")))
        .post("/api/v1/imports/" + kind + "?profile=" + example)
        .then()
        .statusCode(200);
  }

  private static void applyAll(String example) throws IOException {
    for (String kind : List.of("customers", "sites", "units")) {
      send(example, "equipment", kind).body("applied", equalTo(true), "rows.rejected", equalTo(0));
    }
    send(example, "service", "visits").body("applied", equalTo(true), "rows.rejected", equalTo(0));
  }

  @ParameterizedTest
  @ValueSource(strings = {"example-a", "example-b", "example-c"})
  void noRowIsRejectedAndNothingIsDoubted(String example) throws IOException {
    applyAll(example);
    send(example, "service", "visits")
        .body("rows.unchanged", greaterThan(25), "rows.rejected", equalTo(0))
        .body("problemsByCode.suspect-value", equalTo(null))
        .body("problemsByCode.unknown-column", equalTo(null))
        .body("problemsByCode.measure-assumed", equalTo(null));
    send(example, "equipment", "units").body("problemsByCode.unknown-refrigerant", equalTo(null));
  }

  private UnitHistory unit(String customer, String site, String tag) {
    List<UnitHistory> found = new ArrayList<>();
    fleet.eachHistory(new FleetFilter(customer, site, "", "", ""), found::add);
    return found.stream().filter(one -> one.unit().tag().equals(tag)).findFirst().orElseThrow();
  }

  private static Visit visit(UnitHistory unit, String number) {
    return unit.visits().stream().filter(v -> v.number().equals(number)).findFirst().orElseThrow();
  }

  @Test
  void theAmericanLogIsReadMonthFirstAndItsCellsAreSplit() throws IOException {
    applyAll("example-a");
    UnitHistory ice = unit("FEN", "Depot Sq", "ICE 1");
    assertEquals("ice-machine", ice.unit().kind());
    assertEquals("2017-03-02", ice.unit().installed().toString());
    assertEquals("R-404A", ice.unit().refrigerant());
    Visit ungauged = visit(ice, "5107");
    assertEquals("2025-11-06", ungauged.date().toString());
    assertEquals(
        "no gauges",
        ungauged.readings().stream()
            .filter(reading -> reading.quantity().equals("head_pressure"))
            .findFirst()
            .orElseThrow()
            .notTaken());
    Visit washed = visit(ice, "5115");
    assertEquals(List.of("condenser-coil-cleaned"), washed.work());
    assertEquals("blocked", washed.finding("condenser_coil").orElseThrow());
    assertEquals("270 psig", washed.value("head_pressure").orElseThrow().toString());
  }

  @Test
  void theIrishLogIsReadDayFirstInKilopascals() throws IOException {
    applyAll("example-b");
    Visit visit = visit(unit("FKR", "Mill Lane", "CR2"), "J20377");
    assertEquals("2026-08-01", visit.date().toString());
    assertEquals("951 kPag", visit.value("head_pressure").orElseThrow().toString());
    assertEquals("24.0 °C", visit.value("ambient").orElseThrow().toString());
  }

  @Test
  void theGermanLogIsReadWithItsCommasAndLetters() throws IOException {
    applyAll("example-c");
    Visit visit = visit(unit("Stadtküche Erlenbach", "Schule Süd", "KS 1"), "26-0333");
    assertEquals("2026-07-31", visit.date().toString());
    assertEquals("10.80 barg", visit.value("head_pressure").orElseThrow().toString());
    assertEquals("breakdown", visit.purpose());
    assertEquals("läuft zu lange", visit.note());
  }
}
