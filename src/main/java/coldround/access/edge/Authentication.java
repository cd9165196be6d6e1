package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Secret;
import coldround.access.WayOn;
import coldround.access.edge.Accounts.Found;
import coldround.http.Caller;
import coldround.http.Problem;
import coldround.http.StoreFaults;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.security.AuthenticationFailedException;
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
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.net.SocketAddress;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Knows callers by bearer token (RFC 6750) and page visitors by the cookie of their session. */
@ApplicationScoped
class Authentication implements HttpAuthenticationMechanism {

  static final String COOKIE = "coldround";

  private static final String BEARER = "Bearer ";
  private static final Set<HttpMethod> SAFE =
      Set.of(HttpMethod.GET, HttpMethod.HEAD, HttpMethod.OPTIONS);

  private static final String REFUSED = "coldround.refused";

  private static final int BEFORE_THE_EXTENSIONS = 2000;

  private final Doorkeeper door;
  private final ObjectMapper json;

  @Inject
  Authentication(Doorkeeper door, ObjectMapper json) {
    this.door = door;
    this.json = json;
  }

  /** A secret that was sent, and whether it is the key of a page session. */
  static final class Shown extends BaseAuthenticationRequest {
    final Secret secret;
    final boolean session;
    final String address;
    private volatile String ended = "";

    Shown(Secret secret, boolean session, String address) {
      this.secret = secret;
      this.session = session;
      this.address = address;
    }
  }

  @Override
  public int getPriority() {
    return BEFORE_THE_EXTENSIONS;
  }

  @Override
  public Uni<SecurityIdentity> authenticate(
      RoutingContext context, IdentityProviderManager identities) {
    Optional<Shown> shown = token(context).or(() -> session(context));
    if (shown.isEmpty()) {
      return Uni.createFrom().nullItem();
    }
    Shown its = shown.get();
    Optional<Account> seen = door.seenLately(its.session, its.secret);
    if (seen.isPresent()) {
      return paced(context, seen.get());
    }
    Optional<Duration> pause = its.session ? Optional.empty() : door.pause(its.address, its.secret);
    if (pause.isPresent()) {
      context.put(REFUSED, Doorkeeper.wait(pause.get()));
      return Uni.createFrom().failure(new AuthenticationFailedException());
    }
    return identities
        .authenticate(its)
        .onFailure(AuthenticationFailedException.class)
        .recoverWithNull()
        .chain(
            known -> {
              if (known != null) {
                return paced(context, known.getAttribute(Caller.ACCOUNT));
              }
              // nobody, who may still see what is open to everybody
              context.put(REFUSED, unknown(its));
              return Uni.createFrom().nullItem();
            })
        .onFailure(fault -> StoreFaults.of(fault).isPresent())
        .recoverWithUni(
            fault -> {
              // who it is cannot be known now, which does not make it nobody
              context.put(REFUSED, StoreFaults.of(fault).orElseThrow());
              return Uni.createFrom().failure(new AuthenticationFailedException());
            });
  }

  private Uni<SecurityIdentity> paced(RoutingContext context, Account account) {
    Optional<Problem> tooMany = door.tooMany(account, context);
    if (tooMany.isEmpty()) {
      return Uni.createFrom().item(identity(account));
    }
    context.put(REFUSED, tooMany.get());
    return Uni.createFrom().failure(new AuthenticationFailedException());
  }

  private static SecurityIdentity identity(Account account) {
    return QuarkusSecurityIdentity.builder()
        .setPrincipal(new QuarkusPrincipal(account.id()))
        .addRole(account.role().code())
        .addAttribute(Caller.ACCOUNT, account)
        .build();
  }

  private static Optional<Shown> token(RoutingContext context) {
    String header = context.request().getHeader("Authorization");
    return header != null && header.regionMatches(true, 0, BEARER, 0, BEARER.length())
        ? Optional.of(
            new Shown(
                new Secret(header.substring(BEARER.length()).strip()), false, address(context)))
        : Optional.empty();
  }

  private static Optional<Shown> session(RoutingContext context) {
    Cookie cookie = context.request().getCookie(COOKIE);
    return cookie != null && ownPage(context)
        ? Optional.of(new Shown(new Secret(cookie.getValue()), true, address(context)))
        : Optional.empty();
  }

  static String address(RoutingContext context) {
    SocketAddress remote = context.request().remoteAddress();
    return remote == null ? "" : String.valueOf(remote.hostAddress());
  }

  // a cookie goes along with forms of foreign pages too: only our own may change anything by it
  private static boolean ownPage(RoutingContext context) {
    if (SAFE.contains(context.request().method())) {
      return true;
    }
    return context.request().getHeader("Origin") != null && !fromElsewhere(context);
  }

  /** True where the browser says that the call comes from a page that is not ours. */
  static boolean fromElsewhere(RoutingContext context) {
    String origin = context.request().getHeader("Origin");
    return origin != null
        && !origin.substring(origin.indexOf("//") + 2).equals(context.request().getHeader("Host"));
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
    Problem problem = context.get(REFUSED);
    boolean wait = problem != null && problem.status() != 401;
    boolean form = !SAFE.contains(context.request().method()) && ExpiredForm.asked(context);
    if (form && !wait) {
      ExpiredForm.send(context, "Bearer");
    } else if (forPrograms(context) || wait) {
      answer(context, problem == null ? NOT_KNOWN : problem);
    } else {
      String onward = context.request().uri();
      String wayIn = WayOn.of(onward).map(its -> its.by("/enter")).orElse("/enter");
      context.response().setStatusCode(303).putHeader("Location", wayIn).end();
    }
    return Uni.createFrom().item(true);
  }

  private static boolean forPrograms(RoutingContext context) {
    return context.normalizedPath().startsWith("/api/")
        || !SAFE.contains(context.request().method());
  }

  private static final Problem NOT_KNOWN =
      refusal(
          "Send a token as 'Authorization: Bearer …'. The first start shows the planner's, or"
              + " COLDROUND_TOKEN sets it; a planner makes others.",
          "Bearer");

  /** RFC 6750, section 3.1. */
  private static Problem unknown(Shown shown) {
    String says =
        shown.ended.isEmpty()
            ? "Nobody has this token."
            : "This token is " + shown.ended + "; ask a planner for a new one.";
    return refusal(says, "Bearer error=\"invalid_token\", error_description=\"" + says + "\"");
  }

  private static Problem refusal(String says, String challenge) {
    return new Problem(401, "not-known", "Who are you?", says, List.of())
        .with("WWW-Authenticate", challenge);
  }

  private void answer(RoutingContext context, Problem problem) {
    try {
      HttpServerResponse response =
          context
              .response()
              .setStatusCode(problem.status())
              .putHeader("Content-Type", Problem.MEDIA_TYPE.toString())
              .putHeader(CallIds.HEADER, CallIds.of(context));
      problem.headers().forEach(response::putHeader);
      Map<String, Object> body = problem.body();
      body.put("instance", CallIds.occurrence(context));
      response.end(json.writeValueAsString(body));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Looks up whose secret it is. */
  @ApplicationScoped
  static class Identities implements IdentityProvider<Shown> {

    private final Doorkeeper door;

    @Inject
    Identities(Doorkeeper door) {
      this.door = door;
    }

    @Override
    public Class<Shown> getRequestType() {
      return Shown.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(Shown shown, AuthenticationRequestContext context) {
      return context.runBlocking(
          () -> {
            Found found =
                shown.session
                    ? door.lookAtSession(shown.secret)
                    : door.look(shown.address, shown.secret);
            shown.ended = found.ended();
            return found.opens().map(Authentication::identity).orElse(null);
          });
    }
  }
}
