package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Home;
import coldround.access.Secret;
import coldround.access.edge.Accounts.Found;
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
    static native TemplateInstance enter(String refused, String provider, String ending);
  }

  private final Doorkeeper door;
  private final Accounts accounts;
  private final Provider provider;
  private final RoutingContext context;

  @Inject
  EnterPage(Doorkeeper door, Accounts accounts, Provider provider, RoutingContext context) {
    this.door = door;
    this.accounts = accounts;
    this.provider = provider;
    this.context = context;
  }

  @GET
  @Path("enter")
  @PermitAll
  @Operation(hidden = true)
  public Response ask(
      @QueryParam("token") String token,
      @QueryParam("left") String left,
      @QueryParam("error") String error) {
    if (token != null && !token.isBlank()) {
      return shown(token);
    }
    // what else the provider says of it is not repeated: anybody can make up such an address
    String refused =
        error == null || !provider.on()
            ? ""
            : "You were not let in where you log in. Try once more.";
    return form(Response.ok(), refused, provider.name(), left == null ? "" : provider.ending());
  }

  @POST
  @Path("enter")
  @PermitAll
  @Operation(hidden = true)
  public Response enter(@FormParam("token") String token) {
    if (Authentication.fromElsewhere(context)) {
      return form(Response.status(403), "Type the token on this page, not on another one.");
    }
    return shown(token == null ? "" : token);
  }

  private Response shown(String token) {
    Secret shown = new Secret(token.strip());
    String address = Authentication.address(context);
    Optional<Duration> pause = door.pause(address, shown);
    if (pause.isPresent()) {
      long seconds = Doorkeeper.seconds(pause.get());
      return form(
          Response.status(429).header("Retry-After", seconds),
          "Too many tokens that nobody has were shown. Wait " + seconds + " s, then try again.");
    }
    Found found = door.look(address, shown);
    return found
        .opens()
        .map(this::entered)
        .orElseGet(() -> form(Response.status(401), refusal(found)));
  }

  private static String refusal(Found found) {
    return found.ended().isEmpty()
        ? "No account has this token. The first start shows the planner's on the console."
        : "This token is " + found.ended() + ". A planner can give you a new one.";
  }

  private Response form(Response.ResponseBuilder response, String refused) {
    return form(response, refused, provider.name(), "");
  }

  /**
   * @param provider how people call the provider of log-ins; empty where there is none
   * @param ending where the session there ends; empty to say nothing of it
   */
  static Response form(
      Response.ResponseBuilder response, String refused, String provider, String ending) {
    return response
        .entity(Templates.enter(refused, provider, ending).render())
        .header("Cache-Control", "no-store")
        .build();
  }

  private Response entered(Account account) {
    Secret key = accounts.enter(account, accounts.sessionLasts());
    return away(Home.of(account.role()), key.text(), accounts.sessionLasts());
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
