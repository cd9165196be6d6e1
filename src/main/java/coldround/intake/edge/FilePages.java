package coldround.intake.edge;

import coldround.access.Role;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.intake.DateOrder;
import coldround.intake.Mending.Choice;
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
import java.util.ArrayList;
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
    return start.page(problem.status(), "", problem.getMessage());
  }

  @GET
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
    String failed = open.isPresent() || receipt.isPresent() ? "" : trials.failed(trial.run());
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
    return ImportStart.html(status, Templates.file(look));
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response mend(@PathParam("id") String id, MultivaluedMap<String, String> sent) {
    Parameters.refuseNul(sent);
    HeldFile file = known(id);
    String name = first(sent, "name");
    boolean save = first(sent, "act").equals("save");
    try {
      List<Choice> choices = choices(file, sent);
      Profile profile =
          file.mending().profile(save ? name : ImportPages.AUTO, choices, dates(sent), sign(sent));
      if (save) {
        saving.save(ProfileDocument.of(profile));
      }
      trials.tryOut(file, profile, choices, save ? name : "");
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
  @Path("take")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response take(@PathParam("id") String id) {
    return seen(trials.take(known(id)));
  }
}
