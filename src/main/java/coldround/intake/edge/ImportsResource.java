package coldround.intake.edge;

import coldround.access.Role;
import coldround.fleet.Kind;
import coldround.http.Answers;
import coldround.http.Problem;
import coldround.intake.Profile;
import coldround.intake.Receipt;
import coldround.intake.UnreadableFile;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Files in, receipts and rejected rows out. */
@Path("/api/v1/imports")
@Tag(name = "Imports")
public class ImportsResource {

  private static final String CSV = "text/csv";
  private static final String WORKBOOK =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

  private static final String JSON = "application/json";
  private static final String PLACE = "/api/v1/imports/";

  /** Asks for a profile to be proposed from the file. */
  private static final String AUTO = "auto";

  private final FileImport imports;
  private final ImportRuns runs;
  private final StoredProfiles profiles;
  private final StoredReceipts receipts;
  private final Answers answers;
  private final long mostBytes;

  @Inject
  ImportsResource(
      FileImport imports,
      ImportRuns runs,
      StoredProfiles profiles,
      StoredReceipts receipts,
      Answers answers,
      @ConfigProperty(name = "coldround.upload.most-bytes", defaultValue = "1000000000")
          long mostBytes) {
    this.imports = imports;
    this.runs = runs;
    this.profiles = profiles;
    this.receipts = receipts;
    this.answers = answers;
    this.mostBytes = mostBytes;
  }

  @POST
  @Path("{kind}")
  @Consumes({CSV, WORKBOOK, "application/octet-stream"})
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "importFile",
      summary = "Read a file of one kind; good rows are applied, bad ones are told in the receipt")
  @RequestBody(
      description = "The file as it is: CSV in any dialect, or an .xlsx workbook",
      content =
          @Content(
              mediaType = CSV,
              schema = @Schema(type = SchemaType.STRING),
              examples = @ExampleObject(name = "visits", value = ImportExamples.VISITS)))
  @APIResponse(
      responseCode = "200",
      description = "The receipt; Content-Location says where it can be read again",
      content =
          @Content(
              mediaType = JSON,
              schema = @Schema(implementation = ReceiptView.class),
              examples = @ExampleObject(name = "one row rejected", value = ImportExamples.RECEIPT)))
  @APIResponse(
      responseCode = "202",
      description = "Asked for by Prefer: respond-async; Location says where to ask how far it is",
      content =
          @Content(
              mediaType = JSON,
              schema = @Schema(implementation = RunView.class),
              examples = @ExampleObject(name = "waiting", value = ImportExamples.WAITING)))
  @APIResponse(
      responseCode = "400",
      description = "urn:coldround:problem:bad-request: a parameter, such as an unknown profile")
  @APIResponse(responseCode = "404", description = "urn:coldround:problem:not-found: unknown kind")
  @APIResponse(responseCode = "413", description = "urn:coldround:problem:file-too-large")
  @APIResponse(
      responseCode = "422",
      description =
          "urn:coldround:problem: not-csv, empty-file, wrong-header, no-such-sheet, nothing-usable,"
              + " too-long, or mapping-unsure with the proposed profile; nothing was applied")
  @APIResponse(
      responseCode = "503",
      description = "urn:coldround:problem:busy: too many files wait already")
  public Response read(
      @Parameter(description = "Kind of list", example = "visits") @PathParam("kind") String kind,
      @Parameter(description = "true: only say what would happen")
          @QueryParam("preview")
          @DefaultValue("false")
          String preview,
      @Parameter(description = "false: all rows or none")
          @QueryParam("partial")
          @DefaultValue("true")
          String partial,
      @Parameter(description = "How the file is written; auto: guess it")
          @QueryParam("profile")
          @DefaultValue("standard")
          String profile,
      @Parameter(description = "Sheet of a workbook; empty: the first that is filled")
          @QueryParam("sheet")
          @DefaultValue("")
          String sheet,
      @Parameter(
              description = "RFC 7240: respond-async answers at once, or after wait seconds",
              example = "respond-async, wait=10")
          @HeaderParam("Prefer")
          List<String> prefer,
      InputStream body) {
    Kind of = kind(kind);
    boolean showing = flag("preview", preview);
    boolean some = flag("partial", partial);
    Profile named = profile.equals(AUTO) ? null : profile(profile);
    Preference waiting = Preference.of(prefer);
    Spool sent = Spool.of(body == null ? InputStream.nullInputStream() : body, mostBytes);
    boolean handedOver = false;
    try {
      MappingView mapping = named == null ? mapping(sent, sheet, of) : null;
      Profile used = named == null ? mapping.sure() : named;
      FileImport.Order order = new FileImport.Order(of, used, showing, some, sheet);
      if (waiting.async()) {
        ImportRuns.Later later = runs.later(sent, order);
        handedOver = true;
        return answer(later, mapping, waiting);
      }
      return answer(runs.now(sent, order), mapping).build();
    } finally {
      if (!handedOver) {
        sent.close();
      }
    }
  }

  private static Response.ResponseBuilder answer(Receipt receipt, MappingView mapping) {
    return Response.ok(ReceiptView.of(receipt, mapping))
        .header("Content-Location", PLACE + receipt.id());
  }

  /** The receipt if it comes within the time the caller waits, else where to ask for it. */
  private static Response answer(ImportRuns.Later later, MappingView mapping, Preference waiting) {
    try {
      Receipt receipt = later.receipt().get(waiting.waitSeconds(), TimeUnit.SECONDS);
      return answer(receipt, mapping).header("Preference-Applied", waiting.applied()).build();
    } catch (TimeoutException e) {
      return Response.accepted(later.open().view())
          .location(URI.create(PLACE + later.open().begun().id()))
          .header("Preference-Applied", waiting.applied())
          .header("Retry-After", "1")
          .build();
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException known
          ? known
          : new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
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

  private MappingView mapping(Spool sent, String sheet, Kind kind) {
    try {
      return MappingView.of(imports.propose(sent.file(), sheet, kind));
    } catch (UnreadableFile refusal) {
      throw ImportRuns.problem(refusal);
    }
  }

  private Profile profile(String name) {
    return profiles
        .find(name)
        .orElseThrow(
            () ->
                Problem.badField(
                    "profile",
                    name,
                    "is one of " + String.join(", ", profiles.names()) + " or auto"));
  }

  private static boolean flag(String name, String text) {
    if (!List.of("true", "false").contains(text)) {
      throw Problem.badField(name, text, "is true or false");
    }
    return text.equals("true");
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "getImport",
      summary = "The receipt of an import again, or how far it has come")
  @APIResponse(
      responseCode = "200",
      description =
          "By 'state': finished with the receipt; waiting, reading or assessing with 'progress';"
              + " refused or interrupted with the 'problem' for which nothing was applied",
      content =
          @Content(
              mediaType = JSON,
              schema = @Schema(oneOf = {ReceiptView.class, RunView.class}),
              examples = {
                @ExampleObject(name = "under way", value = ImportExamples.READING),
                @ExampleObject(name = "finished", value = ImportExamples.RECEIPT)
              }))
  @APIResponse(responseCode = "304", description = "Not changed since the ETag in If-None-Match")
  @APIResponse(responseCode = "404", description = "urn:coldround:problem:not-found")
  public Response receipt(
      @Parameter(description = "Id of the import") @PathParam("id") String id,
      @Context Request request) {
    Optional<ImportRuns.Open> open = runs.find(id);
    if (open.isPresent()) {
      return answers
          .read(answers.bytes(open.get().view()), MediaType.APPLICATION_JSON_TYPE, request)
          .header("Retry-After", "1")
          .build();
    }
    Optional<Receipt> receipt = receipts.find(id);
    return answers.read(
        receipt.isPresent() ? ReceiptView.of(receipt.get()) : runs.ended(id), request);
  }

  private Receipt find(String id) {
    return receipts.find(id).orElseThrow(() -> Problem.notFound("import '" + id + "'"));
  }

  @GET
  @Path("{id}/rejected")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "getRejectedRows",
      summary = "Rejected rows as CSV with what is wrong; mended, it can be imported as it is")
  @APIResponse(
      responseCode = "200",
      description = "Original columns first, then problem_row, problem_column, problem",
      content =
          @Content(
              mediaType = CSV,
              schema = @Schema(type = SchemaType.STRING),
              examples = @ExampleObject(name = "one row", value = ImportExamples.REJECTED)))
  @APIResponse(responseCode = "304", description = "Not changed since the ETag in If-None-Match")
  @APIResponse(
      responseCode = "404",
      description = "urn:coldround:problem:not-found: no such import, or it has no receipt yet")
  public Response rejected(
      @Parameter(description = "Id of the import") @PathParam("id") String id,
      @Context Request request) {
    Receipt receipt = find(id);
    EntityTag tag = new EntityTag(receipt.id());
    Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
    if (unchanged != null) {
      return unchanged.tag(tag).build();
    }
    StreamingOutput pieces = out -> write(receipt.id(), out);
    return Response.ok(pieces, CSV + ";charset=UTF-8;header=present")
        .tag(tag)
        .header(
            "Content-Disposition",
            "attachment; filename=\"" + receipt.kind().code() + "-rejected.csv\"")
        .build();
  }

  private void write(String id, OutputStream out) throws IOException {
    try (InputStream rows = receipts.rejectedRows(id)) {
      rows.transferTo(out);
    }
  }
}
