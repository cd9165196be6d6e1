package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Home;
import coldround.access.Secret;
import coldround.access.WayOn;
import coldround.access.edge.Accounts.Found;
import coldround.http.Caller;
import io.quarkus.logging.Log;
import io.quarkus.oidc.OidcSession;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.core.http.Cookie;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Where the provider sends a person back to, who is then known by a session of ours. */
@Path(Provider.PATH)
@Produces(MediaType.TEXT_HTML)
public class ProviderPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance entered(String onward);
  }

  /** As the extension calls its own, the one of this answer among them. */
  private static final String THEIR_COOKIES = "q_session";

  private final Accounts accounts;
  private final Provider provider;
  private final Caller caller;
  private final SecurityIdentity identity;
  private final OidcSession theirs;
  private final RoutingContext context;

  @Inject
  ProviderPage(
      Accounts accounts,
      Provider provider,
      Caller caller,
      SecurityIdentity identity,
      OidcSession theirs,
      RoutingContext context) {
    this.accounts = accounts;
    this.provider = provider;
    this.caller = caller;
    this.identity = identity;
    this.theirs = theirs;
    this.context = context;
  }

  @GET
  @PermitAll
  @Operation(hidden = true)
  public Response back() {
    if (caller.account() != null) {
      return Response.seeOther(URI.create(onward(caller.account()))).build();
    }
    if (!(identity.getPrincipal() instanceof JsonWebToken token)) {
      return Response.seeOther(URI.create("/enter")).build();
    }
    // tokens of the provider are needed for this one moment only
    theirs.logout().await().atMost(Duration.ofSeconds(5));
    context.request().cookies().stream()
        .map(Cookie::getName)
        .filter(name -> name.startsWith(THEIR_COOKIES))
        .toList()
        .forEach(context.response()::removeCookie);
    Optional<String> login = provider.login(token);
    if (login.isEmpty()) {
      return refused(
          ("The place where you log in did not say '%s' of you, or had not verified it. Whoever runs"
                  + " this service can change what it is asked for.")
              .formatted(provider.claim()));
    }
    Found found = accounts.byLogin(login.get());
    return found
        .opens()
        .map(this::entered)
        .orElseGet(
            () ->
                refused(
                    found.ended().isEmpty()
                        ? "You are logged in as %s, but no account here has that log-in. Ask a planner to make one or to write it into yours."
                            .formatted(login.get())
                        : "The account of %s is %s. Ask a planner to renew it."
                            .formatted(login.get(), found.ended())));
  }

  private String onward(Account account) {
    return KeptWay.of(context).map(WayOn::address).orElse(Home.of(account.role()));
  }

  private Response refused(String says) {
    Log.warn("somebody whom the provider of log-ins knows has no account that is open");
    return Response.status(403)
        .entity(EnterPage.html(says, provider.name(), provider.ending(), KeptWay.of(context)))
        .header("Cache-Control", "no-store")
        .build();
  }

  // a redirect would still belong to the page of the provider, and strict cookies do not go with it
  private Response entered(Account account) {
    Secret key = accounts.enter(account, provider.session());
    String onward = onward(account);
    KeptWay.forget(context);
    return Response.ok(Templates.entered(onward).render())
        .cookie(EnterPage.cookie(key.text(), provider.session(), context))
        .header("Cache-Control", "no-store")
        .build();
  }
}
