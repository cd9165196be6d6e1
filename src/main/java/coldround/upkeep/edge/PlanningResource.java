package coldround.upkeep.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Site;
import coldround.fleet.Today;
import coldround.http.Answers;
import coldround.http.Cost;
import coldround.http.Dear;
import coldround.http.Measured;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.ReasonView;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Scoring;
import coldround.upkeep.Backtest;
import coldround.upkeep.BacktestReport;
import coldround.upkeep.BacktestReport.Lockout;
import coldround.upkeep.BacktestReport.PlannedCleaning;
import coldround.upkeep.BacktestReport.Verdict;
import coldround.upkeep.BundledVisit;
import coldround.upkeep.Task;
import coldround.upkeep.Upkeep;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What plans are worth, and tasks of a site that are offered as one visit. */
@Path("/api/v1/upkeep")
@Tag(name = "Upkeep")
public class PlanningResource {

  private static final String BETWEEN = "\u001f";
  // one page of single events; the counts are of all
  private static final int LISTED = 500;

  record LockoutCounts(long recorded, long foreseen, Double medianLeadDays) {}

  record CleaningCounts(long planned, long needed, long needless, long unknown) {}

  record LockoutView(String unit, LocalDate date, LocalDate due, boolean foreseen, long leadDays) {}

  record CleaningView(String unit, LocalDate due, String rule, String verdict) {}

  /** How plans of the first day would have fared until the last. */
  record BacktestView(
      LocalDate from,
      LocalDate until,
      int units,
      LockoutCounts lockouts,
      CleaningCounts cleanings,
      List<LockoutView> recordedLockouts,
      List<CleaningView> plannedCleanings) {}

  record TaskName(String id, TaskView.UnitName unit, String task, LocalDate due) {}

  /** Tasks of one site that are done at once. */
  record Bundle(
      String customer,
      String site,
      LocalDate from,
      LocalDate to,
      int minutes,
      Measured saving,
      ReasonView reason,
      List<TaskName> tasks) {}

  private final Fleet fleet;
  private final Scoring scoring;
  private final Upkeep upkeep;
  private final TasksOfToday planned;
  private final Today today;
  private final Answers answers;
  private final Cost cost;

  @Inject
  PlanningResource(
      Fleet fleet,
      Scoring scoring,
      Upkeep upkeep,
      TasksOfToday planned,
      Today today,
      Answers answers,
      Cost cost) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.planned = planned;
    this.today = today;
    this.answers = answers;
    this.cost = cost;
  }

  @GET
  @Path("backtest")
  @Dear
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "backtestCleanings",
      summary = "Condenser cleanings planned as if the later record were unknown, held against it")
  @APIResponse(
      responseCode = "200",
      description = "The answer",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = BacktestView.class)))
  @APIResponse(
      responseCode = "400",
      description = "A parameter or field is wrong; errors say which and how to mend it",
      content = @Content(mediaType = "application/problem+json"))
  public Response backtest(
      @Parameter(
              description =
                  "First day, on which the plans are made; a year before until when left out",
              example = "2025-11-25")
          @QueryParam("from")
          String from,
      @Parameter(
              description = "Last day of the record that is looked at; today when left out",
              example = "2026-11-24")
          @QueryParam("until")
          String until,
      @Parameter(description = "Code of one customer; all when left out", example = "MERCY")
          @QueryParam("customer")
          String customer,
      @Context Request request) {
    LocalDate last = Parameters.date("until", until, today.usually());
    LocalDate first = Parameters.date("from", from, last.minusYears(1));
    if (!last.isAfter(first)) {
      throw Problem.badField("until", last.toString(), "lies after from");
    }
    cost.check("customer", customer);
    BacktestReport report =
        Backtest.run(scoring, upkeep, StoredUnits.of(fleet, customer), first, last);
    return answers.read(view(report), request);
  }

  private static BacktestView view(BacktestReport report) {
    var lead = report.medianLeadDays();
    return new BacktestView(
        report.planned(),
        report.until(),
        report.units(),
        new LockoutCounts(
            report.lockouts().size(),
            report.foreseen(),
            lead.isPresent() ? lead.getAsDouble() : null),
        new CleaningCounts(
            report.cleanings().size(),
            report.count(Verdict.NEEDED),
            report.count(Verdict.NEEDLESS),
            report.count(Verdict.UNKNOWN)),
        report.lockouts().stream().limit(LISTED).map(PlanningResource::view).toList(),
        report.cleanings().stream().limit(LISTED).map(PlanningResource::view).toList());
  }

  private static LockoutView view(Lockout lockout) {
    return new LockoutView(
        lockout.unitId(), lockout.date(), lockout.due(), lockout.foreseen(), lockout.leadDays());
  }

  private static CleaningView view(PlannedCleaning cleaning) {
    String verdict = cleaning.verdict().name().toLowerCase(Locale.ROOT);
    return new CleaningView(cleaning.unitId(), cleaning.due(), cleaning.rule(), verdict);
  }

  @GET
  @Path("bundles")
  @Dear
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "listBundles",
      summary = "Tasks of a site whose windows overlap, offered as one visit, with what that saves")
  @APIResponse(
      responseCode = "200",
      description = "A page of visits",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(type = SchemaType.ARRAY, implementation = Bundle.class)))
  @APIResponse(
      responseCode = "400",
      description = "A parameter or field is wrong; errors say which and how to mend it",
      content = @Content(mediaType = "application/problem+json"))
  public Response bundles(
      @Parameter(description = "Code of one customer; all when left out", example = "MERCY")
          @QueryParam("customer")
          String customer,
      @Parameter(description = "Code of one site; all when left out", example = "MAIN")
          @QueryParam("site")
          String site,
      @Parameter(description = "Last due date", example = "2026-12-31") @QueryParam("to") String to,
      @Parameter(description = "Units of the answer, us or si", example = "us")
          @QueryParam("measures")
          String measures,
      @Parameter(description = "Most items of a page, 1 to 500", example = "100")
          @QueryParam("limit")
          String limit,
      @Parameter(description = "What next of the page before said") @QueryParam("after")
          String after,
      @Context Request request,
      @Context UriInfo uri) {
    MeasureSystem system = Parameters.measures(measures);
    LocalDate last = Parameters.date("to", to, LocalDate.MAX);
    int most = Parameters.limit(limit);
    String place = Parameters.place(after);
    List<Bundle> items = new ArrayList<>();
    String next = null;
    // whole sites, so that a page may hold a few more than asked for
    for (Site its : fleet.sites(customer == null ? "" : customer)) {
      boolean wanted = site == null || site.isEmpty() || its.code().equals(site);
      if (!wanted || key(its).compareTo(place) <= 0) {
        continue;
      }
      if (items.size() >= most) {
        next = Parameters.cursor(place);
        break;
      }
      items.addAll(bundles(its, last, system));
      place = key(its);
    }
    return answers.list(new Page<>(items, next), request, uri);
  }

  private static String key(Site site) {
    return site.customer() + BETWEEN + site.code();
  }

  private List<Bundle> bundles(Site site, LocalDate last, MeasureSystem system) {
    LocalDate day = today.at(site);
    List<Task> tasks = new ArrayList<>();
    planned.on(
        day,
        new FleetFilter(site.customer(), site.code(), "", "", ""),
        its -> its.stream().filter(t -> !t.due().isAfter(last)).forEach(tasks::add));
    return upkeep.bundling().visits(tasks, day).stream()
        .filter(visit -> visit.tasks().size() > 1)
        .map(visit -> view(visit, system))
        .toList();
  }

  private static Bundle view(BundledVisit visit, MeasureSystem system) {
    return new Bundle(
        visit.customer(),
        visit.site(),
        visit.from(),
        visit.to(),
        visit.minutes(),
        Measured.asGiven(visit.saving()),
        ReasonView.of(visit.reason(), system),
        visit.tasks().stream()
            .map(t -> new TaskName(t.id(), TaskView.UnitName.of(t.unit()), t.task(), t.due()))
            .toList());
  }
}
