package coldround.intake.edge;

import coldround.access.Role;
import coldround.fleet.Kind;
import coldround.http.Problem;
import coldround.intake.DateOrder;
import coldround.intake.IntakeTables;
import coldround.intake.Mending;
import coldround.intake.Mending.Choice;
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
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** A file is dropped, looked at, its mapping mended, and taken. */
@Path("/imports")
@Produces(MediaType.TEXT_HTML)
public class ImportPages {

  /** A small file is answered with its trial; a bigger one with how far the trial is. */
  private static final int WAIT_SECONDS = 2;

  private static final String AUTO = "auto";

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance start(
        List<ImportView.Option> kinds, List<ImportView.Option> profiles, String wrong);

    static native TemplateInstance file(Look look);

    static native TemplateInstance run(
        String title,
        ImportView.Way way,
        ImportView.Outcome done,
        String failed,
        ImportView.Option next);
  }

  /**
   * All that the page of a file shows.
   *
   * @param lines empty where a profile was named
   * @param way null when the trial has ended
   * @param trial null while it is under way or when it failed
   * @param failed why the trial failed; empty when it did not
   * @param wrong what is wrong with the form; empty for nothing
   */
  public record Look(
      String id,
      String name,
      String kind,
      String title,
      String profile,
      String saved,
      List<ImportView.Line> lines,
      List<String> missing,
      List<ImportView.Option> dates,
      List<ImportView.Option> decimals,
      ImportView.Way way,
      ImportView.Outcome trial,
      String failed,
      String wrong,
      String typedName) {}

  private final FileImport imports;
  private final ImportRuns runs;
  private final StoredReceipts receipts;
  private final StoredProfiles profiles;
  private final ProfilesResource saving;
  private final IntakeTables tables;
  private final HeldFiles held;
  private final Clock clock;
  private final long mostBytes;

  @Inject
  ImportPages(
      FileImport imports,
      ImportRuns runs,
      StoredReceipts receipts,
      StoredProfiles profiles,
      ProfilesResource saving,
      IntakeTables tables,
      HeldFiles held,
      Clock clock,
      @ConfigProperty(name = "coldround.upload.most-bytes", defaultValue = "1000000000")
          long mostBytes) {
    this.imports = imports;
    this.runs = runs;
    this.receipts = receipts;
    this.profiles = profiles;
    this.saving = saving;
    this.tables = tables;
    this.held = held;
    this.clock = clock;
    this.mostBytes = mostBytes;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return start(problem.status(), "", problem.getMessage());
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response start(@QueryParam("kind") String kind) {
    return start(200, kind == null ? "" : kind, "");
  }

  private Response start(int status, String kind, String wrong) {
    List<ImportView.Option> kinds =
        Arrays.stream(Kind.values())
            .map(Kind::code)
            .map(code -> new ImportView.Option(code, ImportView.title(code), code.equals(kind)))
            .toList();
    List<ImportView.Option> named =
        profiles.names().stream().map(name -> new ImportView.Option(name, name, false)).toList();
    return html(status, Templates.start(kinds, named, wrong));
  }

  private static Response html(int status, TemplateInstance page) {
    return Response.status(status)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(page.render())
        .build();
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
        .orElseThrow(() -> Problem.badField("kind", code, "choose which list the file is"));
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
      return start(422, "", "Choose which list the file is, then the file again.");
    }
    if (sent == null || sent.fileName().isBlank()) {
      return start(422, code, "Choose a file, or drop one: CSV or an Excel workbook (.xlsx).");
    }
    Spool file = spool(sent);
    try {
      HeldFile look = look(file, sent.fileName(), kind(code), profile);
      return Response.seeOther(URI.create("/imports/files/" + look.id())).build();
    } catch (UnreadableFile refusal) {
      file.close();
      return start(422, code, "'" + sent.fileName() + "' was not read. " + refusal.getMessage());
    } catch (RuntimeException e) {
      file.close();
      throw e;
    }
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
      tryOut(look, proposal.profile(), mending.guessed(), "");
    } else {
      tryOut(look, named(profile), List.of(), "");
    }
    held.hold(look);
    return look;
  }

  private Profile named(String profile) {
    return profiles
        .find(profile)
        .orElseThrow(() -> Problem.badField("profile", profile, "is not known any more"));
  }

  private void tryOut(HeldFile file, Profile profile, List<Choice> choices, String saved) {
    FileImport.Order order = new FileImport.Order(file.kind(), profile, true, true, "");
    ImportRuns.Later trial = runs.later(file.file().borrowed(), order);
    file.tried(new HeldFile.Trial(profile, choices, trial.open().begun().id(), saved));
    await(trial);
  }

  private static void await(ImportRuns.Later later) {
    try {
      later.receipt().get(WAIT_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException | ExecutionException e) {
      // the page that follows tells how far it is, or why it failed
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @GET
  @Path("files/{id}")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response file(@PathParam("id") String id) {
    HeldFile file = known(id);
    return file.taken().isEmpty() ? page(200, file, "", "") : seen(file.taken());
  }

  private HeldFile known(String id) {
    return held.find(id)
        .orElseThrow(
            () ->
                new Problem(
                    404,
                    "not-found",
                    "Not held any more",
                    "That file is not held any more. Nothing of it was taken; send it again.",
                    List.of()));
  }

  private static Response seen(String run) {
    return Response.seeOther(URI.create("/imports/" + run)).build();
  }

  private Response page(int status, HeldFile file, String wrong, String typedName) {
    HeldFile.Trial trial = file.trial();
    Optional<ImportRuns.Open> open = runs.find(trial.run());
    Optional<Receipt> receipt = open.isPresent() ? Optional.empty() : receipts.find(trial.run());
    String failed = open.isPresent() || receipt.isPresent() ? "" : failed(trial.run());
    Look look =
        new Look(
            file.id(),
            file.name(),
            file.kind().code(),
            ImportView.title(file.kind().code()),
            trial.profile().name(),
            trial.saved(),
            trial.choices().isEmpty() ? List.of() : ImportView.lines(file),
            trial.choices().isEmpty() ? List.of() : file.mending().proposal().missing(),
            ImportView.dates(trial.profile()),
            ImportView.decimals(trial.profile()),
            open.map(run -> ImportView.way(run.view())).orElse(null),
            receipt.map(ImportView::outcome).orElse(null),
            failed,
            wrong,
            typedName);
    return html(status, Templates.file(look));
  }

  private String failed(String run) {
    return String.valueOf(runs.ended(run).problem().get("detail"));
  }

  @POST
  @Path("files/{id}")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response mend(@PathParam("id") String id, MultivaluedMap<String, String> sent) {
    HeldFile file = known(id);
    String name = first(sent, "name");
    boolean save = first(sent, "act").equals("save");
    try {
      List<Choice> choices = choices(file, sent);
      Profile profile =
          file.mending().profile(save ? name : AUTO, choices, dates(sent), sign(sent));
      if (save) {
        saving.save(ProfileDocument.of(profile));
      }
      tryOut(file, profile, choices, save ? name : "");
    } catch (IllegalArgumentException e) {
      return page(422, file, e.getMessage(), name);
    } catch (Problem e) {
      return page(e.status(), file, e.getMessage(), name);
    }
    return Response.seeOther(URI.create("/imports/files/" + id)).build();
  }

  private static List<Choice> choices(HeldFile file, MultivaluedMap<String, String> sent) {
    List<Choice> guessed = file.trial().choices();
    List<Choice> choices = new ArrayList<>();
    for (int i = 0; i < guessed.size(); i++) {
      boolean said = sent.containsKey("column-" + i);
      String column = said ? first(sent, "column-" + i) : guessed.get(i).column();
      choices.add(new Choice(column, first(sent, "measure-" + i)));
    }
    return choices;
  }

  private static DateOrder dates(MultivaluedMap<String, String> sent) {
    return DateOrder.find(first(sent, "dates")).orElse(DateOrder.FROM_COLUMN);
  }

  private static char sign(MultivaluedMap<String, String> sent) {
    return first(sent, "decimal").equals(",") ? ',' : '.';
  }

  private static String first(MultivaluedMap<String, String> sent, String name) {
    String value = sent.getFirst(name);
    return value == null ? "" : value.strip();
  }

  @POST
  @Path("files/{id}/take")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response take(@PathParam("id") String id) {
    HeldFile file = known(id);
    synchronized (file) {
      // a button pressed twice takes the file once
      if (file.taken().isEmpty()) {
        FileImport.Order order =
            new FileImport.Order(file.kind(), file.trial().profile(), false, true, "");
        ImportRuns.Later later = runs.later(file.file(), order);
        file.takenBy(later.open().begun().id());
        await(later);
      }
      return seen(file.taken());
    }
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
        : run(runs.ended(id).kind(), null, null, failed(id));
  }

  private static Response run(
      String kind, ImportView.Way way, ImportView.Outcome done, String failed) {
    return html(
        200, Templates.run(ImportView.title(kind), way, done, failed, ImportView.next(kind)));
  }
}
