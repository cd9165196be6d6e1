package coldround.access.edge;

import io.quarkus.oidc.OidcConfigurationMetadata;
import io.quarkus.oidc.runtime.TenantConfigBean;
import io.quarkus.oidc.runtime.TenantConfigContext;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.jwt.JsonWebToken;

/**
 * What the operator has set of a provider of log-ins (OpenID Connect); without that there is none.
 */
@ApplicationScoped
class Provider {

  /** Where a log-in begins and ends, and the only place where a word of the provider counts. */
  static final String PATH = "/enter/provider";

  private static final String EMAIL = "email";

  private final boolean on;
  private final String name;
  private final String claim;
  private final Duration session;
  private final Optional<String> client;
  private final TenantConfigBean tenants;

  @Inject
  Provider(
      @ConfigProperty(name = "quarkus.oidc.tenant-enabled") boolean on,
      @ConfigProperty(name = "quarkus.oidc.client-id") Optional<String> client,
      @ConfigProperty(name = "coldround.provider.name") String name,
      @ConfigProperty(name = "coldround.provider.claim") String claim,
      @ConfigProperty(name = "coldround.provider.session") Duration session,
      TenantConfigBean tenants) {
    this.on = on;
    this.client = client;
    this.name = name;
    this.claim = claim;
    this.session = session;
    this.tenants = tenants;
  }

  boolean on() {
    return on;
  }

  /** True for a call by which somebody logs in at the provider. */
  boolean meant(RoutingContext context) {
    return on && PATH.equals(context.normalizedPath());
  }

  /** How people call it; empty where there is none. */
  String name() {
    return on ? name : "";
  }

  String claim() {
    return claim;
  }

  /** How long a session holds before the provider is asked again. */
  Duration session() {
    return session;
  }

  /**
   * What the provider calls the person.
   *
   * @return empty where it does not say, or says an e-mail address without having verified it
   */
  Optional<String> login(JsonWebToken token) {
    Object said = token.getClaim(claim);
    boolean sure =
        !claim.equals(EMAIL)
            || "true".equals(String.valueOf((Object) token.getClaim("email_verified")));
    return Optional.ofNullable(said).map(String::valueOf).filter(its -> sure && !its.isBlank());
  }

  /** Where the session at the provider itself ends (RP-Initiated Logout 1.0); empty if unknown. */
  String ending() {
    TenantConfigContext tenant = on ? tenants.getDefaultTenant() : null;
    OidcConfigurationMetadata metadata =
        tenant == null || !tenant.ready() ? null : tenant.getOidcMetadata();
    String ends = metadata == null ? null : metadata.getEndSessionUri();
    return ends == null
        ? ""
        : ends + "?client_id=" + URLEncoder.encode(client.orElse(""), StandardCharsets.UTF_8);
  }
}
