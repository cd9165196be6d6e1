package coldround.fleet.edge;

import coldround.access.Role;
import coldround.fleet.Correction;
import coldround.fleet.Corrections;
import coldround.http.Answers;
import coldround.http.Page;
import coldround.http.Parameters;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What later files and calls put in the place of what was known. */
@Path("/api/v1/corrections")
@Tag(name = "Fleet")
public class CorrectionsResource {

  /** A correction as it is answered; {@code importId} is left out for one that came by a call. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record CorrectionView(
      Instant changed,
      String origin,
      String importId,
      String kind,
      String unit,
      String item,
      String column,
      @JsonInclude String former,
      @JsonInclude String later) {

    static CorrectionView of(Correction correction) {
      String origin = correction.origin();
      boolean byCall = origin.equals(Correction.FIELD) || origin.equals(Correction.CONFIRMATION);
      return new CorrectionView(
          correction.changed(),
          byCall ? origin : "import",
          byCall ? null : origin,
          correction.kind().code(),
          correction.unitId().isEmpty() ? null : correction.unitId(),
          correction.item().isEmpty() ? null : correction.item(),
          correction.column(),
          correction.former(),
          correction.later());
    }
  }

  /** One page of the list. */
  record CorrectionPage(List<CorrectionView> items, String next) {}

  private static final String EXAMPLE =
      """
      {"items": [{"changed": "2026-05-13T06:10:00Z", "origin": "import",
        "importId": "0b6f0e6c-6b0e-4b7e-9d3f-3f1c2f1f6a10", "kind": "visits", "unit": "u1",
        "item": "4711", "column": "head_pressure", "former": "1170 psig", "later": "117 psig"}],
       "next": null}""";

  private final Corrections corrections;
  private final Answers answers;

  @Inject
  CorrectionsResource(Corrections corrections, Answers answers) {
    this.corrections = corrections;
    this.answers = answers;
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "listCorrections",
      summary = "Former values that a later file or call replaced or erased, newest first")
  @APIResponse(
      responseCode = "200",
      description = "One page; an erased value has an empty 'later'",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = CorrectionPage.class),
              examples = @ExampleObject(name = "a slip of the decimal point", value = EXAMPLE)))
  @APIResponse(
      responseCode = "400",
      description = "urn:coldround:problem:bad-request: a limit or cursor that is none")
  public Response list(
      @Parameter(description = "Id of the unit; empty for all") @QueryParam("unit") String unit,
      @Parameter(description = "Id of the import; empty for all") @QueryParam("import")
          String importId,
      @Parameter(description = "Items on a page, 1 to 500", example = "100") @QueryParam("limit")
          String limit,
      @Parameter(description = "The 'next' of the page before") @QueryParam("after") String after,
      @Context Request request,
      @Context UriInfo uri) {
    int most = Parameters.limit(limit);
    List<Correction> found =
        corrections.find(new Corrections.Filter(unit, importId), before(after), most + 1);
    List<Correction> shown = found.subList(0, Math.min(most, found.size()));
    String next =
        found.size() > most
            ? Parameters.cursor(Long.toString(shown.get(shown.size() - 1).id()))
            : null;
    return answers.list(
        new Page<>(shown.stream().map(CorrectionView::of).toList(), next), request, uri);
  }

  private static long before(String after) {
    String place = Parameters.place(after);
    try {
      return place.isEmpty() ? Long.MAX_VALUE : Long.parseLong(place);
    } catch (NumberFormatException e) {
      throw Parameters.badCursor(after);
    }
  }
}
