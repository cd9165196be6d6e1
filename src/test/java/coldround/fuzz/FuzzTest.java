package coldround.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A slice of what {@code fuzz REQUESTS SEED} sends, on what the tests before have left in the
 * store.
 */
@QuarkusTest
class FuzzTest {

  private static final int REQUESTS = 1200;

  @Test
  void whateverIsSentIsAnsweredSoonAndNeverByAFaultOfTheService() throws Exception {
    Fuzzing fuzzing = new Fuzzing("localhost", RestAssured.port, Api.TOKEN, 20);
    fuzzing.run(0, REQUESTS);
    Fuzzing.Found found = fuzzing.found();
    assertEquals(List.of(), found.faults());
    assertEquals(REQUESTS, found.requests());
    assertTrue(found.statuses().get(200) > REQUESTS / 20, "few got far: " + found.statuses());
    assertTrue(found.statuses().get(400) > REQUESTS / 20, "few were wild: " + found.statuses());
  }
}
