package coldround.access.edge;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.List;
import java.util.Map;

/**
 * Persons log in at a provider of OpenID Connect, which runs beside the service; programs read the
 * log.
 */
public class WithProvider implements QuarkusTestProfile {

  /** Where its log goes too, in JSON. */
  static final String LOG = "target/with-provider.log";

  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "quarkus.oidc.tenant-enabled", "true",
        "coldround.provider.name", "Harbour House",
        "quarkus.log.file.enabled", "true",
        "quarkus.log.file.path", LOG,
        "quarkus.log.file.json.enabled", "true",
        "quarkus.datasource.jdbc.url",
            "jdbc:h2:mem:provider;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;"
                + "DEFAULT_NULL_ORDERING=HIGH");
  }

  @Override
  public List<TestResourceEntry> testResources() {
    return List.of(new TestResourceEntry(OpenIdProvider.class));
  }
}
