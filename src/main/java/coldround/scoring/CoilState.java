package coldround.scoring;

import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of a condenser coil on the day of the assessment.
 *
 * @param readings splits of all visits, oldest first, those left out included
 * @param splitK expected split on that day
 * @param splitLowK low end of its 80 % band
 * @param splitHighK high end of its 80 % band
 * @param excessK split above the clean split, not below 0
 * @param foulingKPerDay expected growth of the excess, not below 0
 * @param foulingSdKPerDay standard deviation of that growth
 * @param splitKnown false when no reading since the last cleaning stands behind the split
 * @param latestSplit latest split that was used
 * @param lastCleaned latest cleaning of the condenser coil on record
 * @param grade latest grade of the coil that still holds: clean, light, moderate, heavy or blocked
 * @param gradeDate day of that grade, or of the cleaning that made it clean
 * @param elsewhere signs that a high split is not, or not only, dirt: what to check instead
 */
public record CoilState(
    CleanSplit clean,
    List<SplitReading> readings,
    double splitK,
    double splitLowK,
    double splitHighK,
    double excessK,
    double foulingKPerDay,
    double foulingSdKPerDay,
    boolean splitKnown,
    Optional<SplitReading> latestSplit,
    Optional<LocalDate> lastCleaned,
    Optional<String> grade,
    Optional<LocalDate> gradeDate,
    List<Reason> elsewhere) {

  public CoilState {
    readings = List.copyOf(readings);
    elsewhere = List.copyOf(elsewhere);
  }

  /** Condensing temperature at the latest reading that was used. */
  public OptionalDouble condensingC() {
    return latestSplit.map(SplitReading::condensingC).orElse(OptionalDouble.empty());
  }

  /** Expected split that many days after the assessment, without a cleaning. */
  public double splitKAfter(double days) {
    return splitK + foulingKPerDay * days;
  }

  /** Expected excess that many days after the assessment, without a cleaning. */
  public double excessKAfter(double days) {
    return excessK + foulingKPerDay * days;
  }
}
