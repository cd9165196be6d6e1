package coldround.access.edge;

import coldround.access.Secret;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
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
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Where a person shows the token once and is known by a session cookie from then on. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class EnterPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance enter(boolean refused);
  }

  private final Accounts accounts;
  private final RoutingContext context;

  @Inject
  EnterPage(Accounts accounts, RoutingContext context) {
    this.accounts = accounts;
    this.context = context;
  }

  @GET
  @Path("enter")
  @Operation(hidden = true)
  public Response ask(@QueryParam("token") String token) {
    return token == null || token.isBlank() ? form(200, false) : enter(token);
  }

  @POST
  @Path("enter")
  @Operation(hidden = true)
  public Response enter(@FormParam("token") String token) {
    Optional<Secret> key = accounts.enter(new Secret(token == null ? "" : token.strip()));
    return key.map(this::entered).orElseGet(() -> form(401, true));
  }

  private static Response form(int status, boolean refused) {
    return Response.status(status)
        .entity(Templates.enter(refused).render())
        .header("Cache-Control", "no-store")
        .build();
  }

  private Response entered(Secret key) {
    return away("/", key.text(), (int) accounts.sessionLasts().toSeconds());
  }

  @POST
  @Path("leave")
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
