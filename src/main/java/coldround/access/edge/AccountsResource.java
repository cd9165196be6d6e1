package coldround.access.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.JsonBody;
import coldround.http.Page;
import coldround.http.Parameters;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.net.URI;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Who may use the service. A token is told once, in the answer that makes it. */
@Path("/api/v1/accounts")
@Tag(name = "Access")
public class AccountsResource {

  private final AccountBook book;
  private final Answers answers;
  private final JsonBody json;

  @Inject
  AccountsResource(AccountBook book, Answers answers, JsonBody json) {
    this.book = book;
    this.answers = answers;
    this.json = json;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "makeAccount",
      summary = "Makes an account; its token is in this answer and nowhere else")
  @RequestBody(
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = AccountBody.class),
              examples =
                  @ExampleObject(
                      name = "scheduler",
                      value = "{\"name\": \"Scheduling system\", \"role\": \"scheduler\"}")))
  @APIResponse(
      responseCode = "201",
      description = "The account with its token",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = AccountView.class)))
  @APIResponse(responseCode = "400", description = "A field is wrong; see errors: bad-request")
  public Response make(InputStream sent) {
    AccountView made = book.make(json.read(JsonBody.bytes(sent), AccountBody.class));
    return Response.created(URI.create("/api/v1/accounts/" + made.id()))
        .header("Cache-Control", "no-store")
        .type(MediaType.APPLICATION_JSON_TYPE)
        .entity(made)
        .build();
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(operationId = "listAccounts", summary = "All accounts, the newest first")
  @APIResponse(
      responseCode = "200",
      description = "Accounts without their tokens",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(type = SchemaType.OBJECT)))
  public Response list(
      @QueryParam("limit") String limit,
      @QueryParam("after") String after,
      @Context Request request,
      @Context UriInfo uri) {
    int most = Parameters.limit(limit);
    List<AccountView> found = book.list(Parameters.place(after), most + 1);
    boolean more = found.size() > most;
    List<AccountView> shown = more ? found.subList(0, most) : found;
    String next = more ? Parameters.cursor(shown.get(most - 1).id()) : null;
    return answers.list(new Page<>(shown, next), request, uri);
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(operationId = "getAccount", summary = "One account")
  @APIResponse(
      responseCode = "200",
      description = "The account without its token",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = AccountView.class)))
  public Response get(@PathParam("id") String id, @Context Request request) {
    return answers.read(book.read(id), request);
  }

  @POST
  @Path("{id}/renew")
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "renewAccount",
      summary =
          "Gives a new token in the place of the old one, which ends at once with its page sessions")
  @RequestBody(
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = AccountBody.Renewal.class),
              examples =
                  @ExampleObject(
                      name = "a day",
                      value = "{\"expires\": \"2027-12-01T00:00:00Z\"}")))
  @APIResponse(
      responseCode = "200",
      description = "The account with its new token",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = AccountView.class)))
  @APIResponse(responseCode = "400", description = "A field is wrong; see errors: bad-request")
  public Response renew(@PathParam("id") String id, InputStream sent) {
    byte[] bytes = JsonBody.bytes(sent);
    AccountBody.Renewal asked =
        bytes.length == 0
            ? new AccountBody.Renewal(null)
            : json.read(bytes, AccountBody.Renewal.class);
    return Response.ok(book.renew(id, asked, null), MediaType.APPLICATION_JSON_TYPE)
        .header("Cache-Control", "no-store")
        .build();
  }

  @PUT
  @Path("{id}/login")
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "setLogin",
      summary =
          "Says by what a provider of log-ins knows the person of an account; its page sessions end"
              + " where that changes")
  @RequestBody(
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = AccountBody.Login.class),
              examples =
                  @ExampleObject(
                      name = "e-mail address",
                      value = "{\"login\": \"kim@contractor.example\"}")))
  @APIResponse(
      responseCode = "200",
      description = "The account without its token",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = AccountView.class)))
  @APIResponse(responseCode = "400", description = "A field is wrong; see errors: bad-request")
  public Response login(@PathParam("id") String id, InputStream sent) {
    AccountBody.Login asked = json.read(JsonBody.bytes(sent), AccountBody.Login.class);
    return Response.ok(book.login(id, asked, null), MediaType.APPLICATION_JSON_TYPE).build();
  }

  @POST
  @Path("{id}/revoke")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "revokeAccount",
      summary = "Its token and page sessions count no more; a second time changes nothing")
  @APIResponse(
      responseCode = "200",
      description = "The account",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = AccountView.class)))
  @APIResponse(responseCode = "409", description = "It is the last planner: conflict")
  public Response revoke(@PathParam("id") String id) {
    return Response.ok(book.revoke(id), MediaType.APPLICATION_JSON_TYPE).build();
  }
}
