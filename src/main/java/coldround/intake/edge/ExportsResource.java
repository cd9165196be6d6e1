package coldround.intake.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Kind;
import coldround.fleet.UnitHistory;
import coldround.http.Dear;
import coldround.http.Problem;
import coldround.intake.IntakeTables;
import coldround.intake.ListWriting;
import coldround.sheet.SheetWriter;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/**
 * All that is stored, out again in the form in which it is read in, written as it is read: memory
 * does not grow with the fleet.
 */
@Path("/api/v1/exports")
@Tag(name = "Imports")
public class ExportsResource {

  private static final String CSV = "text/csv";
  private static final String NDJSON = "application/x-ndjson";

  private static final String CUSTOMER =
      "Code of one customer, whose rows alone are wanted; lists that belong to no customer are"
          + " whole";

  private final Fleet fleet;
  private final IntakeTables tables;
  private final ObjectMapper json;

  @Inject
  ExportsResource(Fleet fleet, IntakeTables tables, ObjectMapper json) {
    this.fleet = fleet;
    this.tables = tables;
    this.json = json;
  }

  @GET
  @Path("{kind}.csv")
  @Dear
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "exportCsv",
      summary =
          "All rows of a kind as CSV with the columns that imports read. Read in again in the order"
              + " customers, sites, units, visits, readings, faults, technicians, travel-times it"
              + " makes the same fleet; cells that a spreadsheet would take for formulas are"
              + " guarded by an apostrophe that imports take away")
  @APIResponse(
      responseCode = "200",
      description = "Header and rows, RFC 4180",
      content = @Content(mediaType = CSV, schema = @Schema(type = SchemaType.STRING)))
  @APIResponse(responseCode = "404", description = "There is no such kind of list: not-found")
  public Response csv(
      @PathParam("kind") @Parameter(description = "kind of list", example = "units") String kind,
      @QueryParam("customer") @Parameter(description = CUSTOMER, example = "MERCY")
          String customer) {
    Kind list = kind(kind);
    ListWriting writing = new ListWriting(tables.columns(list));
    StreamingOutput rows =
        out -> {
          SheetWriter sheet = SheetWriter.guarded(writer(out));
          sheet.write(writing.header());
          each(list, customer, writing, sheet::write);
          sheet.close();
        };
    return download(rows, CSV + ";charset=UTF-8;header=present", list.code() + ".csv");
  }

  @GET
  @Path("{kind}.ndjson")
  @Dear
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "exportNdjson",
      summary =
          "The same as newline-delimited JSON: an object a row, its cells as text by column name,"
              + " empty ones left out")
  @APIResponse(
      responseCode = "200",
      description = "A JSON object a line",
      content = @Content(mediaType = NDJSON, schema = @Schema(type = SchemaType.STRING)))
  @APIResponse(responseCode = "404", description = "There is no such kind of list: not-found")
  public Response ndjson(
      @PathParam("kind") @Parameter(description = "kind of list", example = "units") String kind,
      @QueryParam("customer") @Parameter(description = CUSTOMER, example = "MERCY")
          String customer) {
    Kind list = kind(kind);
    ListWriting writing = new ListWriting(tables.columns(list));
    StreamingOutput rows =
        out -> {
          Writer writer = writer(out);
          JsonGenerator generator = json.getFactory().createGenerator(writer);
          generator.setRootValueSeparator(null);
          List<String> names = writing.header();
          each(list, customer, writing, cells -> object(names, cells, generator));
          generator.close();
        };
    return download(rows, NDJSON, list.code() + ".ndjson");
  }

  private static Writer writer(OutputStream out) {
    return new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
  }

  private static Response download(StreamingOutput rows, String type, String name) {
    return Response.ok(rows, type)
        .header("Content-Disposition", "attachment; filename=\"" + name + "\"")
        .build();
  }

  private static void object(List<String> names, List<String> cells, JsonGenerator generator) {
    try {
      generator.writeStartObject();
      for (int i = 0; i < names.size(); i++) {
        if (!cells.get(i).isEmpty()) {
          generator.writeStringField(names.get(i), cells.get(i));
        }
      }
      generator.writeEndObject();
      generator.writeRaw('\n');
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Kind kind(String code) {
    return Kind.find(code)
        .orElseThrow(
            () ->
                Problem.notFound(
                    "kind of list '%s'; there are %s"
                        .formatted(
                            code,
                            String.join(
                                ", ", Arrays.stream(Kind.values()).map(Kind::code).toList()))));
  }

  private void each(Kind kind, String of, ListWriting writing, Consumer<List<String>> row) {
    String customer = of == null ? "" : of;
    switch (kind) {
      case CUSTOMERS ->
          fleet.customers().stream()
              .filter(each -> customer.isEmpty() || each.code().equals(customer))
              .forEach(each -> row.accept(writing.row(each)));
      case SITES -> fleet.sites(customer).forEach(each -> row.accept(writing.row(each)));
      case TECHNICIANS -> fleet.technicians().forEach(each -> row.accept(writing.row(each)));
      case TRAVEL_TIMES -> fleet.travelTimes().forEach(each -> row.accept(writing.row(each)));
      default ->
          fleet.eachHistory(
              new FleetFilter(customer, "", "", "", ""),
              history -> of(history, kind, writing, row));
    }
  }

  private static void of(
      UnitHistory history, Kind kind, ListWriting writing, Consumer<List<String>> row) {
    switch (kind) {
      case UNITS -> row.accept(writing.row(history.unit()));
      case FAULTS ->
          history.reportedFaults().forEach(fault -> row.accept(writing.row(history.unit(), fault)));
      case VISITS ->
          history.visits().forEach(visit -> row.accept(writing.row(history.unit(), visit)));
      default ->
          history
              .visits()
              .forEach(
                  visit ->
                      visit
                          .readings()
                          .forEach(
                              reading -> row.accept(writing.row(history.unit(), visit, reading))));
    }
  }
}
