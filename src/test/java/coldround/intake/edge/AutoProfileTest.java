package coldround.intake.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A profile proposed from a file: taken where it is sure, asked where it is not. */
@QuarkusTest
class AutoProfileTest {

  private static ValidatableResponse send(String kind, String query, byte[] file) {
    return asPlanner()
        .contentType("text/csv")
        .body(file)
        .post("/api/v1/imports/" + kind + query)
        .then();
  }

  @ParameterizedTest
  @CsvSource({"example-a", "example-b", "example-c"})
  void aLayoutThatIsKnownNeedsNoName(String example) throws IOException {
    Path folder = Path.of("demo-data", "profiles-examples");
    byte[] equipment = Files.readAllBytes(folder.resolve(example + "-equipment.csv"));
    byte[] service = Files.readAllBytes(folder.resolve(example + "-service.csv"));
    for (String kind : List.of("customers", "sites", "units")) {
      send(kind, "?profile=auto", equipment).statusCode(200).body("rows.rejected", equalTo(0));
    }
    send("visits", "?profile=auto", service)
        .statusCode(200)
        .body("rows.rejected", equalTo(0), "detected.profile", equalTo("auto"))
        .body("mapping.columns.column", hasItems("visit", "date", "head_pressure"))
        .body("mapping.columns.sure", everyItem(equalTo(true)));
  }

  @Test
  void whatIsNotSureIsAskedAndTheMendedProposalIsSaved() {
    String own = "own-" + UUID.randomUUID().toString().substring(0, 8);
    String customer = "A" + UUID.randomUUID().toString().substring(0, 8);
    byte[] file =
        ("Customer,Site,Tag No,Unit Kind,Refrig\n" + customer + ",S1,U1,Chiller,R-22\n").getBytes();
    send("customers", "", ("customer\n" + customer + "\n").getBytes());
    send("sites", "", ("customer,site\n" + customer + ",S1\n").getBytes());
    Map<String, Object> proposal =
        send("units", "?profile=auto", file)
            .statusCode(422)
            .body("type", equalTo("urn:coldround:problem:mapping-unsure"))
            .body("missing", hasItem("unit"))
            .body("columns.find { it.header == 'Refrig' }.column", equalTo("refrigerant"))
            .body("columns.find { it.header == 'Customer' }.confidence", equalTo(1.0f))
            .extract()
            .path("proposal");
    @SuppressWarnings("unchecked")
    Map<String, Map<String, Object>> columns =
        (Map<String, Map<String, Object>>) proposal.get("columns");
    columns.get("units").put("unit", Map.of("aliases", List.of("Tag No")));
    columns.get("units").put("kind", Map.of("aliases", List.of("Unit Kind")));
    proposal.put("name", own);
    save(proposal).statusCode(201);
    save(proposal).statusCode(200);
    asPlanner()
        .get("/api/v1/profiles/" + own)
        .then()
        .statusCode(200)
        .body("columns.units.unit.aliases", equalTo(List.of("tag_no")));
    asPlanner().get("/api/v1/profiles").then().body("items.name", hasItems(own, "standard"));
    send("units", "?profile=" + own, file)
        .statusCode(200)
        .body("rows.created", equalTo(1), "rows.rejected", equalTo(0));
  }

  private static ValidatableResponse save(Map<String, Object> profile) {
    return asPlanner()
        .contentType("application/json")
        .body(profile)
        .post("/api/v1/profiles")
        .then();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "standard | columns | {}                                            | 409 | belongs to",
        "No Name  | columns | {}                                            | 400 | lower-case",
        "mine     | columns | {\"visits\":{\"pressure\":{\"aliases\":[\"P\"]}}} | 400 | no column",
        "mine     | columns | {\"boats\":{}}                                | 400 | no kind boats",
        "mine     | columns | {\"visits\":{\"box\":{\"patterns\":[\"(\"]}}} | 400 | profile",
        "mine     | columns | {\"visits\":{\"box\":null}}                   | 400 | profile",
        "mine     | dates   | \"sometimes\"                                 | 400 | no order",
      })
  void aProfileThatCannotWorkIsRefusedInWords(
      String name, String member, String value, int status, String told) {
    asPlanner()
        .contentType("application/json")
        .body("{\"name\":\"" + name + "\",\"" + member + "\":" + value + "}")
        .post("/api/v1/profiles")
        .then()
        .statusCode(status)
        .body("detail", containsString(told));
  }

  @Test
  void aProfileThatIsNotThereIsNamedWithThoseThatAre() {
    asPlanner().get("/api/v1/profiles/nobody").then().statusCode(404);
    String detail =
        send("units", "?profile=nobody", new byte[0]).statusCode(400).extract().path("detail");
    assertEquals(true, detail.contains("example-a"), detail);
  }
}
