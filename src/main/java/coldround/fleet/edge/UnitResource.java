package coldround.fleet.edge;

import coldround.access.Role;
import coldround.fleet.Fault;
import coldround.fleet.Fleet;
import coldround.fleet.Reading;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.http.Answers;
import coldround.http.Measured;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** One unit: its nameplate, its latest readings and what happened to it. */
@Path("/api/v1/units/{id}")
@Tag(name = "Fleet")
public class UnitResource {

  /** A reading as visits from the field are sent: a value with its unit, or why there is none. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ReadingView(
      String quantity,
      String part,
      BigDecimal value,
      String unit,
      String notTaken,
      String suspect,
      Boolean confirmed,
      LocalDate date,
      String visit) {

    static ReadingView of(Reading reading, MeasureSystem system) {
      return of(reading, system, null, null);
    }

    static ReadingView of(Reading reading, MeasureSystem system, LocalDate date, String visit) {
      Measured measured = Measured.of(reading.value(), system);
      return new ReadingView(
          reading.quantity(),
          orNull(reading.part()),
          measured == null ? null : measured.value(),
          measured == null ? null : measured.unit(),
          orNull(reading.notTaken()),
          orNull(reading.suspect()),
          reading.confirmed() ? true : null,
          date,
          visit);
    }
  }

  /** Beside what is named here each quantity of the nameplate, such as charge. */
  @Schema(additionalProperties = Measured.class)
  record UnitView(
      String id,
      String customer,
      String site,
      String tag,
      String kind,
      String machine,
      String maker,
      String model,
      String serial,
      LocalDate installed,
      String refrigerant,
      String condenserPlace,
      LocalDate retired,
      @JsonAnyGetter @Schema(hidden = true) Map<String, Measured> plate,
      List<ReadingView> latestReadings) {}

  /** One entry of the history: a visit or a fault. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Event(
      LocalDate date,
      String what,
      String visit,
      String technician,
      String purpose,
      List<ReadingView> readings,
      Map<String, String> findings,
      List<String> work,
      List<String> faults,
      String failureMode,
      String cause,
      LocalDate repaired,
      Measured downtime,
      Measured stockLost,
      String note) {}

  private final Fleet fleet;
  private final Answers answers;

  @Inject
  UnitResource(Fleet fleet, Answers answers) {
    this.fleet = fleet;
    this.answers = answers;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE})
  @Operation(operationId = "getUnit", summary = "One unit with its latest readings")
  @APIResponse(
      responseCode = "200",
      description = "The unit",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = UnitView.class)))
  public Response unit(
      @PathParam("id") String id,
      @QueryParam("measures") String measures,
      @Context Request request) {
    MeasureSystem system = Parameters.measures(measures);
    return answers.read(view(history(id), system), request);
  }

  @GET
  @Path("history")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "getUnitHistory",
      summary = "Visits with readings, findings and work, and faults, newest first")
  @APIResponse(
      responseCode = "200",
      description = "A page of what happened",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(type = SchemaType.ARRAY, implementation = Event.class)))
  public Response history(
      @PathParam("id") String id,
      @QueryParam("measures") String measures,
      @QueryParam("limit") String limit,
      @QueryParam("after") String after,
      @Context Request request,
      @Context UriInfo uri) {
    List<Event> events = events(history(id), Parameters.measures(measures));
    int most = Parameters.limit(limit);
    int from = from(after, events);
    int to = Math.min(events.size(), from + most);
    String next = to < events.size() ? Parameters.cursor(place(events.get(to - 1))) : null;
    return answers.list(new Page<>(events.subList(from, to), next), request, uri);
  }

  private UnitHistory history(String id) {
    return fleet.history(id).orElseThrow(() -> Problem.notFound("unit " + id));
  }

  private static int from(String after, List<Event> events) {
    String place = Parameters.place(after);
    if (place.isEmpty()) {
      return 0;
    }
    for (int i = 0; i < events.size(); i++) {
      if (place(events.get(i)).equals(place)) {
        return i + 1;
      }
    }
    throw Parameters.badCursor(after);
  }

  private static String place(Event event) {
    return event.date() + " " + event.what() + " " + event.visit() + " " + event.failureMode();
  }

  private static UnitView view(UnitHistory history, MeasureSystem system) {
    Unit unit = history.unit();
    Map<String, Measured> plate = new TreeMap<>();
    unit.plate().forEach((name, value) -> plate.put(camelCase(name), Measured.of(value, system)));
    return new UnitView(
        unit.id(),
        unit.customer(),
        unit.site(),
        unit.tag(),
        unit.kind(),
        orNull(unit.machine()),
        orNull(unit.maker()),
        orNull(unit.model()),
        orNull(unit.serial()),
        unit.installed(),
        orNull(unit.refrigerant()),
        orNull(unit.condenserPlace()),
        unit.retired(),
        plate,
        latest(history, system));
  }

  private static String camelCase(String column) {
    return Pattern.compile("_(\\w)")
        .matcher(column)
        .replaceAll(letter -> letter.group(1).toUpperCase(Locale.ROOT));
  }

  private static List<ReadingView> latest(UnitHistory history, MeasureSystem system) {
    Map<List<String>, ReadingView> latest = new LinkedHashMap<>();
    for (Visit visit : history.visits()) {
      for (Reading reading : visit.readings()) {
        latest.put(
            List.of(reading.quantity(), reading.part()),
            ReadingView.of(reading, system, visit.date(), visit.number()));
      }
    }
    return List.copyOf(latest.values());
  }

  private static List<Event> events(UnitHistory history, MeasureSystem system) {
    List<Event> events = new ArrayList<>();
    history.visits().forEach(visit -> events.add(visit(visit, system)));
    history.reportedFaults().forEach(fault -> events.add(fault(fault, system)));
    events.sort(Comparator.comparing(Event::date).reversed());
    return events;
  }

  private static Event visit(Visit visit, MeasureSystem system) {
    return new Event(
        visit.date(),
        "visit",
        visit.number(),
        orNull(visit.technician()),
        orNull(visit.purpose()),
        visit.readings().stream().map(reading -> ReadingView.of(reading, system)).toList(),
        new TreeMap<>(visit.findings()),
        visit.work(),
        visit.faults(),
        null,
        null,
        null,
        null,
        null,
        orNull(visit.note()));
  }

  private static Event fault(Fault fault, MeasureSystem system) {
    return new Event(
        fault.date(),
        "fault",
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        fault.failureMode(),
        orNull(fault.cause()),
        fault.repaired(),
        measured(fault.downtime(), system),
        measured(fault.stockLost(), system),
        orNull(fault.note()));
  }

  private static Measured measured(Quantity quantity, MeasureSystem system) {
    return Measured.of(quantity, system);
  }

  private static String orNull(String text) {
    return text.isEmpty() ? null : text;
  }
}
