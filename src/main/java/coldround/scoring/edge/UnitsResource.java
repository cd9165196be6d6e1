package coldround.scoring.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.Kept;
import coldround.http.Measured;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.scoring.FleetLine;
import coldround.scoring.FleetList;
import coldround.scoring.FleetList.Order;
import coldround.scoring.FleetList.Place;
import coldround.scoring.FleetList.Search;
import coldround.scoring.edge.ConditionView.Range;
import coldround.scoring.edge.ConditionView.UnitName;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The fleet, worst first. */
@Path("/api/v1/units")
@Tag(name = "Fleet")
public class UnitsResource {

  record Points(String factor, BigDecimal weight, BigDecimal lost, boolean known) {}

  /** One unit in the list. */
  @Schema(name = "UnitInList")
  record Line(
      UnitName unit,
      String customerName,
      String siteName,
      String kind,
      String maker,
      String model,
      String refrigerant,
      LocalDate installed,
      LocalDate asOf,
      BigDecimal score,
      Range range,
      BigDecimal completeness,
      List<Points> factors,
      LocalDate nextDue,
      String nextTask) {}

  private final FleetList fleet;
  private final Answers answers;

  @Inject
  UnitsResource(FleetList fleet, Answers answers) {
    this.fleet = fleet;
    this.answers = answers;
  }

  @GET
  @Kept
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "listUnits",
      summary = "Units in use with their last condition score, worst first")
  @APIResponse(
      responseCode = "200",
      description = "A page of units",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(type = SchemaType.ARRAY, implementation = Line.class)))
  public Response list(
      @QueryParam("customer") String customer,
      @QueryParam("site") String site,
      @QueryParam("unit") String unit,
      @QueryParam("type") String kind,
      @QueryParam("refrigerant") String refrigerant,
      @QueryParam("q") String text,
      @QueryParam("order") String order,
      @QueryParam("limit") String limit,
      @QueryParam("after") String after,
      @Context Request request,
      @Context UriInfo uri) {
    Search search = new Search(customer, site, unit, kind, refrigerant, text);
    int most = Parameters.limit(limit);
    List<FleetLine> lines = fleet.lines(search, order(order), place(after), most + 1);
    boolean more = lines.size() > most;
    List<FleetLine> shown = more ? lines.subList(0, most) : lines;
    String next = more ? Parameters.cursor(Place.of(shown.get(most - 1)).text()) : null;
    List<Line> items = shown.stream().map(UnitsResource::view).toList();
    return answers.list(new Page<>(items, next), request, uri);
  }

  private static Order order(String text) {
    if (text == null || text.isEmpty()) {
      return Order.SCORE;
    }
    for (Order order : Order.values()) {
      if (order.name().toLowerCase(Locale.ROOT).equals(text)) {
        return order;
      }
    }
    throw Problem.badField("order", text, "is score, due or name");
  }

  private static Place place(String cursor) {
    String place = Parameters.place(cursor);
    try {
      return place.isEmpty() ? null : Place.parse(place);
    } catch (IllegalArgumentException | java.time.DateTimeException e) {
      throw Parameters.badCursor(cursor);
    }
  }

  private static Line view(FleetLine line) {
    return new Line(
        new UnitName(line.unitId(), line.customer(), line.site(), line.tag()),
        line.customerName(),
        line.siteName(),
        line.kind(),
        line.maker(),
        line.model(),
        line.refrigerant(),
        line.installed(),
        line.asOf(),
        Measured.number(line.score()),
        new Range(Measured.number(line.low()), Measured.number(line.high())),
        Measured.number(line.completeness()),
        line.points().stream().map(UnitsResource::view).toList(),
        line.nextDue(),
        line.nextTask().isEmpty() ? null : line.nextTask());
  }

  private static Points view(FleetLine.Points points) {
    return new Points(
        points.factor(),
        Measured.number(points.weight()),
        Measured.number(points.lost()),
        points.known());
  }
}
