package coldround.pages.edge;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.matchesRegex;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.fleet.Kind;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Forms and links alone, as a browser without script sends them. */
@QuarkusTest
@TestProfile(DemoStore.class)
class ImportPageTest {

  private static String send(String kind, String text) {
    Response sent =
        Api.asPlanner()
            .redirects()
            .follow(false)
            .multiPart("kind", kind)
            .multiPart("profile", "auto")
            .multiPart("file", "list.csv", text.getBytes(StandardCharsets.UTF_8), "text/csv")
            .post("/imports");
    assertEquals(303, sent.statusCode(), sent.asString());
    return sent.header("Location").replaceAll("^https?://[^/]+", "");
  }

  private static String take(String page) {
    Response taken = Api.asPlanner().redirects().follow(false).post(page + "/take");
    assertEquals(303, taken.statusCode(), taken.asString());
    return taken.header("Location").replaceAll("^https?://[^/]+", "");
  }

  @Test
  void aFileIsLookedAtAndThenTakenOnceHoweverOftenTheButtonIsPressed() {
    String page = send("customers", "customer,name\nTWICE,Twice pressed\n");
    Api.asPlanner().get("/api/v1/exports/customers.csv").then().body(not(containsString("TWICE")));
    String first = take(page);
    assertEquals(first, take(page));
    Api.asPlanner().get(first).then().statusCode(200).body(containsString("taken"));
    Api.asPlanner().get("/api/v1/exports/customers.csv").then().body(containsString("TWICE"));
  }

  @Test
  void twoHeadingsForOneColumnAreRefusedInWordsAndNothingIsLost() {
    String page = send("customers", "customer,Qqq,Zzz\nA,b,c\n");
    Api.asPlanner()
        .formParam("column-1", "note")
        .formParam("column-2", "note")
        .formParam("name", "my-own")
        .formParam("act", "save")
        .post(page)
        .then()
        .statusCode(422)
        .body(containsString("Two headers are to mean"))
        .body(containsString("aria-describedby=\"column-2-wrong\""))
        .body(matchesRegex("(?s).*name=\"column-1\">.*?value=\"note\" selected.*"))
        .body(containsString("value=\"my-own\""));
  }

  @Test
  void aProfileOfSomebodyElseIsReplacedOnlyByWhoSaysSoTwice() {
    String page = send("customers", "customer,Qqq\nA,b\n");
    save(page, "harbour-lists", "").then().statusCode(303);
    String other = send("customers", "customer,Www\nA,b\n");
    save(other, "harbour-lists", "")
        .then()
        .statusCode(422)
        .body(containsString("is there already for other files"))
        .body(containsString("name=\"replaces\" value=\"harbour-lists\""));
    save(other, "harbour-lists", "harbour-lists").then().statusCode(303);
    save(other, "harbour-lists", "").then().statusCode(303);
  }

  private static Response save(String page, String name, String replaces) {
    return Api.asPlanner()
        .redirects()
        .follow(false)
        .formParam("name", name)
        .formParam("replaces", replaces)
        .formParam("act", "save")
        .post(page);
  }

  @Test
  void aProfileNeedsAGoodNameAndNotOneOfTheService() {
    String page = send("customers", "customer,Qqq\nA,b\n");
    for (String name : new String[] {"", "North Office", "standard", "auto"}) {
      int status =
          Api.asPlanner().formParam("name", name).formParam("act", "save").post(page).statusCode();
      assertTrue(status == 422 || status == 409, name + " " + status);
    }
  }

  @Test
  void aFileThatIsNotHeldAnyMoreIsSaidToBe() {
    Api.asPlanner()
        .get("/imports/files/none")
        .then()
        .statusCode(404)
        .body(containsString("not held any more"));
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void everyTemplateIsThereAndIsUnderstood(Kind kind) {
    String template = Api.asPlanner().get("/imports/templates/" + kind.code() + ".csv").asString();
    Api.asPlanner()
        .contentType("text/csv")
        .body(template)
        .post("/api/v1/imports/" + kind.code() + "?preview=true")
        .then()
        .statusCode(200);
  }
}
