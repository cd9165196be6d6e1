package coldround.fleet.edge;

import coldround.access.Role;
import coldround.fleet.Reading;
import coldround.http.JsonBody;
import coldround.http.Parameters;
import coldround.http.Problem;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.InputStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Somebody has looked at a reading that was not believed. */
@Path("/api/v1/units/{id}/confirmations")
@Tag(name = "Fleet")
public class ConfirmationResource {

  /**
   * Which reading is meant as it is.
   *
   * @param part only where the quantity has several
   * @param confirmed false takes the confirmation back; true where it is not said
   */
  record ConfirmationBody(String visit, String quantity, String part, Boolean confirmed) {
    Confirming.Named named(String unit) {
      return new Confirming.Named(
          unit, said("visit", visit), said("quantity", quantity), part == null ? "" : part);
    }

    private static String said(String field, String value) {
      if (value == null || value.isEmpty()) {
        throw Problem.badField(field, value, "must be there");
      }
      return value;
    }
  }

  private final Confirming confirming;
  private final JsonBody json;

  @Inject
  ConfirmationResource(Confirming confirming, JsonBody json) {
    this.confirming = confirming;
    this.json = json;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "confirmReading",
      summary =
          "A reading flagged as suspect is meant as it is and takes part in scoring again; the same"
              + " call again changes nothing")
  @RequestBody(
      content =
          @Content(
              schema = @Schema(implementation = ConfirmationBody.class),
              examples =
                  @ExampleObject(
                      name = "a head pressure",
                      value = "{\"visit\": \"4711\", \"quantity\": \"head_pressure\"}")))
  @APIResponse(
      responseCode = "200",
      description = "The reading as it now stands",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = UnitResource.ReadingView.class)))
  @APIResponse(responseCode = "400", description = "urn:coldround:problem:bad-request")
  @APIResponse(
      responseCode = "404",
      description = "urn:coldround:problem:not-found: no such unit, visit or reading")
  @APIResponse(
      responseCode = "409",
      description = "urn:coldround:problem:conflict: the reading was not taken")
  public Response confirm(
      @Parameter(description = "Id of the unit") @PathParam("id") String id,
      @Parameter(description = "Units of measure of the answer: us or si") @QueryParam("measures")
          String measures,
      InputStream sent) {
    ConfirmationBody body = json.read(JsonBody.bytes(sent), ConfirmationBody.class);
    Reading now = confirming.set(body.named(id), !Boolean.FALSE.equals(body.confirmed()));
    return Response.ok(UnitResource.ReadingView.of(now, Parameters.measures(measures))).build();
  }
}
