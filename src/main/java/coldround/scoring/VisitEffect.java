package coldround.scoring;

import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;

/**
 * What one visit did to a score: the condition on the day of the visit without it and with it.
 *
 * @param before as if the visit were not on record
 */
public record VisitEffect(Visit visit, Condition before, Condition after) {

  /**
   * @param scoring as it could be done on a day
   * @return empty when the unit has no visit of that number
   */
  public static Optional<VisitEffect> of(
      Function<LocalDate, Scoring> scoring, UnitHistory history, String number) {
    return history.visits().stream()
        .filter(visit -> visit.number().equals(number))
        .findFirst()
        .map(visit -> of(scoring.apply(visit.date()), history, visit));
  }

  private static VisitEffect of(Scoring scoring, UnitHistory history, Visit visit) {
    UnitHistory without =
        new UnitHistory(
            history.site(),
            history.unit(),
            history.visits().stream().filter(each -> each != visit).toList(),
            history.reportedFaults());
    return new VisitEffect(
        visit,
        scoring.assess(without, visit.date()).condition(),
        scoring.assess(history, visit.date()).condition());
  }
}
