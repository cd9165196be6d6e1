package coldround.intake.edge;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** The demo fleet in a database of its own, which a test may empty. */
public class ExportStore implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "coldround.demo",
        "true",
        "quarkus.datasource.jdbc.url",
        "jdbc:h2:mem:exports;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;"
            + "DEFAULT_NULL_ORDERING=HIGH");
  }
}
