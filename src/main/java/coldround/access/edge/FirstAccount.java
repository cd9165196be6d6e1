package coldround.access.edge;

import coldround.access.Secret;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Makes the first planner account, and tells its token once where nobody chose one. */
@ApplicationScoped
class FirstAccount {

  private final Accounts accounts;
  private final Optional<String> token;
  private final String host;
  private final int port;

  @Inject
  FirstAccount(
      Accounts accounts,
      @ConfigProperty(name = "coldround.token") Optional<String> token,
      @ConfigProperty(name = "quarkus.http.host") String host,
      @ConfigProperty(name = "quarkus.http.port") int port) {
    this.accounts = accounts;
    this.token = token;
    this.host = host;
    this.port = port;
  }

  void atStart(@Observes @Priority(10) StartupEvent start) {
    accounts.seeToPlanner(token.map(Secret::new).orElse(null)).ifPresent(this::tell);
  }

  // on the console and not in the log: logs are kept and sent around
  private void tell(Secret made) {
    System.out.printf(
        "%nThe planner's token, shown this once:  %s%nOpen the pages with it:  http://%s:%d/enter?token=%s%n%n",
        made.text(), host, port, made.text());
  }
}
