package coldround.scoring;

import coldround.reason.Reason;
import coldround.refrigerant.LeakMethod;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Refrigerant added to a unit and the leak rate that follows.
 *
 * @param additions oldest first
 * @param chargeKg full charge, where known
 * @param method in use at the facility
 * @param annualizingPercentPerYear by the annualizing method at the latest addition
 * @param rollingPercentPerYear by the rolling-average method on the day of the assessment
 * @param thresholdPercentPerYear of the law that applies, where one does
 * @param over true when the rate of the method in use is strictly over the threshold
 * @param openLeak true when the latest leak on record was not followed by a repair
 * @param reasons rates, threshold and legal duty; or what is missing
 */
public record LeakState(
    List<Addition> additions,
    OptionalDouble chargeKg,
    LeakMethod method,
    OptionalDouble annualizingPercentPerYear,
    OptionalDouble rollingPercentPerYear,
    OptionalDouble thresholdPercentPerYear,
    boolean over,
    boolean openLeak,
    Optional<LocalDate> lastInspected,
    List<Reason> reasons) {

  /** Refrigerant put in on one day. */
  public record Addition(LocalDate date, double kg) {}

  public LeakState {
    additions = List.copyOf(additions);
    reasons = List.copyOf(reasons);
  }

  /** By the method in use. */
  public OptionalDouble percentPerYear() {
    return method == LeakMethod.ANNUALIZING ? annualizingPercentPerYear : rollingPercentPerYear;
  }
}
