package coldround.scoring;

import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.List;

/**
 * What the law leaves of the supply of a unit's refrigerant over the rest of the unit's life.
 *
 * @param refrigerant designation as found in the table; empty when unknown
 * @param from day of the assessment
 * @param to end of the unit's mean residual life
 * @param share mean supply over that span, 0 to 1 of the baseline
 * @param leastShare in the worst case that the evidence leaves open
 * @param mostShare in the best case
 */
public record SupplyState(
    String refrigerant,
    LocalDate from,
    LocalDate to,
    double share,
    double leastShare,
    double mostShare,
    boolean known,
    List<Reason> reasons) {

  public SupplyState {
    reasons = List.copyOf(reasons);
  }
}
