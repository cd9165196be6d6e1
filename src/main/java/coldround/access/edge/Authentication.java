package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Secret;
import coldround.http.Problem;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.security.identity.request.BaseAuthenticationRequest;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpCredentialTransport;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.HttpMethod;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Knows callers by bearer token (RFC 6750) and page visitors by the cookie of their session. */
@ApplicationScoped
class Authentication implements HttpAuthenticationMechanism {

  static final String COOKIE = "coldround";

  private static final String BEARER = "Bearer ";
  private static final Set<HttpMethod> SAFE =
      Set.of(HttpMethod.GET, HttpMethod.HEAD, HttpMethod.OPTIONS);

  private final ObjectMapper json;

  @Inject
  Authentication(ObjectMapper json) {
    this.json = json;
  }

  /** A secret that was sent, and whether it is the key of a page session. */
  static final class Shown extends BaseAuthenticationRequest {
    final Secret secret;
    final boolean session;

    Shown(Secret secret, boolean session) {
      this.secret = secret;
      this.session = session;
    }
  }

  @Override
  public Uni<SecurityIdentity> authenticate(
      RoutingContext context, IdentityProviderManager identities) {
    Optional<Shown> shown = token(context).or(() -> session(context));
    return shown.isEmpty() ? Uni.createFrom().nullItem() : identities.authenticate(shown.get());
  }

  private static Optional<Shown> token(RoutingContext context) {
    String header = context.request().getHeader("Authorization");
    return header != null && header.regionMatches(true, 0, BEARER, 0, BEARER.length())
        ? Optional.of(new Shown(new Secret(header.substring(BEARER.length()).strip()), false))
        : Optional.empty();
  }

  private static Optional<Shown> session(RoutingContext context) {
    Cookie cookie = context.request().getCookie(COOKIE);
    return cookie != null && ownPage(context)
        ? Optional.of(new Shown(new Secret(cookie.getValue()), true))
        : Optional.empty();
  }

  // a cookie goes along with forms of foreign pages too: only our own may change anything by it
  private static boolean ownPage(RoutingContext context) {
    if (SAFE.contains(context.request().method())) {
      return true;
    }
    String origin = context.request().getHeader("Origin");
    return origin != null
        && origin.substring(origin.indexOf("//") + 2).equals(context.request().getHeader("Host"));
  }

  @Override
  public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
    return Set.of(Shown.class);
  }

  @Override
  public Uni<HttpCredentialTransport> getCredentialTransport(RoutingContext context) {
    return Uni.createFrom()
        .item(new HttpCredentialTransport(HttpCredentialTransport.Type.AUTHORIZATION, "bearer"));
  }

  @Override
  public Uni<ChallengeData> getChallenge(RoutingContext context) {
    return Uni.createFrom().item(new ChallengeData(401, "WWW-Authenticate", "Bearer"));
  }

  @Override
  public Uni<Boolean> sendChallenge(RoutingContext context) {
    if (forPrograms(context)) {
      refuse(context);
    } else {
      context.response().setStatusCode(303).putHeader("Location", "/enter").end();
    }
    return Uni.createFrom().item(true);
  }

  private static boolean forPrograms(RoutingContext context) {
    return context.normalizedPath().startsWith("/api/")
        || !SAFE.contains(context.request().method());
  }

  private void refuse(RoutingContext context) {
    Problem problem =
        new Problem(
            401,
            "not-known",
            "Who are you?",
            "Send a token as 'Authorization: Bearer …'. The first start shows the planner's, or"
                + " COLDROUND_TOKEN sets it.",
            List.of());
    try {
      context
          .response()
          .setStatusCode(401)
          .putHeader("WWW-Authenticate", "Bearer")
          .putHeader("Content-Type", Problem.MEDIA_TYPE.toString())
          .end(json.writeValueAsString(problem.body()));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Looks up whose secret it is. */
  @ApplicationScoped
  static class Identities implements IdentityProvider<Shown> {

    private final Accounts accounts;

    @Inject
    Identities(Accounts accounts) {
      this.accounts = accounts;
    }

    @Override
    public Class<Shown> getRequestType() {
      return Shown.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(Shown shown, AuthenticationRequestContext context) {
      return context.runBlocking(
          () ->
              (shown.session ? accounts.bySession(shown.secret) : accounts.byToken(shown.secret))
                  .map(Identities::identity)
                  .orElse(null));
    }

    private static SecurityIdentity identity(Account account) {
      return QuarkusSecurityIdentity.builder()
          .setPrincipal(new QuarkusPrincipal(account.id()))
          .addRole(account.role().code())
          .build();
    }
  }
}
