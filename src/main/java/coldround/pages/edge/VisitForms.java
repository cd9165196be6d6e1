package coldround.pages.edge;

import coldround.field.VisitTaking;
import coldround.field.VisitTaking.Sending;
import coldround.field.VisitTaking.Taken;
import coldround.fleet.Fleet;
import coldround.fleet.Kind;
import coldround.fleet.Technician;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.http.Caller;
import coldround.http.Problem;
import coldround.intake.IntakeTables;
import coldround.pages.SentVisit;
import coldround.pages.TypedVisit;
import coldround.pages.VerdictView;
import coldround.pages.VisitSheet;
import coldround.pages.VisitSheets;
import coldround.quantity.MeasureSystem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Forms of visits: laid out, and answered once they are sent. */
@ApplicationScoped
class VisitForms {

  private final Fleet fleet;
  private final VisitTaking visits;
  private final IntakeTables tables;
  private final Today today;
  private final Caller caller;

  @Inject
  VisitForms(Fleet fleet, VisitTaking visits, IntakeTables tables, Today today, Caller caller) {
    this.fleet = fleet;
    this.visits = visits;
    this.tables = tables;
    this.today = today;
    this.caller = caller;
  }

  /**
   * @param seen tag of the stored visit it began with; empty for a new one
   */
  Form form(
      UnitHistory history, MeasureSystem system, Locale language, String number, String seen) {
    return new Form(history, system, language, number, seen);
  }

  /** A technician enters visits of the own. */
  private List<Technician> technicians() {
    String own = caller.technician();
    return fleet.technicians().stream()
        .filter(each -> own.isEmpty() || each.code().equals(own))
        .toList();
  }

  static Response html(int status, String page) {
    return Response.status(status)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(page)
        .build();
  }

  /** One form of one visit. */
  final class Form {

    private final UnitHistory history;
    private final MeasureSystem system;
    private final Locale language;
    private final String number;
    private final String seen;

    private Form(
        UnitHistory history, MeasureSystem system, Locale language, String number, String seen) {
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
      return page(200, sheet(typed, new VisitSheets.Told(null, Map.of(), says)));
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
        Taken stored = visits.stored(history.unit().id(), number).orElseThrow(() -> problem);
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
      return page(422, sheet(typed, new VisitSheets.Told(null, wrong, List.of())));
    }

    private Response changed(TypedVisit typed, TypedVisit stands, String tag) {
      Form again = new Form(history, system, language, number, tag);
      return page(409, again.sheet(typed, new VisitSheets.Told(stands, Map.of(), List.of())));
    }

    private static Response page(int status, VisitSheet sheet) {
      return html(status, VisitPages.Templates.form(sheet).render());
    }
  }
}
