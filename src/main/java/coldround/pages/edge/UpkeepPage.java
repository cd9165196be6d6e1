package coldround.pages.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.FleetNames;
import coldround.fleet.Site;
import coldround.fleet.Today;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.http.Kept;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Wrong;
import coldround.pages.CurvePicture;
import coldround.pages.FaultCurves;
import coldround.pages.Figures;
import coldround.pages.Plate;
import coldround.pages.WeekView;
import coldround.pages.Words;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Assessment;
import coldround.scoring.FleetFaults;
import coldround.scoring.FleetList;
import coldround.scoring.FleetList.Search;
import coldround.scoring.Scoring;
import coldround.upkeep.ArrangementList;
import coldround.upkeep.Arrangements;
import coldround.upkeep.Task;
import coldround.upkeep.Upkeep;
import coldround.upkeep.WeekPlan;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** The coming weeks of upkeep against what the technicians can do. */
@Path("/upkeep")
@Produces(MediaType.TEXT_HTML)
public class UpkeepPage {

  private static final int WEEKS = 13;
  // as many units as are worked out while somebody waits for a page
  private static final long MOST_UNITS = 5000;

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance upkeep(Calendar calendar);
  }

  /**
   * All that the page shows.
   *
   * @param weeks empty where a customer has to be chosen first
   * @param wrong with the days of the comparison
   * @param backtest figures, empty unless asked for
   * @param faults empty where a customer has to be chosen first
   */
  public record Calendar(
      List<Choice> customers,
      String summary,
      List<WeekView> weeks,
      String from,
      String until,
      Wrong wrong,
      List<Plate.Field> backtest,
      List<Faults> faults) {}

  /** Faults by time under observation, as a picture. */
  public record Faults(String name, CurvePicture picture) {}

  private final Fleet fleet;
  private final FleetList list;
  private final Scoring scoring;
  private final Upkeep upkeep;
  private final ArrangementList arrangements;
  private final Today today;

  @Inject
  UpkeepPage(
      Fleet fleet,
      FleetList list,
      Scoring scoring,
      Upkeep upkeep,
      ArrangementList arrangements,
      Today today) {
    this.fleet = fleet;
    this.list = list;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.arrangements = arrangements;
    this.today = today;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
  @Kept
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(hidden = true)
  public Response upkeep(
      @QueryParam("customer") String customer,
      @QueryParam("from") String from,
      @QueryParam("until") String until,
      @QueryParam("measures") String measures) {
    MeasureSystem system = Parameters.measures(measures);
    Comparison asked = Comparison.read(from, until, today.usually());
    String chosen = customer == null ? "" : customer;
    long units = list.count(new Search(chosen, "", "", "", "", ""));
    boolean tooMany = units > MOST_UNITS;
    List<UnitHistory> histories = tooMany ? List.of() : histories(chosen);
    WeekPlan plan = plan(histories);
    Calendar calendar =
        new Calendar(
            customers(chosen),
            tooMany
                ? Words.count(units, "unit", "units") + ": choose a customer first."
                : summary(plan),
            tooMany ? List.of() : WeekView.of(plan, system, places(histories)),
            asked.from(),
            asked.until(),
            asked.wrong(),
            tooMany ? List.of() : asked.figures(scoring, upkeep, histories),
            tooMany ? List.of() : faults(histories));
    return Response.status(asked.wrong().any() ? 400 : 200)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(Templates.upkeep(calendar).render())
        .build();
  }

  private List<UnitHistory> histories(String customer) {
    List<UnitHistory> histories = new ArrayList<>();
    fleet.eachHistory(new FleetFilter(customer, "", "", "", ""), histories::add);
    return histories;
  }

  private WeekPlan plan(List<UnitHistory> histories) {
    Arrangements arranged =
        arrangements.of(histories.stream().map(history -> history.unit().id()).toList());
    List<Task> tasks = new ArrayList<>();
    for (UnitHistory history : histories) {
      LocalDate day = today.at(history.site());
      if (history.unit().inUse(day)) {
        Assessment assessment = scoring.assess(history, day);
        tasks.addAll(upkeep.plan(assessment, day, arranged));
      }
    }
    tasks.sort(Comparator.comparing(Task::due).thenComparing(Task::id));
    int technicians = Math.max(1, fleet.technicians().size());
    return WeekPlan.of(tasks, today.usually(), upkeep.capacity(technicians), WEEKS);
  }

  private static String summary(WeekPlan plan) {
    int tasks = plan.weeks().stream().mapToInt(week -> week.tasks().size()).sum();
    return Words.count(tasks, "task", "tasks")
        + " in "
        + WEEKS
        + " weeks; "
        + plan.pulled()
        + " brought forward before the hot months, "
        + plan.moved()
        + " out of a full week; "
        + Figures.decimal(plan.minutesOver() / 60.0, 1)
        + " h more than there is time for.";
  }

  private List<Choice> customers(String chosen) {
    return fleet.customers().stream()
        .map(
            c ->
                new Choice(
                    c.code(), c.name().isEmpty() ? c.code() : c.name(), c.code().equals(chosen)))
        .toList();
  }

  private List<Faults> faults(List<UnitHistory> histories) {
    return List.of(
        new Faults("By class of unit", faults(histories, FleetFaults.By.CLASS)),
        new Faults("By failure mode", faults(histories, FleetFaults.By.FAILURE_MODE)));
  }

  private CurvePicture faults(List<UnitHistory> histories, FleetFaults.By by) {
    FleetFaults faults = new FleetFaults(scoring, "", "", by);
    histories.forEach(history -> faults.add(history, today.at(history.site())));
    return FaultCurves.draw(faults.curves());
  }

  /** Sites of different customers may have the same name. */
  private Function<Unit, String> places(List<UnitHistory> histories) {
    FleetNames names = new FleetNames(fleet);
    Map<String, String> places = new HashMap<>();
    for (UnitHistory history : histories) {
      Site site = history.site();
      String name = site.name().isBlank() ? site.code() : site.name();
      places.put(history.unit().id(), name + ", " + names.customer(site.customer()));
    }
    return unit -> places.get(unit.id());
  }
}
