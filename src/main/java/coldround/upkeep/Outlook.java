package coldround.upkeep;

import coldround.quantity.Quantity;

/**
 * What twelve months hold for a fleet under a plan. Lockouts are expected from the trip margin of
 * each month, other faults from the record; both are expectations, not forecasts of single events.
 *
 * @param lockouts expected high-head lockouts
 * @param otherFaults expected faults of other modes
 * @param cleanings condenser cleanings done
 * @param breakdownCost of lockouts and other faults
 * @param energyCost electricity wasted by dirty condensers
 * @param cleaningCost of those cleanings
 * @param minutesOver work of the weeks that the technicians have no time for
 */
public record Outlook(
    double lockouts,
    double otherFaults,
    int cleanings,
    Quantity breakdownCost,
    Quantity energyCost,
    Quantity cleaningCost,
    int minutesOver) {

  /** All costs together. */
  public double sum() {
    return breakdownCost.value() + energyCost.value() + cleaningCost.value();
  }
}
