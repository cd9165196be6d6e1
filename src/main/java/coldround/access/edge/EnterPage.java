package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Home;
import coldround.access.Secret;
import coldround.access.WayOn;
import coldround.access.edge.Accounts.Found;
import coldround.http.Caller;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.ws.rs.CookieParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Where a person shows the token once and is known by a session cookie from then on. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class EnterPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance enter(
        String refused, String provider, String providerAt, String ending, String to);
  }

  private final Doorkeeper door;
  private final Accounts accounts;
  private final Provider provider;
  private final Caller caller;
  private final RoutingContext context;

  @Inject
  EnterPage(
      Doorkeeper door,
      Accounts accounts,
      Provider provider,
      Caller caller,
      RoutingContext context) {
    this.door = door;
    this.accounts = accounts;
    this.provider = provider;
    this.caller = caller;
    this.context = context;
  }

  @GET
  @Path("enter")
  @PermitAll
  @Operation(hidden = true)
  public Response ask(
      @QueryParam("token") String token,
      @QueryParam("left") String left,
      @QueryParam("error") String error,
      @QueryParam(WayOn.NAME) String to) {
    // a refusal of the provider comes here without the page that was wanted
    Optional<WayOn> onward = error == null ? WayOn.of(to) : KeptWay.of(context);
    if (token != null && !token.isBlank()) {
      return shown(token, onward);
    }
    if (onward.isPresent() && caller.account() != null) {
      // who has entered in another window meanwhile
      return Response.seeOther(URI.create(onward.get().address())).build();
    }
    // what else the provider says of it is not repeated: anybody can make up such an address
    String refused =
        error == null || !provider.on()
            ? ""
            : "You were not let in where you log in. Try once more.";
    return form(Response.ok(), refused, left == null ? "" : provider.ending(), onward);
  }

  @POST
  @Path("enter")
  @PermitAll
  @Operation(hidden = true)
  public Response enter(@FormParam("token") String token, @FormParam(WayOn.NAME) String to) {
    Optional<WayOn> onward = WayOn.of(to);
    if (Authentication.fromElsewhere(context)) {
      String here = "Type the token on this page, not on another one.";
      return form(Response.status(403), here, "", onward);
    }
    return shown(token == null ? "" : token, onward);
  }

  private Response shown(String token, Optional<WayOn> onward) {
    Secret shown = new Secret(token.strip());
    String address = Authentication.address(context);
    Optional<Duration> pause = door.pause(address, shown);
    if (pause.isPresent()) {
      long seconds = Doorkeeper.seconds(pause.get());
      return form(
          Response.status(429).header("Retry-After", seconds),
          "Too many tokens that nobody has were shown. Wait " + seconds + " s, then try again.",
          "",
          onward);
    }
    Found found = door.look(address, shown);
    return found
        .opens()
        .map(account -> entered(account, onward))
        .orElseGet(() -> form(Response.status(401), refusal(found), "", onward));
  }

  private static String refusal(Found found) {
    return found.ended().isEmpty()
        ? "No account has this token. The first start shows the planner's on the console."
        : "This token is " + found.ended() + ". A planner can give you a new one.";
  }

  private Response form(
      Response.ResponseBuilder response, String refused, String ending, Optional<WayOn> onward) {
    return response
        .entity(html(refused, provider.name(), ending, onward))
        .header("Cache-Control", "no-store")
        .build();
  }

  /**
   * @param provider how people call the provider of log-ins; empty where there is none
   * @param ending where the session there ends; empty to say nothing of it
   * @param onward the page that was wanted
   */
  static String html(String refused, String provider, String ending, Optional<WayOn> onward) {
    String providerAt = onward.map(its -> its.by(Provider.PATH)).orElse(Provider.PATH);
    String to = onward.map(WayOn::address).orElse("");
    return Templates.enter(refused, provider, providerAt, ending, to).render();
  }

  private Response entered(Account account, Optional<WayOn> onward) {
    Secret key = accounts.enter(account, accounts.sessionLasts());
    String next = onward.map(WayOn::address).orElse(Home.of(account.role()));
    return away(next, key.text(), accounts.sessionLasts());
  }

  @POST
  @Path("leave")
  @PermitAll
  @Operation(hidden = true)
  public Response leave(@CookieParam(Authentication.COOKIE) String key) {
    if (key != null) {
      accounts.leave(new Secret(key));
    }
    return away(provider.on() ? "/enter?left=yes" : "/enter", "", Duration.ZERO);
  }

  private Response away(String target, String key, Duration lasts) {
    return Response.seeOther(URI.create(target)).cookie(cookie(key, lasts, context)).build();
  }

  /** By which a browser is known; no time for one that is to be forgotten. */
  static NewCookie cookie(String key, Duration lasts, RoutingContext context) {
    return new NewCookie.Builder(Authentication.COOKIE)
        .value(key)
        .path("/")
        .maxAge((int) lasts.toSeconds())
        .httpOnly(true)
        .secure(context.request().isSSL())
        .sameSite(NewCookie.SameSite.STRICT)
        .build();
  }
}
