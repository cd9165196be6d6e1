package coldround.access.edge;

import io.quarkus.oidc.OidcRequestContext;
import io.quarkus.oidc.OidcTenantConfig;
import io.quarkus.oidc.TenantConfigResolver;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;

/**
 * Lets the provider speak where a person logs in and nowhere else: a cookie or token of its making
 * opens no call, whatever roles it may tell.
 */
@ApplicationScoped
class ProviderTenant implements TenantConfigResolver {

  private static final OidcTenantConfig NOBODY =
      OidcTenantConfig.builder().tenantId("nobody").tenantEnabled(false).build();

  private final Provider provider;

  @Inject
  ProviderTenant(Provider provider) {
    this.provider = provider;
  }

  @Override
  public Uni<OidcTenantConfig> resolve(
      RoutingContext context, OidcRequestContext<OidcTenantConfig> blocking) {
    // null is what the settings say
    return provider.meant(context) ? Uni.createFrom().nullItem() : Uni.createFrom().item(NOBODY);
  }
}
