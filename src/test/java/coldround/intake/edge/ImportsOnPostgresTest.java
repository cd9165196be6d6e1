package coldround.intake.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import coldround.Postgres;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.ValidatableResponse;
import org.junit.jupiter.api.Test;

/** The same files do the same on the other database. */
@QuarkusTest
@TestProfile(Postgres.class)
class ImportsOnPostgresTest {

  private static ValidatableResponse send(String kind, String query, String text) {
    return asPlanner()
        .contentType("text/csv")
        .body(text)
        .post("/api/v1/imports/" + kind + query)
        .then()
        .statusCode(200);
  }

  @Test
  void listsAreAppliedTwiceWithoutChangeAndBadRowsComeBack() {
    send("customers", "", "customer,name\nPG,Harbor Grocers\n").body("rows.created", equalTo(1));
    send("sites", "", "customer,site,latitude\nPG,S1,45.5\n").body("rows.created", equalTo(1));
    String units = "customer,site,unit,kind,charge [lb]\nPG,S1,U1,chiller,38\nPG,S1,U2,boat,1\n";
    send("units", "?preview=true", units).body("rows.created", equalTo(1));
    String id =
        send("units", "", units)
            .body("rows.created", equalTo(1), "rows.rejected", equalTo(1))
            .extract()
            .path("id");
    send("units", "", units).body("rows.unchanged", equalTo(1), "rows.created", equalTo(0));
    asPlanner()
        .get("/api/v1/imports/" + id + "/rejected")
        .then()
        .body(containsString("PG,S1,U2,boat,1,3,kind,\"'boat' is none of the codes of kind."));
    asPlanner()
        .get("/api/v1/imports/" + id)
        .then()
        .body(
            "problems[0].code", equalTo("unknown-code"), "problemsByCode.unknown-code", equalTo(1));
  }
}
