package coldround.access.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.Page;
import coldround.http.Parameters;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Who changed what; it can be read and nothing else. */
@Path("/api/v1/audit")
@Tag(name = "Access")
public class AuditResource {

  /** Whose call it was. */
  record By(String account, String name) {}

  /**
   * One change.
   *
   * @param call the X-Request-Id of the call; empty for what the service did of itself
   */
  record Entry(
      String id,
      Instant at,
      By by,
      String call,
      String kind,
      String object,
      String action,
      String customer,
      String was,
      String became) {}

  private final StoredAudit audit;
  private final Answers answers;

  @Inject
  AuditResource(StoredAudit audit, Answers answers) {
    this.audit = audit;
    this.answers = answers;
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "listAudit",
      summary = "Who changed what, when and by which call, the newest first")
  @APIResponse(
      responseCode = "200",
      description =
          "Entries; of a customer, those about its equipment and those of imports, which may be"
              + " about several",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(type = SchemaType.OBJECT)))
  public Response list(
      @QueryParam("customer") String customer,
      @QueryParam("limit") String limit,
      @QueryParam("after") String after,
      @Context Request request,
      @Context UriInfo uri) {
    int most = Parameters.limit(limit);
    List<AuditRow> found = audit.list(place(after), customer == null ? "" : customer, most + 1);
    boolean more = found.size() > most;
    List<AuditRow> shown = more ? found.subList(0, most) : found;
    String next = more ? Parameters.cursor(String.valueOf(shown.get(most - 1).id)) : null;
    return answers.list(
        new Page<>(shown.stream().map(AuditResource::view).toList(), next), request, uri);
  }

  private static Long place(String after) {
    String place = Parameters.place(after);
    try {
      return place.isEmpty() ? null : Long.valueOf(place);
    } catch (NumberFormatException e) {
      throw Parameters.badCursor(after);
    }
  }

  private static Entry view(AuditRow row) {
    return new Entry(
        String.valueOf(row.id),
        row.moment,
        new By(row.accountId, row.accountName),
        row.callId,
        row.kind,
        row.objectId,
        row.action,
        row.customer,
        row.was,
        row.became);
  }
}
