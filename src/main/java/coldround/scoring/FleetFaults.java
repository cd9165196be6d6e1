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
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Mean number of faults of a unit by its time under observation, for each class of units or each
 * failure mode. The fault that opens a record is left out: the unit came on record because of it.
 */
public final class FleetFaults {

  /** What there is a curve for. */
  public enum By {
    CLASS,
    FAILURE_MODE
  }

  /**
   * One curve.
   *
   * @param faultClass of the units; empty for all
   * @param failureMode of the faults; empty for all
   * @param unitYears under observation
   * @param longestDays for which a unit was watched
   * @param steps ages in days since the first visit or fault
   */
  public record Curve(
      String faultClass,
      String failureMode,
      int units,
      int faults,
      double unitYears,
      double longestDays,
      List<Step> steps) {
    public Curve {
      steps = List.copyOf(steps);
    }
  }

  private final Scoring scoring;
  private final String faultClass;
  private final String failureMode;
  private final By by;
  private final List<FaultRecord> records = new ArrayList<>();

  /**
   * @param faultClass row of fault-priors.csv, empty for all
   * @param failureMode row of failure-modes.csv, empty for all
   */
  public FleetFaults(Scoring scoring, String faultClass, String failureMode, By by) {
    this.scoring = scoring;
    this.faultClass = faultClass;
    this.failureMode = failureMode;
    this.by = by;
  }

  /** Adds a unit, watched until that day or the day it was retired. */
  public void add(UnitHistory history, LocalDate asOf) {
    LocalDate retired = history.unit().retired();
    LocalDate until = retired != null && retired.isBefore(asOf) ? retired : asOf;
    scoring
        .faultRecord(history, until)
        .filter(record -> faultClass.isEmpty() || record.faultClass().equals(faultClass))
        .ifPresent(records::add);
  }

  /** By class, or by failure mode, in the order of the alphabet. */
  public List<Curve> curves() {
    return by == By.CLASS ? byClass() : byMode();
  }

  private List<Curve> byClass() {
    Map<String, List<FaultRecord>> classes = new TreeMap<>();
    records.forEach(
        record ->
            classes.computeIfAbsent(record.faultClass(), its -> new ArrayList<>()).add(record));
    List<Curve> curves = new ArrayList<>();
    classes.forEach((its, of) -> curves.add(curve(its, failureMode, of)));
    return curves;
  }

  /** All units are watched for each mode, those that never had it too. */
  private List<Curve> byMode() {
    Set<String> modes = new TreeSet<>();
    records.forEach(record -> record.events().forEach(event -> modes.add(event.mode())));
    modes.removeIf(mode -> !failureMode.isEmpty() && !failureMode.equals(mode));
    return modes.stream().map(mode -> curve(faultClass, mode, records)).toList();
  }

  private static Curve curve(String its, String mode, List<FaultRecord> records) {
    List<History> histories = records.stream().map(record -> history(record, mode)).toList();
    double days = histories.stream().mapToDouble(History::end).sum();
    int faults = histories.stream().mapToInt(history -> history.ages().length).sum();
    return new Curve(
        its,
        mode,
        histories.size(),
        faults,
        days / FaultTally.DAYS_A_YEAR,
        histories.stream().mapToDouble(History::end).max().orElse(0),
        MeanCumulativeFunction.of(histories));
  }

  private static History history(FaultRecord record, String mode) {
    double[] ages =
        record.events().stream()
            .filter(event -> mode.isEmpty() || event.mode().equals(mode))
            .mapToDouble(event -> ChronoUnit.DAYS.between(record.firstSeen(), event.date()))
            .filter(age -> age > 0)
            .toArray();
    return new History(record.days(), ages);
  }
}
