package coldround.scoring;

import coldround.fleet.UnitHistory;
import coldround.scoring.statistics.FaultTally;
import coldround.scoring.statistics.MeanCumulativeFunction;
import coldround.scoring.statistics.MeanCumulativeFunction.History;
import coldround.scoring.statistics.MeanCumulativeFunction.Step;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Mean number of faults of a unit by its time under observation, for each class of units. The fault
 * that opens a record is left out: the unit came on record because of it.
 */
public final class FleetFaults {

  /**
   * Curve of one class.
   *
   * @param unitYears under observation
   * @param steps ages in days since the first visit or fault
   */
  public record Curve(
      String faultClass, int units, int faults, double unitYears, List<Step> steps) {
    public Curve {
      steps = List.copyOf(steps);
    }
  }

  private final Scoring scoring;
  private final String faultClass;
  private final String failureMode;
  private final Map<String, List<History>> byClass = new TreeMap<>();

  /**
   * @param faultClass row of fault-priors.csv, empty for all
   * @param failureMode row of failure-modes.csv, empty for all
   */
  public FleetFaults(Scoring scoring, String faultClass, String failureMode) {
    this.scoring = scoring;
    this.faultClass = faultClass;
    this.failureMode = failureMode;
  }

  /** Adds a unit, watched until that day or the day it was retired. */
  public void add(UnitHistory history, LocalDate asOf) {
    LocalDate retired = history.unit().retired();
    LocalDate until = retired != null && retired.isBefore(asOf) ? retired : asOf;
    scoring.faultRecord(history, until).ifPresent(this::add);
  }

  private void add(FaultRecord record) {
    if (!faultClass.isEmpty() && !record.faultClass().equals(faultClass)) {
      return;
    }
    double[] ages =
        record.events().stream()
            .filter(event -> failureMode.isEmpty() || event.mode().equals(failureMode))
            .mapToDouble(event -> ChronoUnit.DAYS.between(record.firstSeen(), event.date()))
            .filter(age -> age > 0)
            .toArray();
    byClass
        .computeIfAbsent(record.faultClass(), its -> new ArrayList<>())
        .add(new History(record.days(), ages));
  }

  /** By class in the order of the alphabet. */
  public List<Curve> curves() {
    List<Curve> curves = new ArrayList<>();
    byClass.forEach((its, histories) -> curves.add(curve(its, histories)));
    return curves;
  }

  private static Curve curve(String its, List<History> histories) {
    double days = histories.stream().mapToDouble(History::end).sum();
    int faults = histories.stream().mapToInt(history -> history.ages().length).sum();
    return new Curve(
        its,
        histories.size(),
        faults,
        days / FaultTally.DAYS_A_YEAR,
        MeanCumulativeFunction.of(histories));
  }
}
