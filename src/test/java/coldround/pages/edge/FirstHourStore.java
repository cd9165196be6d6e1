package coldround.pages.edge;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** A service that was started for the first time. */
public class FirstHourStore implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "quarkus.datasource.jdbc.url",
        "jdbc:h2:mem:first-hour;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;"
            + "DEFAULT_NULL_ORDERING=HIGH");
  }
}
