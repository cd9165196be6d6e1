package coldround.access.edge;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** Limits that a test can reach. */
public class TightLimits implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "coldround.rate.at-once", "8",
        "coldround.rate.dear-at-once", "1",
        "coldround.cost.most-units", "2",
        "coldround.guessing.free", "3",
        "coldround.guessing.first-pause", "10s",
        "coldround.rate.per-minute", "60",
        "coldround.upload.most-rows", "5",
        "coldround.upload.most-bytes", "2000",
        "quarkus.datasource.jdbc.url",
            "jdbc:h2:mem:limits;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;"
                + "DEFAULT_NULL_ORDERING=HIGH");
  }
}
