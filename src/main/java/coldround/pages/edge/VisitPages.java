package coldround.pages.edge;

import coldround.access.Role;
import coldround.field.VisitTaking;
import coldround.field.VisitTaking.Sending;
import coldround.field.VisitTaking.Taken;
import coldround.fleet.Fleet;
import coldround.fleet.Kind;
import coldround.fleet.Technician;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.http.Caller;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.intake.IntakeTables;
import coldround.pages.SentVisit;
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
import jakarta.ws.rs.core.UriBuilder;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
        UnitHistory history, VisitView visit, List<VerdictView> says, boolean si);

    static native TemplateInstance expired(String action, List<Sent> fields);
  }

  /** A field as it was sent, to be sent again. */
  public record Sent(String name, String value) {}

  private final Fleet fleet;
  private final VisitTaking visits;
  private final IntakeTables tables;
  private final Today today;
  private final Caller caller;

  @Inject
  VisitPages(Fleet fleet, VisitTaking visits, IntakeTables tables, Today today, Caller caller) {
    this.fleet = fleet;
    this.visits = visits;
    this.tables = tables;
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
        new Form(history, Parameters.measures(measures), Locale.ENGLISH, number, "")
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
        new Form(history(id), system, language, number, stored.tag())
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
      return html(401, Templates.expired("/units/" + id + "/visits", fields(sent)));
    }
    if (!caller.isPlanner() && !caller.isTechnician()) {
      throw Problem.notAllowed();
    }
    MeasureSystem system = Parameters.measures(sent.getFirst("measures"));
    String own = first(sent, "own");
    String number = own.isEmpty() ? first(sent, "number") : own;
    Form form =
        new Form(
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

  private static List<Sent> fields(MultivaluedMap<String, String> sent) {
    return sent.entrySet().stream()
        .flatMap(field -> field.getValue().stream().map(value -> new Sent(field.getKey(), value)))
        .toList();
  }

  private static TypedVisit typed(MultivaluedMap<String, String> sent) {
    Map<String, List<String>> fields = new LinkedHashMap<>(sent);
    fields.keySet().removeAll(OURS);
    return new TypedVisit(fields);
  }

  private static Locale language(HttpHeaders headers) {
    return PageNumbers.language(headers.getAcceptableLanguages());
  }

  private UnitHistory history(String id) {
    return fleet.history(id).orElseThrow(() -> Problem.notFound("unit " + id));
  }

  /** A technician enters visits of the own. */
  private List<Technician> technicians() {
    String own = caller.technician();
    return fleet.technicians().stream()
        .filter(each -> own.isEmpty() || each.code().equals(own))
        .toList();
  }

  private Taken stored(String id, String number) {
    return visits
        .stored(id, number)
        .orElseThrow(() -> Problem.notFound("visit '" + number + "' of this unit"));
  }

  private static Response html(int status, TemplateInstance page) {
    return Response.status(status)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(page.render())
        .build();
  }

  /** One form of one visit. */
  private final class Form {

    private final UnitHistory history;
    private final MeasureSystem system;
    private final Locale language;
    private final String number;
    private final String seen;

    Form(UnitHistory history, MeasureSystem system, Locale language, String number, String seen) {
      this.history = history;
      this.system = system;
      this.language = language;
      this.number = number;
      this.seen = seen;
    }

    VisitSheet sheet(TypedVisit typed, VisitSheets.Told told) {
      return VisitSheets.sheet(
          history,
          tables,
          technicians(),
          system,
          today.at(history.site()),
          number,
          seen,
          typed,
          told);
    }

    Response answer(TypedVisit typed, boolean trial) {
      Optional<Taken> stored = visits.stored(history.unit().id(), number);
      String tag = stored.map(Taken::tag).orElse("");
      TypedVisit stands =
          stored
              .map(s -> TypedVisit.of(s.visit(), system, language))
              .orElse(new TypedVisit(Map.of()));
      // a new form sent twice, or sent again after "back", corrects what it has brought itself
      SentVisit sent =
          SentVisit.of(typed, stands, number, tables.columns(Kind.VISITS), system, language);
      // under a number of the sender's own there may be a visit that the sender knows nothing of
      boolean met = seen.isEmpty() && stored.isPresent() && !typed.text("own").isEmpty();
      if ((met || !tag.equals(seen) && !seen.isEmpty()) && !sent.same(stands)) {
        return changed(typed, stands, tag);
      }
      if (!sent.wrong().isEmpty()) {
        return wrong(typed, sent.wrong());
      }
      Sending sending = new Sending(history.unit().id(), sent.visit(), sent.emptied(), tag);
      try {
        return trial ? tried(typed, sending) : taken(sending);
      } catch (Problem problem) {
        return refused(typed, stands, problem);
      }
    }

    private Response tried(TypedVisit typed, Sending sending) {
      List<VerdictView> says = VerdictView.of(visits.tried(sending), system);
      return html(200, Templates.form(sheet(typed, new VisitSheets.Told(null, Map.of(), says))));
    }

    private Response taken(Sending sending) {
      visits.take(sending);
      UriBuilder answer = UriBuilder.fromPath("/units/{id}/visits/{visit}");
      if (system == MeasureSystem.SI) {
        answer.queryParam("measures", "si");
      }
      return Response.seeOther(answer.build(history.unit().id(), number)).build();
    }

    private Response refused(TypedVisit typed, TypedVisit stands, Problem problem) {
      if (problem.status() == 412) {
        Taken stored = VisitPages.this.stored(history.unit().id(), number);
        return changed(typed, TypedVisit.of(stored.visit(), system, language), stored.tag());
      }
      if (problem.errors().isEmpty()) {
        throw problem;
      }
      Map<String, String> wrong = new LinkedHashMap<>();
      problem
          .errors()
          .forEach(error -> wrong.putIfAbsent(SentVisit.field(error.field()), error.message()));
      return wrong(typed, wrong);
    }

    private Response wrong(TypedVisit typed, Map<String, String> wrong) {
      return html(422, Templates.form(sheet(typed, new VisitSheets.Told(null, wrong, List.of()))));
    }

    private Response changed(TypedVisit typed, TypedVisit stands, String tag) {
      Form again = new Form(history, system, language, number, tag);
      return html(
          409,
          Templates.form(again.sheet(typed, new VisitSheets.Told(stands, Map.of(), List.of()))));
    }
  }
}
