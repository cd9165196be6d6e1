package coldround.access.edge;

import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Postgres;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(Postgres.class)
class SecretsInLogsOnPostgresTest extends SecretsInLogsTest {

  @Test
  @Override
  void norIsARowThatTheStoreRefuses() {
    super.norIsARowThatTheStoreRefuses();
    assertTrue(logged.tells("what was sent cannot be stored"), "rows were refused");
  }
}
