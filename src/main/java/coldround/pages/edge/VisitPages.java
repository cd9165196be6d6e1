package coldround.pages.edge;

import coldround.access.Role;
import coldround.field.VisitTaking;
import coldround.field.VisitTaking.Taken;
import coldround.fleet.Fleet;
import coldround.fleet.FleetNames;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.http.Caller;
import coldround.http.ExpiredPage;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.ReaderNumbers;
import coldround.pages.TypedVisit;
import coldround.pages.VerdictView;
import coldround.pages.VisitSheet;
import coldround.pages.VisitSheets;
import coldround.pages.VisitView;
import coldround.quantity.MeasureSystem;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Entering a visit at the unit, with the answer to its readings at once. */
@Path("/units/{id}/visits")
@Produces(MediaType.TEXT_HTML)
public class VisitPages {

  private static final List<String> OURS = List.of("number", "seen", "measures", "act");

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance form(VisitSheet sheet);

    static native TemplateInstance taken(
        UnitHistory history,
        VisitView visit,
        String technician,
        List<VerdictView> says,
        boolean si);
  }

  private final Fleet fleet;
  private final VisitTaking visits;
  private final VisitForms forms;
  private final Today today;
  private final Caller caller;

  @Inject
  VisitPages(Fleet fleet, VisitTaking visits, VisitForms forms, Today today, Caller caller) {
    this.fleet = fleet;
    this.visits = visits;
    this.forms = forms;
    this.today = today;
    this.caller = caller;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
  @Path("new")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(hidden = true)
  public TemplateInstance blank(
      @PathParam("id") String id, @QueryParam("measures") String measures) {
    UnitHistory history = history(id);
    String number = "field-" + UUID.randomUUID();
    TypedVisit typed = TypedVisit.on(today.at(history.site()));
    return Templates.form(
        forms
            .form(history, Parameters.measures(measures), Locale.ENGLISH, number, "")
            .sheet(typed, VisitSheets.Told.NOTHING));
  }

  @GET
  @Path("{visit}/correct")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(hidden = true)
  public TemplateInstance correct(
      @PathParam("id") String id,
      @PathParam("visit") String number,
      @QueryParam("measures") String measures,
      @Context HttpHeaders headers) {
    MeasureSystem system = Parameters.measures(measures);
    Locale language = language(headers);
    Taken stored = stored(id, number);
    return Templates.form(
        forms
            .form(history(id), system, language, number, stored.tag())
            .sheet(TypedVisit.of(stored.visit(), system, language), VisitSheets.Told.NOTHING));
  }

  @GET
  @Path("{visit}")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(hidden = true)
  public TemplateInstance answer(
      @PathParam("id") String id,
      @PathParam("visit") String number,
      @QueryParam("measures") String measures) {
    MeasureSystem system = Parameters.measures(measures);
    Taken stored = stored(id, number);
    return Templates.taken(
        history(id),
        VisitView.of(stored.visit(), system),
        new FleetNames(fleet).technician(stored.visit().technician()),
        VerdictView.of(stored.judgement(), system),
        system == MeasureSystem.SI);
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @PermitAll
  @Operation(hidden = true)
  public Response take(
      @PathParam("id") String id,
      MultivaluedMap<String, String> sent,
      @Context HttpHeaders headers) {
    if (caller.account() == null) {
      return VisitForms.html(401, ExpiredPage.html("/units/" + id + "/visits", fields(sent)));
    }
    if (!caller.isPlanner() && !caller.isTechnician()) {
      throw Problem.notAllowed();
    }
    Parameters.refuseNul(sent);
    MeasureSystem system = Parameters.measures(sent.getFirst("measures"));
    String own = first(sent, "own");
    String number = own.isEmpty() ? first(sent, "number") : own;
    VisitForms.Form form =
        forms.form(
            history(id),
            system,
            language(headers),
            number.isEmpty() ? "field-" + UUID.randomUUID() : number,
            first(sent, "seen"));
    return form.answer(typed(sent), first(sent, "act").equals("try"));
  }

  private static String first(MultivaluedMap<String, String> sent, String name) {
    String value = sent.getFirst(name);
    return value == null ? "" : value.strip();
  }

  private static List<ExpiredPage.Sent> fields(MultivaluedMap<String, String> sent) {
    return sent.entrySet().stream()
        .flatMap(
            field ->
                field.getValue().stream().map(value -> new ExpiredPage.Sent(field.getKey(), value)))
        .toList();
  }

  private static TypedVisit typed(MultivaluedMap<String, String> sent) {
    Map<String, List<String>> fields = new LinkedHashMap<>(sent);
    fields.keySet().removeAll(OURS);
    return new TypedVisit(fields);
  }

  private static Locale language(HttpHeaders headers) {
    return ReaderNumbers.language(headers.getAcceptableLanguages());
  }

  private UnitHistory history(String id) {
    return fleet.history(id).orElseThrow(() -> Problem.notFound("unit " + id));
  }

  private Taken stored(String id, String number) {
    return visits
        .stored(id, number)
        .orElseThrow(() -> Problem.notFound("visit '" + number + "' of this unit"));
  }
}
