package coldround.refrigerant;

import coldround.reason.Reason;
import java.util.List;

/**
 * How much of a refrigerant can be had over a span of time.
 *
 * @param share mean share of the baseline that law and reclaimed gas leave, 0 to 1
 * @param reasons the mean first, then what the law does by date
 * @param known false when the jurisdiction is not known, so that the share is an expected one
 */
public record Supply(double share, List<Reason> reasons, boolean known) {

  /**
   * @throws IllegalArgumentException unless the share is from 0 to 1
   */
  public Supply {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("a supply share lies from 0 to 1, not " + share);
    }
    reasons = List.copyOf(reasons);
  }
}
