package coldround.access.edge;

import coldround.Postgres;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Persons log in at a provider; accounts and sessions lie on PostgreSQL. */
public class WithProviderOnPostgres extends WithProvider {

  @Override
  public Map<String, String> getConfigOverrides() {
    Map<String, String> settings = new HashMap<>(super.getConfigOverrides());
    settings.remove("quarkus.datasource.jdbc.url");
    settings.put("quarkus.log.file.enabled", "false");
    settings.putAll(new Postgres().getConfigOverrides());
    return settings;
  }

  @Override
  public List<TestResourceEntry> testResources() {
    return List.of(
        new TestResourceEntry(OpenIdProvider.class), new TestResourceEntry(Postgres.Server.class));
  }
}
