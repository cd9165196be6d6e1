package coldround.intake.edge;

import coldround.access.Role;
import coldround.fleet.Kind;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.http.Wrong;
import coldround.intake.IntakeTables;
import coldround.intake.Mending;
import coldround.intake.Profile;
import coldround.intake.Proposal;
import coldround.intake.Receipt;
import coldround.intake.UnreadableFile;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** A file is dropped, and what became of it is told. */
@Path("/imports")
@Produces(MediaType.TEXT_HTML)
public class ImportPages {

  static final String AUTO = "auto";

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance run(
        String title,
        ImportView.Way way,
        ImportView.Outcome done,
        String failed,
        ImportView.Option next);
  }

  private final ImportStart start;
  private final Trials trials;
  private final FileImport imports;
  private final ImportRuns runs;
  private final StoredReceipts receipts;
  private final StoredProfiles profiles;
  private final IntakeTables tables;
  private final HeldFiles held;
  private final Clock clock;
  private final long mostBytes;

  @Inject
  ImportPages(
      ImportStart start,
      Trials trials,
      FileImport imports,
      ImportRuns runs,
      StoredReceipts receipts,
      StoredProfiles profiles,
      IntakeTables tables,
      HeldFiles held,
      Clock clock,
      @ConfigProperty(name = "coldround.upload.most-bytes", defaultValue = "1000000000")
          long mostBytes) {
    this.start = start;
    this.trials = trials;
    this.imports = imports;
    this.runs = runs;
    this.receipts = receipts;
    this.profiles = profiles;
    this.tables = tables;
    this.held = held;
    this.clock = clock;
    this.mostBytes = mostBytes;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return start.page(problem.status(), "", "", Wrong.of(problem));
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response start(@QueryParam("kind") String kind) {
    return start.page(200, kind == null ? "" : kind, "", Wrong.NOTHING);
  }

  @GET
  @Path("templates/{kind}.csv")
  @Produces("text/csv")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response template(@PathParam("kind") String code) {
    Kind kind = kind(code);
    String file = kind.code() + ".csv";
    return Response.ok(packaged("import/templates/" + file), "text/csv;charset=UTF-8")
        .header("Content-Disposition", "attachment; filename=\"" + file + "\"")
        .build();
  }

  private static String packaged(String name) {
    ClassLoader loader = Thread.currentThread().getContextClassLoader();
    try (InputStream text = loader.getResourceAsStream(name)) {
      if (text == null) {
        throw new IllegalStateException("there is no packaged " + name);
      }
      return new String(text.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Kind kind(String code) {
    return Kind.find(code == null ? "" : code)
        .orElseThrow(() -> Problem.badField("kind", code, "is one of the lists to choose from"));
  }

  @POST
  @Consumes(MediaType.MULTIPART_FORM_DATA)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response send(
      @RestForm("kind") String code,
      @RestForm("profile") String profile,
      @RestForm("file") FileUpload sent) {
    if (Kind.find(code == null ? "" : code).isEmpty()) {
      return wrong("", profile, "kind", "Choose which list the file is, then the file again.");
    }
    if (sent == null || sent.fileName().isBlank()) {
      return wrong(
          code, profile, "file", "Choose a file, or drop one: CSV or an Excel workbook (.xlsx).");
    }
    Spool file = spool(sent);
    try {
      HeldFile look = look(file, sent.fileName(), kind(code), profile);
      return Response.seeOther(URI.create("/imports/files/" + look.id())).build();
    } catch (UnreadableFile refusal) {
      file.close();
      String says = "'" + sent.fileName() + "' was not read. " + refusal.getMessage();
      return wrong(code, profile, "file", says);
    } catch (Problem problem) {
      file.close();
      return start.page(problem.status(), code, profile, Wrong.of(problem));
    } catch (RuntimeException e) {
      file.close();
      throw e;
    }
  }

  private Response wrong(String kind, String profile, String field, String says) {
    return start.page(422, kind, profile, new Wrong(List.of(new FieldError(field, "", says))));
  }

  private Spool spool(FileUpload sent) {
    try (InputStream bytes = Files.newInputStream(sent.uploadedFile())) {
      return Spool.of(bytes, mostBytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private HeldFile look(Spool file, String name, Kind kind, String profile) {
    Proposal proposal = imports.propose(file.file(), "", kind);
    Mending mending = new Mending(kind, tables.columns(kind), proposal);
    String id = UUID.randomUUID().toString();
    HeldFile look = new HeldFile(id, name, kind, file, mending, clock.instant());
    boolean guess = profile == null || profile.isEmpty() || profile.equals(AUTO);
    if (guess) {
      trials.tryOut(look, proposal.profile(), mending.guessed(), "");
    } else {
      trials.tryOut(look, named(profile), List.of(), "");
    }
    held.hold(look);
    return look;
  }

  private Profile named(String profile) {
    return profiles
        .find(profile)
        .orElseThrow(() -> Problem.badField("profile", profile, "is not known any more"));
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response run(@PathParam("id") String id) {
    Optional<ImportRuns.Open> open = runs.find(id);
    if (open.isPresent()) {
      RunView view = open.get().view();
      return run(view.kind(), ImportView.way(view), null, "");
    }
    Optional<Receipt> receipt = receipts.find(id);
    return receipt.isPresent()
        ? run(receipt.get().kind().code(), null, ImportView.outcome(receipt.get()), "")
        : run(runs.ended(id).kind(), null, null, trials.failed(id));
  }

  private static Response run(
      String kind, ImportView.Way way, ImportView.Outcome done, String failed) {
    return ImportStart.html(
        200, Templates.run(ImportView.title(kind), way, done, failed, ImportView.next(kind)));
  }
}
