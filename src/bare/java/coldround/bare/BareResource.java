package coldround.bare;

import coldround.access.Role;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;

/**
 * The floor under reads: gives the bytes it was sent from memory, behind the same log-in and
 * routing as all others. Built in for benchmarks alone ({@code -Pbare}).
 */
@Path("/bare")
public class BareResource {

  /** What is given; one for all. */
  private static volatile byte[] bytes = {};

  private static final EntityTag TAG = new EntityTag("bare");

  @PUT
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public void take(byte[] body) {
    bytes = body;
  }

  @GET
  @NonBlocking
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(hidden = true)
  public Response give(@Context Request request) {
    Response.ResponseBuilder unchanged = request.evaluatePreconditions(TAG);
    return unchanged != null
        ? unchanged.tag(TAG).build()
        : Response.ok(bytes, MediaType.APPLICATION_JSON_TYPE).tag(TAG).build();
  }
}
