package coldround.upkeep.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import coldround.Api;
import coldround.http.FileStore;
import coldround.scoring.FaultTallies;
import coldround.scoring.statistics.FaultTally;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Priors that another instance has estimated reach this one through the store, where nothing is
 * written any more when it takes them up: an answer that was kept just before must not outlive it.
 */
@QuarkusTest
@TestProfile(FileStore.class)
class PriorsOfAnotherInstanceTest {

  private static final String CLASS = "self-contained";

  @Inject FaultTallies tallies;
  @Inject FleetPriors priors;
  @Inject Everyday everyday;

  private Map<String, FaultTally> own;

  @BeforeEach
  void aUnitWithFaults() {
    Api.put("customers", "customer,name\nTAKEN,Taken up\n");
    Api.put("sites", "customer,site\nTAKEN,S\n");
    Api.put("units", "customer,site,unit,kind,installed\nTAKEN,S,U,reach-in-cooler,2019-03-01\n");
    Api.put("visits", "customer,site,unit,visit,date\nTAKEN,S,U,1,2023-04-11\n");
    Api.put(
        "faults",
        "customer,site,unit,date,failure_mode\n"
            + "TAKEN,S,U,2025-02-15,compressor-no-start\nTAKEN,S,U,2025-06-15,short-cycling\n");
    everyday.everyHour();
    own = QuarkusTransaction.requiringNew().call(tallies::inForce);
  }

  @AfterEach
  void itsOwnAgain() {
    putInForce(own);
    everyday.followOthers();
  }

  private void putInForce(Map<String, FaultTally> sums) {
    QuarkusTransaction.requiringNew().run(() -> tallies.putInForce(sums));
  }

  @Test
  void thatAreNoOthersLeaveWhatIsKept() {
    Object held = priors.held();
    everyday.followOthers();
    assertEquals(held, priors.held());
  }

  private static String read(String accept) {
    String id = Api.asPlanner().get("/api/v1/units?customer=TAKEN").path("items[0].unit.id");
    return Api.asPlanner()
        .header("Accept", accept)
        .get("/api/v1/units/" + id + "/condition")
        .then()
        .statusCode(200)
        .extract()
        .asString();
  }

  private static String expectedFaults(String condition) {
    return JsonPath.from(condition).getString("diagnostics.expectedFaultsNextYear.value");
  }

  @Test
  void areInWhatIsReadAfterTheyWereTakenUpAlthoughNothingIsWrittenThen() {
    putInForce(
        Map.of(
            CLASS,
            IntStream.range(0, 400)
                .mapToObj(i -> FaultTally.of(i % 12, 500))
                .reduce(FaultTally.NONE, FaultTally::plus)));
    String before = read("application/json");
    for (int i = 0; i < 3; i++) {
      assertEquals(before, read("application/json"), "not taken up yet");
    }
    everyday.followOthers();
    String after = read("application/json");
    // an answer is kept for those who accept the same: for these it is worked out
    assertEquals(read("application/json, text/plain;q=0.1"), after);
    assertNotEquals(expectedFaults(before), expectedFaults(after));
  }
}
