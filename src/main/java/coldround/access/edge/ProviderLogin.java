package coldround.access.edge;

import io.quarkus.logging.Log;
import io.quarkus.oidc.runtime.OidcAuthenticationMechanism;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.AuthenticationRedirectException;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;

/**
 * The authorization code flow with PKCE, as the extension does it, with a page for each way in
 * which it can fail.
 */
@ApplicationScoped
class ProviderLogin implements HttpAuthenticationMechanism {

  /** Asked before the others. */
  private static final int FIRST = 3000;

  private static final String FAILED = "coldround.provider.failed";

  private final Provider provider;
  private final OidcAuthenticationMechanism flow;

  @Inject
  ProviderLogin(Provider provider, OidcAuthenticationMechanism flow) {
    this.provider = provider;
    this.flow = flow;
  }

  @Override
  public int getPriority() {
    return FIRST;
  }

  @Override
  public Uni<SecurityIdentity> authenticate(
      RoutingContext context, IdentityProviderManager identities) {
    if (!provider.meant(context)) {
      return Uni.createFrom().nullItem();
    }
    return Uni.createFrom()
        .deferred(() -> flow.authenticate(context, identities))
        .onFailure(ProviderLogin::unforeseen)
        .recoverWithUni(
            fault -> {
              context.put(FAILED, fault);
              context.put(HttpAuthenticationMechanism.class.getName(), this);
              return Uni.createFrom().failure(new AuthenticationFailedException());
            });
  }

  // a redirect is how the flow goes on, and one who is not known yet is sent to the provider
  private static boolean unforeseen(Throwable fault) {
    return !(fault instanceof AuthenticationRedirectException)
        && !(fault instanceof AuthenticationFailedException);
  }

  @Override
  public Uni<ChallengeData> getChallenge(RoutingContext context) {
    return provider.meant(context) ? flow.getChallenge(context) : Uni.createFrom().nullItem();
  }

  @Override
  public Uni<Boolean> sendChallenge(RoutingContext context) {
    if (!provider.meant(context)) {
      return Uni.createFrom().item(false);
    }
    Throwable failed = context.get(FAILED);
    if (failed != null) {
      return tell(context, failed);
    }
    KeptWay.keep(context);
    return Uni.createFrom()
        .deferred(() -> flow.sendChallenge(context))
        .onFailure()
        .recoverWithUni(fault -> tell(context, fault));
  }

  private Uni<Boolean> tell(RoutingContext context, Throwable fault) {
    ProviderFault told = ProviderFault.of(fault);
    // not the fault itself: its text holds what it said of the person, or what a stranger has sent
    Log.warnf("a log-in by %s failed: %s", provider.name(), told.why());
    String says =
        told.away()
            ? "The place where you log in does not answer. Try again in a minute, or enter with a"
                + " token."
            : "What was sent back for this log-in does not hold, or took too long. Try once more;"
                + " if it goes on, whoever runs this service finds the reason in the log.";
    context
        .response()
        .setStatusCode(told.away() ? 503 : 401)
        .putHeader("Content-Type", "text/html;charset=UTF-8")
        .putHeader("Content-Security-Policy", ExpiredForm.POLICY)
        .putHeader("X-Content-Type-Options", "nosniff")
        .putHeader("Cache-Control", "no-store")
        .putHeader(CallIds.HEADER, CallIds.of(context))
        .end(EnterPage.html(says, provider.name(), "", KeptWay.of(context)));
    return Uni.createFrom().item(true);
  }
}
