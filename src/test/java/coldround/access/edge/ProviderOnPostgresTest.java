package coldround.access.edge;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What a log-in by a provider asks of the store: who it is, a session, and its end. */
@QuarkusTest
@TestProfile(WithProviderOnPostgres.class)
class ProviderOnPostgresTest {

  private static int status(String key, String address) {
    return given().redirects().follow(false).cookie("coldround", key).get(address).statusCode();
  }

  @Test
  void aSessionOfTheAccountBeginsWhateverTheCaseAndEndsWithTheLogInAndTheAccount() {
    String email = "kim-" + UUID.randomUUID() + "@contractor.example";
    String id = TwoCustomers.account("scheduler", ",'login':'" + email + "'").getString("id");
    OpenIdProvider.honest(email.toUpperCase(Locale.ROOT));

    String first = ProviderVisitor.loggedIn().then().statusCode(200).extract().cookie("coldround");
    assertEquals(200, status(first, "/upkeep"));
    assertEquals(403, status(first, "/accounts"));

    asPlanner()
        .contentType("application/json")
        .body("{\"login\": \"other-" + email + "\"}")
        .put("/api/v1/accounts/" + id + "/login")
        .then()
        .statusCode(200);
    assertEquals(303, status(first, "/upkeep"));
    ProviderVisitor.loggedIn().then().statusCode(403).body(containsString("no account here"));

    OpenIdProvider.honest("other-" + email);
    String second = ProviderVisitor.loggedIn().then().statusCode(200).extract().cookie("coldround");
    assertEquals(200, status(second, "/upkeep"));
    asPlanner().post("/api/v1/accounts/" + id + "/revoke").then().statusCode(200);
    assertEquals(303, status(second, "/upkeep"));
    ProviderVisitor.loggedIn().then().statusCode(403).body(containsString("is revoked"));
  }

  @Test
  void noTwoAccountsHaveTheSameLogIn() {
    String email = "pat-" + UUID.randomUUID() + "@contractor.example";
    TwoCustomers.account("scheduler", ",'login':'" + email + "'");
    asPlanner()
        .contentType("application/json")
        .body(
            "{\"name\": \"Pat\", \"role\": \"scheduler\", \"login\": \""
                + email.toUpperCase(Locale.ROOT)
                + "\"}")
        .post("/api/v1/accounts")
        .then()
        .statusCode(400)
        .body("errors[0].field", equalTo("/login"));
  }
}
