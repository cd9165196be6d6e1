package coldround;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/**
 * A service with the demo fleet in a database of its own; who changes the fleet comes back to it.
 */
public class DemoServed implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "coldround.demo",
        "true",
        "coldround.time-zone",
        "America/New_York",
        "quarkus.datasource.jdbc.url",
        "jdbc:h2:mem:demo-served;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;"
            + "DEFAULT_NULL_ORDERING=HIGH");
  }
}
