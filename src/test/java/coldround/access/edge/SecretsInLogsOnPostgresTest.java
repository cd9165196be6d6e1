package coldround.access.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Postgres;
import coldround.access.Secret;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(Postgres.class)
class SecretsInLogsOnPostgresTest extends SecretsInLogsTest {

  /** The database tells what is wrong with a row by the row; no call gets such a text so far. */
  @Test
  void norIsARowThatTheStoreRefuses() {
    AccountRow row = new AccountRow();
    row.id = "refused";
    row.name = "a\0b";
    row.role = "scheduler";
    row.created = Instant.EPOCH;
    row.token(Secret.random(), Instant.EPOCH);
    assertThrows(
        RuntimeException.class,
        () -> QuarkusTransaction.requiringNew().run(() -> row.persistAndFlush()));
    assertTrue(logged.tells("0x00"), "the row was refused");
    assertEquals(List.of(), logged.giveAway("whsec_|[0-9a-f]{64}"));
  }
}
