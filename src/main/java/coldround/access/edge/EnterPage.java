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
    static native TemplateInstance enter(String refused);
  }

  private final Doorkeeper door;
  private final Accounts accounts;
  private final RoutingContext context;

  @Inject
  EnterPage(Doorkeeper door, Accounts accounts, RoutingContext context) {
    this.door = door;
    this.accounts = accounts;
    this.context = context;
  }

  @GET
  @Path("enter")
  @PermitAll
  @Operation(hidden = true)
  public Response ask(@QueryParam("token") String token) {
    return token == null || token.isBlank() ? form(Response.ok(), "") : shown(token);
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

  private static Response form(Response.ResponseBuilder response, String refused) {
    return response
        .entity(Templates.enter(refused).render())
        .header("Cache-Control", "no-store")
        .build();
  }

  private Response entered(Account account) {
    Secret key = accounts.enter(account);
    return away(Home.of(account.role()), key.text(), (int) accounts.sessionLasts().toSeconds());
  }

  @POST
  @Path("leave")
  @PermitAll
  @Operation(hidden = true)
  public Response leave(@CookieParam(Authentication.COOKIE) String key) {
    if (key != null) {
      accounts.leave(new Secret(key));
    }
    return away("/enter", "", 0);
  }

  private Response away(String target, String key, int seconds) {
    NewCookie cookie =
        new NewCookie.Builder(Authentication.COOKIE)
            .value(key)
            .path("/")
            .maxAge(seconds)
            .httpOnly(true)
            .secure(context.request().isSSL())
            .sameSite(NewCookie.SameSite.STRICT)
            .build();
    return Response.seeOther(URI.create(target)).cookie(cookie).build();
  }
}
