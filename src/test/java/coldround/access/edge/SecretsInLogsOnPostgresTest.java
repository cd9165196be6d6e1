package coldround.access.edge;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Postgres;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.List;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(Postgres.class)
class SecretsInLogsOnPostgresTest extends SecretsInLogsTest {

  /** The database tells what is wrong with a row by the row. */
  @Test
  void norIsARowThatTheStoreRefuses() {
    String type = "application/json";
    asPlanner()
        .contentType(type)
        .body("{\"url\": \"http://127.0.0.1:9/hook\", \"description\": \"a\\u0000b\"}")
        .post("/api/v1/subscriptions");
    asPlanner()
        .contentType(type)
        .body("{\"name\": \"a\\u0000b\", \"role\": \"scheduler\"}")
        .post("/api/v1/accounts");
    assertTrue(logged.tells("what was sent cannot be stored"), "rows were refused");
    assertEquals(List.of(), logged.giveAway("whsec_|[0-9a-f]{64}"));
  }
}
