package coldround.feed.edge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.Optional;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigProvider;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Where others reach this service: as coldround.address says, else as it is called. */
@ApplicationScoped
class ServiceAddress {

  private final Optional<URI> said;

  @Inject
  ServiceAddress(@ConfigProperty(name = "coldround.address") Optional<String> said) {
    this.said = said.map(text -> URI.create(text.endsWith("/") ? text : text + "/"));
  }

  URI address() {
    return said.orElseGet(
        () -> {
          Config config = ConfigProvider.getConfig();
          return URI.create(
              "http://%s:%s/"
                  .formatted(
                      config.getValue("quarkus.http.host", String.class),
                      config.getValue("quarkus.http.port", String.class)));
        });
  }

  URI address(UriInfo called) {
    return said.orElseGet(called::getBaseUri);
  }
}
