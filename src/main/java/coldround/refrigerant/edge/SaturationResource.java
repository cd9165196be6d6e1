package coldround.refrigerant.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.Measured;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.ReasonView;
import coldround.quantity.Atmosphere;
import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.refrigerant.ExpectedHead;
import coldround.refrigerant.OutsideTable;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.SaturationCurve;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What a gauge should show: saturation points, and the head pressure to expect on a day. */
@Path("/api/v1/refrigerants/{designation}")
@Tag(name = "Refrigerants")
public class SaturationResource {

  /** The head to expect, gauge over the air pressure given. */
  record ExpectedHeadView(
      String refrigerant,
      Measured ambient,
      Measured split,
      Measured condensingTemperature,
      Measured headPressure,
      Measured headPressureAbsolute,
      Measured airPressure,
      String curve,
      String quality,
      Measured uncertainty,
      ReasonView reason) {}

  private final Refrigerants refrigerants;
  private final Answers answers;

  @Inject
  SaturationResource(Refrigerants refrigerants, Answers answers) {
    this.refrigerants = refrigerants;
    this.answers = answers;
  }

  @GET
  @Path("saturation")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "getSaturation",
      summary = "Bubble and dew point at a pressure or a temperature")
  @APIResponse(
      responseCode = "200",
      description = "Both points",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = SaturationView.class)))
  @APIResponse(
      responseCode = "422",
      description = "no-saturation-curve, or outside-saturation-table")
  public Response saturation(
      @PathParam("designation") String designation,
      @QueryParam("pressure") String pressure,
      @QueryParam("temperature") String temperature,
      @QueryParam("unit") String unit,
      @QueryParam("elevation") String elevation,
      @QueryParam("elevationUnit") String elevationUnit,
      @QueryParam("measures") String measures,
      @Context Request request) {
    MeasureSystem system = Parameters.measures(measures);
    SaturationCurve curve = curve(designation);
    double airKpa = airKpa(elevation, elevationUnit);
    if (given(pressure) == given(temperature)) {
      throw Problem.badField("pressure", pressure, "either pressure or temperature is needed");
    }
    SaturationView view =
        inTable(
            given(pressure)
                ? () -> atPressure(curve, pressure, unit, airKpa, system)
                : () -> atTemperature(curve, temperature, unit, airKpa, system));
    return answers.read(view, request);
  }

  @GET
  @Path("expected-head")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "getExpectedHead",
      summary = "Condensing temperature and head pressure to expect at an ambient and a split")
  @APIResponse(
      responseCode = "200",
      description = "What the gauge should show",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = ExpectedHeadView.class)))
  @APIResponse(
      responseCode = "422",
      description = "no-saturation-curve, or outside-saturation-table")
  public Response expectedHead(
      @PathParam("designation") String designation,
      @QueryParam("ambient") String ambient,
      @QueryParam("split") String split,
      @QueryParam("unit") String unit,
      @QueryParam("elevation") String elevation,
      @QueryParam("elevationUnit") String elevationUnit,
      @QueryParam("measures") String measures,
      @Context Request request) {
    MeasureSystem system = Parameters.measures(measures);
    SaturationCurve curve = curve(designation);
    double airKpa = airKpa(elevation, elevationUnit);
    double ambientC = temperature("ambient", ambient, unit).base();
    double splitK = split(split, unit);
    ExpectedHead head = inTable(() -> ExpectedHead.of(curve, ambientC, splitK));
    return answers.read(view(curve, head, airKpa, system), request);
  }

  private static SaturationView atPressure(
      SaturationCurve curve, String text, String unit, double airKpa, MeasureSystem system) {
    Measure measure = measure(unit, "is a pressure such as psig, psia, kPag, kPa, barg or bar");
    if (!measure.dimension().isPressure()) {
      throw Problem.badField("unit", unit, "is a pressure such as psig, psia, kPag or bar");
    }
    double kpa = new Quantity(Parameters.number("pressure", text), measure).pressureKpa(airKpa);
    return SaturationView.ofPressure(curve, kpa, airKpa, system);
  }

  private static SaturationView atTemperature(
      SaturationCurve curve, String text, String unit, double airKpa, MeasureSystem system) {
    double celsius = temperature("temperature", text, unit).base();
    return SaturationView.ofTemperature(curve, celsius, airKpa, system);
  }

  private static Quantity temperature(String name, String text, String unit) {
    Measure measure = measure(unit, "is degF, degC or K");
    if (measure.dimension() != Dimension.TEMPERATURE) {
      throw Problem.badField("unit", unit, "is degF, degC or K");
    }
    return new Quantity(Parameters.number(name, text), measure);
  }

  /** A difference in degrees of the unit that the ambient is in. */
  private static double split(String text, String unit) {
    Measure difference = unit.equals("degF") ? Measure.DELTA_F : Measure.DELTA_K;
    double split = new Quantity(Parameters.number("split", text), difference).base();
    if (split <= 0) {
      throw Problem.badField("split", text, "is above zero, as a condenser is warmer than its air");
    }
    return split;
  }

  private static Measure measure(String unit, String expected) {
    if (!given(unit)) {
      throw Problem.badField("unit", unit, expected);
    }
    return Parameters.measure("unit", unit);
  }

  private static double airKpa(String elevation, String elevationUnit) {
    if (!given(elevation)) {
      return Atmosphere.SEA_LEVEL_KPA;
    }
    Measure measure =
        given(elevationUnit) ? Parameters.measure("elevationUnit", elevationUnit) : Measure.METRE;
    if (measure.dimension() != Dimension.LENGTH) {
      throw Problem.badField("elevationUnit", elevationUnit, "is m, ft, km or mi");
    }
    double km = new Quantity(Parameters.number("elevation", elevation), measure).base();
    try {
      return Atmosphere.pressureKpa(km * 1000);
    } catch (IllegalArgumentException e) {
      throw Problem.badField("elevation", elevation, "lies from -500 m to 11000 m");
    }
  }

  private static boolean given(String text) {
    return text != null && !text.isBlank();
  }

  private SaturationCurve curve(String designation) {
    Refrigerant refrigerant =
        refrigerants
            .find(designation)
            .orElseThrow(() -> Problem.notFound("refrigerant " + designation));
    return refrigerants
        .curve(refrigerant.designation())
        .orElseThrow(
            () ->
                Problem.unprocessable(
                    "no-saturation-curve",
                    "No saturation curve",
                    refrigerant.designation()
                        + " has no saturation curve that can be trusted; use its maker's chart."));
  }

  private static <T> T inTable(Supplier<T> answer) {
    try {
      return answer.get();
    } catch (OutsideTable e) {
      throw Problem.unprocessable(
          "outside-saturation-table", "Outside the saturation table", e.getMessage());
    }
  }

  private static ExpectedHeadView view(
      SaturationCurve curve, ExpectedHead head, double airKpa, MeasureSystem system) {
    Measured split = Measured.of(new Quantity(head.splitK(), Measure.DELTA_K), system);
    return new ExpectedHeadView(
        head.designation(),
        RefrigerantView.temperature(head.ambientC(), system),
        split,
        RefrigerantView.temperature(head.condensingC(), system),
        SaturationView.gauge(head.pressureKpa(), airKpa, system),
        SaturationView.absolute(head.pressureKpa(), system),
        SaturationView.absolute(airKpa, system),
        head.curve(),
        curve.quality(),
        SaturationView.uncertainty(curve, system),
        ReasonView.of(head.reason(), system));
  }
}
