package coldround.scoring;

import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.refrigerant.Refrigerants;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Prepares what is known of a unit on a day. */
final class EvidenceGathering {

  private static final String REFRIGERANT_CHANGED = "refrigerant-changed";

  private final Kinds kinds;
  private final ReadingHabits habits;
  private final Refrigerants refrigerants;
  private final Map<String, Gas> gases = new ConcurrentHashMap<>();

  EvidenceGathering(ScoringRules rules, Refrigerants refrigerants) {
    this.kinds = rules.kinds();
    this.habits = rules.habits();
    this.refrigerants = refrigerants;
  }

  Evidence of(UnitHistory all, LocalDate asOf) {
    UnitHistory history = all.asOf(asOf);
    double atmosphereKpa = atmosphereKpa(history);
    List<VisitFigures> figures = new ArrayList<>(history.visits().size());
    for (Visit visit : history.visits()) {
      figures.add(new VisitFigures(visit, atmosphereKpa));
    }
    Optional<LocalDate> later = changedAfter(all, asOf);
    int changed = lastChange(figures);
    Unit unit = history.unit();
    return new Evidence(
        history,
        asOf,
        kinds.rule(unit.kind()),
        kinds.has(unit.kind()),
        figures,
        later.isPresent() ? Gas.NONE : gas(unit.refrigerant()),
        changed < 0 ? 0 : changed + (habits.asFound(figures.get(changed).visit.purpose()) ? 1 : 0),
        changed < 0 ? Optional.empty() : Optional.of(figures.get(changed).visit.date()),
        later,
        atmosphereKpa);
  }

  KindRule kind(UnitHistory history) {
    return kinds.rule(history.unit().kind());
  }

  private static double atmosphereKpa(UnitHistory history) {
    return history.site().atmosphereKpa();
  }

  private static Optional<LocalDate> changedAfter(UnitHistory all, LocalDate asOf) {
    for (Visit visit : all.visits()) {
      if (visit.date().isAfter(asOf) && visit.did(REFRIGERANT_CHANGED)) {
        return Optional.of(visit.date());
      }
    }
    return Optional.empty();
  }

  private static int lastChange(List<VisitFigures> figures) {
    for (int i = figures.size() - 1; i >= 0; i--) {
      if (figures.get(i).visit.did(REFRIGERANT_CHANGED)) {
        return i;
      }
    }
    return -1;
  }

  private Gas gas(String written) {
    return gases.computeIfAbsent(
        written,
        text ->
            new Gas(
                text, refrigerants.find(text).orElse(null), refrigerants.curve(text).orElse(null)));
  }
}
