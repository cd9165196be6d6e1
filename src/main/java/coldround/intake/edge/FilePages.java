package coldround.intake.edge;

import coldround.access.Role;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.http.Wrong;
import coldround.intake.Mending.TwiceMeant;
import coldround.intake.Profile;
import coldround.intake.Receipt;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** A file that was sent: looked at, its mapping mended, and taken. */
@Path("/imports/files/{id}")
@Produces(MediaType.TEXT_HTML)
public class FilePages {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance file(Look look);
  }

  /**
   * All that the page of a file shows.
   *
   * @param lines empty where a profile was named
   * @param way null when the trial has ended
   * @param trial null while it is under way or when it failed
   * @param failed why the trial failed; empty when it did not
   * @param wrong with the form
   * @param other what is wrong and belongs to no field
   * @param typedName name for files like this
   * @param replaces that name where it is known to be another's; empty otherwise
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
      Wrong wrong,
      List<String> other,
      String typedName,
      String replaces) {}

  private final ImportStart start;
  private final Trials trials;
  private final ImportRuns runs;
  private final StoredReceipts receipts;
  private final ProfilesResource saving;
  private final HeldFiles held;

  @Inject
  FilePages(
      ImportStart start,
      Trials trials,
      ImportRuns runs,
      StoredReceipts receipts,
      ProfilesResource saving,
      HeldFiles held) {
    this.start = start;
    this.trials = trials;
    this.runs = runs;
    this.receipts = receipts;
    this.saving = saving;
    this.held = held;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return start.page(problem.status(), "", "", Wrong.of(problem));
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response file(@PathParam("id") String id) {
    HeldFile file = known(id);
    return file.taken().isEmpty()
        ? page(200, file, FileForm.of(file.trial()), Wrong.NOTHING)
        : seen(file.taken());
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

  private Response page(int status, HeldFile file, FileForm typed, Wrong wrong) {
    HeldFile.Trial trial = file.trial();
    Optional<ImportRuns.Open> open = runs.find(trial.run());
    Optional<Receipt> receipt = open.isPresent() ? Optional.empty() : receipts.find(trial.run());
    String failed = open.isPresent() || receipt.isPresent() ? "" : trials.failed(trial.run());
    Look look =
        new Look(
            file.id(),
            file.name(),
            file.kind().code(),
            ImportView.title(file.kind().code()),
            trial.profile().name(),
            trial.saved(),
            trial.choices().isEmpty() ? List.of() : ImportView.lines(file, typed.choices()),
            trial.choices().isEmpty() ? List.of() : file.mending().proposal().missing(),
            ImportView.dates(typed.dates()),
            ImportView.decimals(typed.sign()),
            open.map(run -> ImportView.way(run.view())).orElse(null),
            receipt.map(ImportView::outcome).orElse(null),
            failed,
            wrong,
            wrong.besides(typed.fields()),
            typed.name(),
            wrong.at("name").isEmpty() ? "" : typed.name());
    return ImportStart.html(status, Templates.file(look));
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response mend(@PathParam("id") String id, MultivaluedMap<String, String> sent) {
    Parameters.refuseNul(sent);
    HeldFile file = known(id);
    FileForm typed = FileForm.of(file, sent);
    boolean save = "save".equals(sent.getFirst("act"));
    String refusal = save ? refusal(typed, file.trial().saved()) : "";
    if (!refusal.isEmpty()) {
      return wrong(file, typed, "name", refusal);
    }
    try {
      String name = save ? typed.name() : ImportPages.AUTO;
      Profile profile = file.mending().profile(name, typed.choices(), typed.dates(), typed.sign());
      if (save) {
        saving.save(ProfileDocument.of(profile));
      }
      trials.tryOut(file, profile, typed.choices(), save ? name : "");
    } catch (TwiceMeant twice) {
      return wrong(file, typed, "column-" + twice.second(), twice.getMessage());
    } catch (Problem problem) {
      return page(problem.status(), file, typed, Wrong.of(problem));
    }
    return Response.seeOther(URI.create("/imports/files/" + id)).build();
  }

  private Response wrong(HeldFile file, FileForm typed, String field, String says) {
    return page(422, file, typed, new Wrong(List.of(new FieldError(field, "", says))));
  }

  /**
   * Why it cannot be saved under the name that was typed; empty where it can.
   *
   * @param saved the name that this file was saved under before; empty for none
   */
  private String refusal(FileForm typed, String saved) {
    String name = typed.name();
    if (!Profile.isName(name)) {
      return "has 1 to 60 lower-case letters, digits and hyphens";
    }
    if (saving.packaged(name)) {
      return "belongs to the service; take another name";
    }
    boolean others = !name.equals(saved) && !name.equals(typed.replaces()) && saving.known(name);
    return others
        ? "This name is there already for other files. Save it once more to put this in its place,"
            + " or take another name."
        : "";
  }

  @POST
  @Path("take")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response take(@PathParam("id") String id) {
    return seen(trials.take(known(id)));
  }
}
