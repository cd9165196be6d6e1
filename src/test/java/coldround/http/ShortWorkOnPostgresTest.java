package coldround.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldround.Postgres;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(Postgres.class)
class ShortWorkOnPostgresTest {

  @Inject Attempts attempts;
  @Inject EntityManager entities;

  /** Of a connection, with its number. */
  private Object[] settings() {
    return (Object[])
        entities
            .createNativeQuery(
                "select current_setting('plan_cache_mode') || ' ' || current_setting('jit') || ' '"
                    + " || current_setting('lock_timeout'), pg_backend_pid()",
                Object[].class)
            .getSingleResult();
  }

  private Object[] settingsElsewhere() {
    return attempts.patiently(60, this::settings);
  }

  /** Whoever has the connection next has its own. */
  private void assertOnlyThere(Object connection, Object before) {
    Object[] now = settingsElsewhere();
    for (int i = 0; i < 100 && !now[1].equals(connection); i++) {
      now = settingsElsewhere();
    }
    assertEquals(connection, now[1], "the connection was not met again");
    assertEquals(before, now[0]);
  }

  @Test
  void itsSettingsEndWithItHoweverItEnds() {
    Object before = settingsElsewhere()[0];
    Object[] within = attempts.inTransaction(this::settings);
    assertEquals("force_generic_plan off 2s", within[0]);
    assertOnlyThere(within[1], before);

    Object[] refused = new Object[1];
    assertThrows(
        Problem.class,
        () ->
            attempts.inTransaction(
                () -> {
                  refused[0] = settings()[1];
                  throw Problem.unprocessable("wrong", "Wrong", "It is.");
                }));
    assertOnlyThere(refused[0], before);
  }
}
