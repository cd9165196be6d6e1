package coldround.intake.edge;

import coldround.fleet.Kind;
import coldround.http.Answers;
import coldround.http.Problem;
import coldround.intake.Profile;
import coldround.intake.Receipt;
import coldround.intake.UnreadableFile;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.hibernate.exception.DataException;

/** Files in, receipts and rejected rows out. */
@Path("/api/v1/imports")
@Tag(name = "Imports")
public class ImportsResource {

  private static final String CSV = "text/csv";
  private static final String WORKBOOK =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

  /** Asks for a profile to be proposed from the file. */
  private static final String AUTO = "auto";

  private final FileImport imports;
  private final StoredProfiles profiles;
  private final StoredReceipts receipts;
  private final Answers answers;
  private final long mostBytes;

  @Inject
  ImportsResource(
      FileImport imports,
      StoredProfiles profiles,
      StoredReceipts receipts,
      Answers answers,
      @ConfigProperty(name = "coldround.upload.most-bytes", defaultValue = "1000000000")
          long mostBytes) {
    this.imports = imports;
    this.profiles = profiles;
    this.receipts = receipts;
    this.answers = answers;
    this.mostBytes = mostBytes;
  }

  @POST
  @Path("{kind}")
  @Consumes({CSV, WORKBOOK, "application/octet-stream"})
  @Operation(
      operationId = "importFile",
      summary = "Read a file of one kind; good rows are applied, bad ones are told in the receipt")
  public Response read(
      @PathParam("kind") String kind,
      @QueryParam("preview") @DefaultValue("false") String preview,
      @QueryParam("partial") @DefaultValue("true") String partial,
      @QueryParam("profile") @DefaultValue("standard") String profile,
      @QueryParam("sheet") @DefaultValue("") String sheet,
      InputStream body) {
    Kind of = kind(kind);
    boolean showing = flag("preview", preview);
    boolean some = flag("partial", partial);
    Profile named = profile.equals(AUTO) ? null : profile(profile);
    try (Spool sent = Spool.of(body == null ? InputStream.nullInputStream() : body, mostBytes)) {
      MappingView mapping = named == null ? mapping(sent, sheet, of) : null;
      Profile used = named == null ? mapping.sure() : named;
      Receipt receipt =
          imports.run(sent.file(), new FileImport.Order(of, used, showing, some, sheet));
      return Response.ok(ReceiptView.of(receipt, mapping))
          .header("Content-Location", "/api/v1/imports/" + receipt.id())
          .build();
    } catch (UnreadableFile refusal) {
      throw Problem.unprocessable(
          refusal.code(), "The file cannot be used; nothing was applied", refusal.getMessage());
    } catch (DataException tooLong) {
      throw Problem.unprocessable(
          "too-long",
          "The file cannot be stored; nothing was applied",
          "A text or the readings of one visit are longer than the store keeps. Split them.");
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
    return MappingView.of(imports.propose(sent.file(), sheet, kind));
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
  @Operation(operationId = "getImport", summary = "The receipt of an import again")
  public Response receipt(@PathParam("id") String id, @Context Request request) {
    return answers.read(ReceiptView.of(find(id)), request);
  }

  private Receipt find(String id) {
    return receipts.find(id).orElseThrow(() -> Problem.notFound("import '" + id + "'"));
  }

  @GET
  @Path("{id}/rejected")
  @Operation(
      operationId = "getRejectedRows",
      summary = "Rejected rows as CSV with what is wrong; mended, it can be imported as it is")
  public Response rejected(@PathParam("id") String id, @Context Request request) {
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
