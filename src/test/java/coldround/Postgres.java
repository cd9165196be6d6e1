package coldround;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;

/**
 * Runs a test on a real PostgreSQL that is started for it: {@code @TestProfile(Postgres.class)}.
 */
public final class Postgres implements QuarkusTestProfile {

  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "quarkus.datasource.db-kind", "postgresql",
        "quarkus.datasource.username", "postgres",
        "quarkus.datasource.password", "postgres");
  }

  @Override
  public List<TestResourceEntry> testResources() {
    return List.of(new TestResourceEntry(Server.class));
  }

  /** One server for as long as the tests of the profile run. */
  public static final class Server implements QuarkusTestResourceLifecycleManager {
    private EmbeddedPostgres server;

    @Override
    public Map<String, String> start() {
      try {
        server = EmbeddedPostgres.start();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return Map.of("quarkus.datasource.jdbc.url", server.getJdbcUrl("postgres", "postgres"));
    }

    @Override
    public void stop() {
      try {
        server.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
