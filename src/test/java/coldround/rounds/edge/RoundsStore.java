package coldround.rounds.edge;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** The demo fleet in a database of its own. */
public class RoundsStore implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "coldround.demo",
        "true",
        "coldround.time-zone",
        "America/New_York",
        "quarkus.datasource.jdbc.url",
        "jdbc:h2:mem:rounds;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;"
            + "DEFAULT_NULL_ORDERING=HIGH");
  }
}
