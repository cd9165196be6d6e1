package coldround.upkeep.edge;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** A database of its own, so that the technicians are those of the test. */
public class PlanStore implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "quarkus.datasource.jdbc.url",
        "jdbc:h2:mem:plan;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;"
            + "DEFAULT_NULL_ORDERING=HIGH");
  }
}
