package coldround.access.edge;

import coldround.access.OpenDoor;
import io.quarkus.logging.Log;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Looks at the start whether the service would be open to other machines without TLS. */
@ApplicationScoped
class DoorCheck {

  private final String host;
  private final String insecure;
  private final boolean meant;

  @Inject
  DoorCheck(
      @ConfigProperty(name = "quarkus.http.host") String host,
      @ConfigProperty(name = "quarkus.http.insecure-requests", defaultValue = "enabled")
          String insecure,
      @ConfigProperty(name = "coldround.plain-http") boolean meant) {
    this.host = host;
    this.insecure = insecure;
    this.meant = meant;
  }

  void atStart(@Observes @Priority(1) StartupEvent start) {
    OpenDoor.check(host, insecure, meant).ifPresent(Log::warn);
  }
}
