package coldround.pages.edge;

import coldround.fleet.Fleet;
import coldround.fleet.FleetNames;
import coldround.fleet.Today;
import coldround.http.Problem;
import coldround.pages.RouteSheet;
import coldround.quantity.MeasureSystem;
import coldround.rounds.RoundPlan;
import coldround.rounds.Rounds;
import coldround.scoring.Assessment;
import coldround.scoring.Scoring;
import coldround.upkeep.ArrangementList;
import coldround.upkeep.Task;
import coldround.upkeep.Upkeep;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Makes the route sheets of a plan from what is known of its units today. */
@ApplicationScoped
class RouteSheets {

  private final Rounds rounds;
  private final Fleet fleet;
  private final Scoring scoring;
  private final Upkeep upkeep;
  private final ArrangementList arrangements;
  private final Today today;

  @Inject
  RouteSheets(
      Rounds rounds,
      Fleet fleet,
      Scoring scoring,
      Upkeep upkeep,
      ArrangementList arrangements,
      Today today) {
    this.rounds = rounds;
    this.fleet = fleet;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.arrangements = arrangements;
    this.today = today;
  }

  /**
   * @param technician code, null for all
   * @param day null for all
   */
  List<RouteSheet> of(String id, String technician, LocalDate day, MeasureSystem system) {
    RoundPlan plan =
        rounds
            .find(id)
            .orElseThrow(() -> Problem.notFound("plan of rounds " + id))
            .plan()
            .orElseThrow(() -> Problem.conflict("There is no plan yet; ask again in a second."));
    List<RoundPlan.Round> wanted =
        plan.rounds().stream()
            .filter(round -> technician == null || round.technician().equals(technician))
            .filter(round -> day == null || round.day().equals(day))
            .toList();
    FleetNames names = new FleetNames(fleet);
    RouteSheet.Maker maker = new RouteSheet.Maker(known(wanted), upkeep.catalogue(), system, names);
    return wanted.stream().map(maker::sheet).toList();
  }

  private Map<String, RouteSheet.Known> known(List<RoundPlan.Round> wanted) {
    Set<String> units = new LinkedHashSet<>();
    for (RoundPlan.Round round : wanted) {
      round.stops().forEach(stop -> stop.call().jobs().forEach(job -> units.add(job.unit())));
    }
    Map<String, RouteSheet.Known> known = new HashMap<>();
    fleet.eachHistory(
        units,
        history -> {
          LocalDate asOf = today.at(history.site());
          Assessment assessment = scoring.assess(history, asOf);
          List<Task> open =
              history.unit().inUse(asOf)
                  ? upkeep.plan(assessment, asOf, arrangements.of(List.of(history.unit().id())))
                  : List.of();
          List<String> cautions = assessment.condition().cautions();
          known.put(history.unit().id(), new RouteSheet.Known(history, open, cautions));
        });
    return known;
  }
}
