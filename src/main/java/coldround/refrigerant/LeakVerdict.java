package coldround.refrigerant;

import coldround.reason.Reason;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What the law makes of a leak rate.
 *
 * @param thresholdPercent empty where no threshold holds for the circuit
 * @param over strictly over the threshold
 * @param repairDue last day of the repair; empty when none is due
 * @param reasons with the legal reference and the duty
 */
public record LeakVerdict(
    LeakRate rate,
    Optional<BigDecimal> thresholdPercent,
    boolean over,
    Optional<LocalDate> repairDue,
    List<Reason> reasons) {

  public LeakVerdict {
    reasons = List.copyOf(reasons);
  }
}
