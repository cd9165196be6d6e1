package coldround.http;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Answers are given again only while nothing has been written, and to whom they were given. */
@QuarkusTest
@TestProfile(FileStore.class)
class KeptAnswersTest {

  @Inject KeptAnswers answers;

  @BeforeEach
  void aUnitIsThere() {
    Api.put("customers", "customer,name\nKEPT,Kept\nKEPT2,Others\n");
    Api.put("sites", "customer,site\nKEPT,S\nKEPT2,S\n");
    Api.put("units", "customer,site,unit,kind\nKEPT,S,U,walk-in-cooler\nKEPT2,S,U2,ice-machine\n");
  }

  private static String unit() {
    return Api.asPlanner().get("/api/v1/units?customer=KEPT").path("items[0].unit.id");
  }

  private static String address(String path) {
    return path.replace("UNIT", unit());
  }

  /** The same bytes and what was said about them, the second time without working it out. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/units/UNIT",
        "/upkeep",
        "/api/v1/units?customer=KEPT",
        "/api/v1/units/UNIT/condition",
        "/api/v1/tasks?customer=KEPT&limit=2"
      })
  void whatNobodyHasChangedIsGivenAgain(String path) {
    String address = address(path);
    Response first = Api.asPlanner().get(address);
    long given = answers.given();
    Response second = Api.asPlanner().get(address);
    // background work of the service may have written something in between
    for (int i = 0; i < 20 && answers.given() == given; i++) {
      second = Api.asPlanner().get(address);
    }
    assertTrue(answers.given() > given);
    assertEquals(first.asString(), second.asString());
    for (String header :
        new String[] {"Content-Type", "ETag", "Link", "Content-Security-Policy", "Cache-Control"}) {
      assertEquals(first.headers().getValues(header), second.headers().getValues(header), header);
    }
  }

  @Test
  void aTagIsAnsweredWhetherTheBodyIsKnownOrNot() {
    String address = address("/api/v1/units/UNIT/condition?asOf=2026-01-01");
    String tag = Api.asPlanner().get(address).header("ETag");
    Api.put("customers", "customer,name\nKEPT,Anything\n");
    for (int i = 0; i < 3; i++) {
      Api.asPlanner()
          .header("If-None-Match", tag)
          .get(address)
          .then()
          .statusCode(304)
          .header("ETag", equalTo(tag));
    }
    Api.asPlanner().get(address).then().statusCode(200).header("ETag", equalTo(tag));
    Api.asPlanner().header("If-None-Match", "\"x\"").get(address).then().statusCode(200);
  }

  @Test
  void whatIsWrittenIsThereAtOnce() {
    String address = address("/units/UNIT");
    for (int i = 0; i < 12; i++) {
      Api.asPlanner().get(address);
      Api.asPlanner().get(address).then().body(not(containsString("model " + i + ".")));
      Api.put("units", "customer,site,unit,kind,model\nKEPT,S,U,walk-in-cooler,model " + i + ".\n");
      Api.asPlanner().get(address).then().body(containsString("model " + i + "."));
    }
  }

  /** Each writer sees what it wrote, whatever others read and write at the time. */
  @Test
  void everyoneSeesTheirOwn() throws Exception {
    AtomicBoolean ended = new AtomicBoolean();
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try {
      Callable<Void> read =
          () -> {
            while (!ended.get()) {
              Api.asPlanner().get("/api/v1/units?customer=KEPT2").then().statusCode(200);
            }
            return null;
          };
      Future<Void> reader = threads.submit(read);
      Future<Void> second = threads.submit(read);
      Future<Void> writer =
          threads.submit(
              () -> {
                for (int i = 0; i < 30; i++) {
                  Api.put("units", "customer,site,unit,kind\nKEPT2,S,W" + i + ",ice-machine\n");
                  Api.asPlanner()
                      .get("/api/v1/units?customer=KEPT2&limit=100")
                      .then()
                      .body("items.unit.tag", hasItem("W" + i));
                }
                return null;
              });
      writer.get();
      ended.set(true);
      reader.get();
      second.get();
    } finally {
      ended.set(true);
      threads.shutdownNow();
    }
  }

  @Test
  void nobodyIsGivenWhatIsAnothers() {
    String others = "/api/v1/units?customer=KEPT2";
    Api.asPlanner().get(others).then().body("items.unit.customer", hasItem("KEPT2"));
    String token =
        Api.asPlanner()
            .contentType("application/json")
            .body("{\"name\": \"Kept alone\", \"role\": \"customer\", \"customer\": \"KEPT\"}")
            .post("/api/v1/accounts")
            .then()
            .statusCode(201)
            .extract()
            .path("token");
    for (int i = 0; i < 3; i++) {
      RestAssured.given()
          .auth()
          .preemptive()
          .oauth2(token)
          .get(others)
          .then()
          .statusCode(200)
          .body("items", hasSize(0));
      Api.asPlanner().get(others).then().body("items.unit.customer", hasItem("KEPT2"));
    }
  }

  @Test
  void eachReaderHasItsOwnLanguage() {
    for (int i = 0; i < 3; i++) {
      Api.asPlanner()
          .header("Accept-Language", "de")
          .get("/")
          .then()
          .body(containsString("data-decimal=\",\""));
      Api.asPlanner()
          .header("Accept-Language", "en")
          .get("/")
          .then()
          .body(not(containsString("data-decimal=\",\"")));
    }
  }
}
